"""A part of a mould, and a feature of its wear."""

from typing import Any

from django import forms
from django.db.models import Q

from process.forms.moulds import not_in_future
from process.forms.people import person_field
from process.models import MouldPart, MouldWear
from records import clock
from records.forms.base import RecordForm
from records.forms.tokens import SentOnce

OFFERED = 12  # uses, the latest ones: wear is written down when it is seen


class MouldPartForm(SentOnce, RecordForm):
    class Meta:
        model = MouldPart
        fields = ["mark", "what", "material_words", "place"]
        help_texts = {
            "mark": "A, B, key: as it is written on the part itself.",
            "what": "A section, a key, one half of the jacket.",
            "place": "Empty: it lies with the mould.",
        }

    def __init__(self, *args: Any, user: Any = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)

    def clean_mark(self) -> str:
        mark = self.cleaned_data["mark"]
        others = self.instance.mould.parts.exclude(pk=self.instance.pk).filter(mark__iexact=mark)
        if other := others.first():
            raise forms.ValidationError(f"{mark} is {other.what} already: each letter stands for one part.")
        return mark


class MouldWearForm(SentOnce, RecordForm):
    class Meta:
        model = MouldWear
        fields = ["feature", "length_mm", "bearing", "pull", "seen_on", "seen_by"]
        evidence_fields = ["length_mm"]
        bounds = {"length_mm": (0.001, 1e4)}
        groups = [("What is seen", ["feature", "length_mm", "bearing"]), ("When", ["pull", "seen_on", "seen_by"])]
        widgets = {"feature": forms.Textarea({"rows": 2})}
        help_texts = {
            "feature": "Tear, torn detail, hardening, metal left in it; where by the clock or by zone.",
            "length_mm": "As far as it reaches.",
            "bearing": "“No further pull” stands before the next run.",
            "pull": "The use after which it was seen.",
        }

    def __init__(self, *args: Any, user: Any = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        person_field(self, "seen_by", user)
        for name in ("bearing", "seen_on"):
            self.fields[name].required = True
        last = self.instance.mould.pulls.last()
        since = max(0, last.number_count - OFFERED) if last else 0
        rows = self.instance.mould.pulls.filter(Q(number_count__gt=since) | Q(pk=self.instance.pull_id))
        self.fields["pull"].queryset = rows
        self.fields["pull"].label_from_instance = _called
        if self.instance._state.adding:
            self.offer("seen_on", clock.today())
            self.offer("pull", last)

    def clean_seen_on(self):
        day, made = not_in_future(self.cleaned_data["seen_on"]), self.instance.mould.made_on
        if day < made:
            raise forms.ValidationError(f"The mould was made on {clock.day_words(made)}: it cannot have worn before.")
        return day


def _called(pull) -> str:
    return f"pull {pull.number_count}, {clock.day_words(pull.used_on)}"
