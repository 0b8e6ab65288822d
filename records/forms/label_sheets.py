"""What is to be printed on a sheet of labels, where it begins, and how the printer feeds."""

import re
from typing import Any

from django import forms

from records.forms.bounds import CountField, FactorField
from records.lost import GONE
from records.models import Item
from records.units import Reach

MOST = 1000
KINDS = (("object", "object tags"), ("shelf", "shelf tags"), ("sale", "sale tickets"))
GROUPS = (
    ("", "the numbers below"),
    ("copies", "every copy that is still here"),
    ("moulds", "every mould that is still here"),
    ("originals", "every original that is still here"),
)
KINDS_OF = {
    "copies": (Item.Kind.COPY, Item.Kind.HISTORIC_COPY), "moulds": (Item.Kind.MOULD,),
    "originals": (Item.Kind.ORIGINAL,),
}  # fmt: skip
_FAR = "A sheet is shifted by at most 5 mm; more means that another sheet was chosen."
_NUDGE: dict[str, Any] = {
    "reach": Reach(-5, 5), "required": False, "initial": 0,
    "error_messages": {"min_value": _FAR, "max_value": _FAR},
}  # fmt: skip


class LabelSheetForm(forms.Form):
    kind = forms.ChoiceField(label="Print", choices=KINDS)
    group = forms.ChoiceField(label="For", choices=GROUPS, required=False)
    numbers = forms.CharField(
        label="Numbers", required=False, max_length=40_000, widget=forms.Textarea({"rows": 4}),
        help_text="By spaces, commas or lines: R.2026.1 R.2026.2",
    )  # fmt: skip
    sheet = forms.ChoiceField(label="On", help_text="Width and height of one label.")
    start = CountField(
        Reach(1, MOST), label="Begin at label", initial=1, help_text="Counted from the upper left, along the rows."
    )
    right = FactorField(label="Shift to the right, mm", **_NUDGE)
    up = FactorField(label="Shift upwards, mm", **_NUDGE)
    marks = forms.BooleanField(label="with cut marks, for plain paper", required=False)
    leave_out = forms.BooleanField(label="leave out those that may not be printed yet", required=False)

    def __init__(self, *args: Any, sheets: dict[str, Any], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.sheets = sheets
        self.items: list[Item] = []
        self.fields["sheet"].choices = [(name, name) for name in sheets]

    def clean_numbers(self) -> list[str]:
        return list(dict.fromkeys(re.findall(r"[^\s,;]+", self.cleaned_data["numbers"])))

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        sheet = self.sheets.get(cleaned.get("sheet", ""))
        if sheet and (cleaned.get("start") or 1) > sheet.per_page():
            self.add_error("start", f"This sheet has {sheet.per_page()} labels: begin at one of them.")
        if "trial" not in self.data and "numbers" in cleaned:
            self._find(cleaned)
        return cleaned

    def _find(self, cleaned: dict[str, Any]) -> None:
        rows = Item.objects.select_related("label", "place", "owner").prefetch_related("marks")
        if group := cleaned.get("group"):
            self.items = list(rows.filter(kind__in=KINDS_OF[group]).exclude(status__in=GONE)[: MOST + 1])
        else:
            self._named(rows, cleaned["numbers"])
        if cleaned.get("kind") == "sale":
            self.items = [item for item in self.items if item.is_copy]
        if len(self.items) > MOST:
            self.add_error("numbers", f"More than {MOST:,} at once: print them in parts.")
        elif not self.items and "numbers" not in self.errors:
            self.add_error("numbers", "Nothing to print: give the numbers, or choose a group that has some.")

    def _named(self, rows: Any, numbers: list[str]) -> None:
        """In the order in which they were typed."""
        found = {item.number: item for item in rows.filter(number__in=numbers[: MOST + 1])}
        if unknown := [number for number in numbers if number not in found]:
            self.add_error("numbers", f"Not in the register: {', '.join(unknown[:8])}. Correct or remove them.")
        self.items = [found[number] for number in numbers if number in found]
