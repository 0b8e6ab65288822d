"""Bend tests of a coupon cut from the flange."""

from typing import Any

from django import forms

from process.forms.people import person_field
from process.models import CouponTest
from process.summaries.hanging import refuse_before_it_came_out
from records import clock
from records.forms.base import RecordForm
from records.forms.measurements import not_ahead

NEEDED = "A test says both how often it bent and whether layers parted; leave both empty while it is only kept."


class CouponForm(RecordForm):
    class Meta:
        model = CouponTest
        fields = [
            "number", "taken_from", "section_mm", "bends_count", "layers", "layers_at_mm", "tested_on", "tested_by",
            "note",
        ]  # fmt: skip
        groups = [
            ("The coupon", ["number", "taken_from"]),
            ("The test", ["section_mm", "bends_count", "layers", "layers_at_mm", "tested_on", "tested_by", "note"]),
        ]
        help_texts = {
            "taken_from": "“flange at 3 h”: it speaks for the place that it came from.",
            "layers_at_mm": "From the contact face, as the section shows it.",
            "bends_count": "Sound copper bends oftener than five times.",
        }
        widgets = {"note": forms.Textarea({"rows": 2})}

    def __init__(self, *args: Any, user: Any = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["layers"].choices = [("", "not tested yet"), *CouponTest.Layers.choices]
        person_field(self, "tested_by", user)
        if self.instance._state.adding:
            self.offer("number", self._free_number())
            self.offer("tested_on", clock.today())

    def _free_number(self) -> str:
        """S-05-a, S-05-b …"""
        shell = self.instance.shell.item.number
        taken = set(CouponTest.objects.filter(number__startswith=f"{shell}-").values_list("number", flat=True))
        letters = "abcdefghijklmnopqrstuvwxyz"
        return next((f"{shell}-{each}" for each in letters if f"{shell}-{each}" not in taken), "")

    def clean_tested_on(self):
        return refuse_before_it_came_out(self.instance.shell.cathode, not_ahead(self.cleaned_data["tested_on"]))

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        bends, layers = cleaned.get("bends_count"), cleaned.get("layers")
        if (bends is None) != (not layers) and not {"bends_count", "layers"} & set(self.errors):
            self.add_error("bends_count" if bends is None else "layers", NEEDED)
        for name in ("section_mm", "layers_at_mm"):
            if cleaned.get(name) is not None and cleaned[name] <= 0:
                self.add_error(name, "A thickness is more than nothing: measure again, or leave it empty.")
        section, depth = cleaned.get("section_mm"), cleaned.get("layers_at_mm")
        if section and depth and depth >= section:
            self.add_error("layers_at_mm", "The layers part inside the wall: this lies at or beyond its back.")
        if depth is not None and layers == CouponTest.Layers.NO:
            self.add_error("layers_at_mm", "No layers are seen by your answer: leave this empty.")
        if bends is None:
            cleaned["tested_on"] = None
        return cleaned
