"""One length of a mould, measured again."""

from typing import Any

from django import forms

from process.forms.asking import AsksUnusual
from process.forms.moulds import not_in_future
from process.forms.people import person_field
from process.models import MouldGauge
from process.ranges import USUAL, Opinion, judge
from process.summaries.gauges import change_of
from records import clock
from records.forms.base import RecordForm
from records.forms.tokens import SentOnce
from records.units import show

BEFORE_IT_WAS = "The mould was made on {}: it cannot have been measured before."


class MouldGaugeForm(AsksUnusual, SentOnce, RecordForm):
    class Meta:
        model = MouldGauge
        fields = ["gauged_on", "gauged_by", "feature", "nominal_mm", "measured_mm", "temperature_degc", "note"]
        evidence_fields = ["nominal_mm", "measured_mm"]
        ranged: list[str] = []
        judged_as = {"temperature_degc": "room_temperature_degc"}
        groups = [
            ("The length", ["feature", "nominal_mm", "measured_mm", "temperature_degc"]),
            ("When and how", ["gauged_on", "gauged_by", "note"]),
        ]
        help_texts = {
            "feature": "The same two points each time: “breadth across the cheeks”.",
            "nominal_mm": "As measured on the piece, stated at 20 °C; write ± after it if you know it.",
            "temperature_degc": "Rubber moves by about 0.03 % for each degree, as much as a season of shrinking.",
        }

    def __init__(self, *args: Any, user: Any = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        person_field(self, "gauged_by", user)
        if self.instance._state.adding:
            self.offer("gauged_on", clock.today())
            self._offer_the_last()

    def _offer_the_last(self) -> None:
        """A series measures one length: what stood there last is offered again."""
        last = self.instance.mould.gauges.last()
        if last:
            self.offer("feature", last.feature)
            self.offer("nominal_mm", last.nominal_mm)

    def clean_gauged_on(self):
        day, made = not_in_future(self.cleaned_data["gauged_on"]), self.instance.mould.made_on
        if day < made:
            raise forms.ValidationError(BEFORE_IT_WAS.format(clock.day_words(made)))
        return day

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        for name in ("nominal_mm", "measured_mm"):
            if (length := cleaned.get(name)) is not None and length <= 0:
                self.add_error(name, "A length is more than nothing: measure again.")
        return cleaned

    def opinions(self) -> dict[str, Opinion]:
        """The table of usual values judges what follows from the two lengths."""
        found = super().opinions()
        nominal, measured = self.cleaned_data.get("nominal_mm"), self.cleaned_data.get("measured_mm")
        if not nominal or not measured or nominal <= 0 or measured <= 0:
            return found
        pct = change_of(measured, nominal)
        opinion = judge("shrinkage_pct", pct)
        words = f"That is a change of {show(pct, '_pct', digits=2)}. {opinion.sentence}"
        return found | {"measured_mm": USUAL if opinion.is_usual else Opinion(opinion.verdict, words)}
