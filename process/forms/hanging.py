"""Hanging another piece in while the run goes on: what it is, when, and the current that flows on all from then."""

from typing import Any

from django import forms

from process.forms.cathodes import CathodeForm
from process.forms.currents import of_current
from process.forms.people import person_field
from process.models import Cathode, Run
from process.ranges import Opinion
from process.summaries.hanging import hanging_at
from records import clock
from records.forms.dates import InstantField
from records.forms.lookup import LookupField
from records.forms.quantities import QuantityField
from records.units import show

HANG_IN_TITLE = "Hang another piece in"
HANG_IN = (
    "It goes in live, beside the others: every density changes, so write the current that flows on all of them from "
    "then. Its mould loses a pull, as at a start."
)


class HangInForm(CathodeForm):
    at = InstantField(label="Time")
    current_a = QuantityField("_a", label="Current on all of them")
    person = LookupField("people", required=False, label="Initials")
    note = forms.CharField(required=False, max_length=300, widget=forms.TextInput({"autocomplete": "off"}))

    class Meta(CathodeForm.Meta):
        ranged = [*CathodeForm.Meta.ranged, "current_a"]
        groups = [
            ("What goes in", ["label", "mould", "core"]),
            ("When, and what flows then", ["at", "current_a"]),
            ("Its area", ["face_area_dm2", "total_area_dm2"]),
            ("Is it a disc? Then the face follows from its diameter", ["disc_diameter_mm", "disc_factor"]),
            ("Tare and coat", ["tare_g", "coat", "coat_resistance_ohm", "coat_distance_mm"]),
            ("Rig, initials, note", ["side", "rig", "person", "note"]),
        ]

    def __init__(self, *args: Any, run: Run, user: Any = None, **kwargs: Any) -> None:
        self.run = run
        super().__init__(*args, instance=Cathode(run=run), **kwargs)
        person_field(self, "person", user)
        now = clock.now().replace(second=0, microsecond=0)
        self.offer("at", now)
        self.fields["current_a"].help_text = self._current_words(now)

    def _current_words(self, now: Any) -> str:
        """What keeps the planned density, before the new area is known."""
        area, density = self._others_dm2(now), self.run.planned_current_density_a_dm2
        return (
            f"The plan’s {show(density, '_a_dm2')} is {show(density * area, '_a')} on the {show(area, '_dm2')} "
            f"that hang there now, and {show(density, '_a')} more for each dm² that joins them."
        )

    def _others_dm2(self, at: Any) -> float:
        rail = hanging_at(self.run.cathodes.all(), self.run.events.all(), at)
        return sum(cathode.total_area_dm2 for cathode in rail)

    def range_step(self) -> str:
        return self.run.agitation

    def opinion(self, name: str) -> Opinion:
        if name != "current_a":
            return super().opinion(name)
        own, at = self.cleaned_data.get("total_area_dm2") or 0.0, self.cleaned_data.get("at") or clock.now()
        return of_current(self.entered["current_a"], self._others_dm2(at) + own, step=self.range_step())

    def is_taken(self, mould: Any) -> bool:
        """A mould that was taken out of this run may go in again, as another piece."""
        at = self.cleaned_data.get("at") or clock.now()
        return any(each.mould_id == mould.pk for each in hanging_at(self.run.cathodes.all(), self.run.events.all(), at))

    @property
    def line(self) -> dict[str, Any]:
        """What the sheet gets, besides run, time and kind."""
        current = self.entered["current_a"]
        reason = getattr(self.instance, "_change_reason", None) or ""
        return {
            "current_a": self.cleaned_data["current_a"], "person": self.cleaned_data["person"],
            "note": self.cleaned_data["note"], "as_typed": {"current_a": current.as_typed()} if current else {},
            "reason": reason,
        }  # fmt: skip

    def _keep_what_was_typed(self) -> None:
        """The current belongs to the sheet, not to the piece."""
        super()._keep_what_was_typed()
        self.instance.as_typed.pop("current_a", None)
