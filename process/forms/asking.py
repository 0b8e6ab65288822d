"""A form that asks about unusual numbers and refuses impossible ones, by the register's table."""

import hashlib
from typing import Any

from django import forms

from process.ranges import Opinion, judge

IT_IS_SO = "it_is_so"


class AsksUnusual:
    """For a RecordForm: put it before the form class; `Meta.ranged` names the fields to look at.

    `Meta.judged_as` names fields that are judged by the row of another name, such as the warmth of a room.

    An unusual value comes back with its reason and a box “It is so”. The tick holds for these reasons only: another
    unusual value is asked about again. What was confirmed goes into the history as the reason of the change.
    """

    def opinions(self) -> dict[str, Opinion]:
        """The table's opinion of each ranged field that was entered."""
        looked_at = (*self.Meta.ranged, *getattr(self.Meta, "judged_as", ()))
        return {name: self.opinion(name) for name in looked_at if self.cleaned_data.get(name) is not None}

    def opinion(self, name: str) -> Opinion:
        entered = self.entered.get(name)
        typed = {"number": entered.number, "unit": entered.unit} if entered else {}
        row = getattr(self.Meta, "judged_as", {}).get(name, name)
        return judge(row, self.cleaned_data[name], step=self.range_step(), **typed)

    def range_step(self) -> str:
        """The row of the table that applies."""
        return "any"

    def _from_meta(self, name: str) -> Any:
        """The question comes first, under its reason."""
        value = super()._from_meta(name)
        if name != "groups" or IT_IS_SO not in self.fields:
            return value
        return [("Is that right?", [IT_IS_SO]), *(value or [("", [each for each in self.fields if each != IT_IS_SO])])]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        reasons = []
        for name, opinion in self.opinions().items():
            label = self.fields[name].label if name in self.fields else name[:1].upper() + name[1:]
            if opinion.verdict == "impossible":
                shown = name in self.fields
                self.add_error(name if shown else None, opinion.sentence if shown else f"{label}: {opinion.sentence}")
            elif not opinion.is_usual:
                reasons.append(f"{label}: {opinion.sentence}")
        if reasons:
            self._ask(reasons)
        return cleaned

    def _ask(self, reasons: list[str]) -> None:
        said = hashlib.sha256("\n".join(reasons).encode()).hexdigest()[:12]
        self.fields[IT_IS_SO] = forms.BooleanField(
            required=False, label="It is so", widget=forms.CheckboxInput({"value": said})
        )
        if self.data.get(self.add_prefix(IT_IS_SO)) == said:
            self.instance._change_reason = f"Confirmed although unusual. {' '.join(reasons)}"
            return
        self.data = self.data.copy()
        self.data.pop(self.add_prefix(IT_IS_SO), None)
        self.add_error(IT_IS_SO, " ".join(reasons) + " Correct it, or tick the box if it is so.")
