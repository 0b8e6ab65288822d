"""Lines of the sheet, one task a screen: time filled in, last values offered, as few fields as the moment needs."""

from collections.abc import Iterable
from typing import Any

from django import forms
from django.core.exceptions import NON_FIELD_ERRORS

from process.forms.asking import AsksUnusual
from process.forms.currents import of_current
from process.forms.in_bath import since_made_up
from process.forms.people import person_field
from process.models import Event, Range, Reading, Run
from process.ranges import Opinion, judge
from process.summaries.hanging import area_hours, hanging_at
from process.summaries.meter import counted
from records import clock, units
from records.forms.base import RecordForm
from records.forms.quantities import QuantityField
from records.forms.tokens import SentOnce

FIGURES = ("current_a", "voltage_v", "temperature_degc")
ANOTHER_STANDS = "a reading of this very minute says otherwise: correct that line, or write another minute."
NO_CURRENT = (
    "nothing flows at entry: a dead entry lets the bath attack coat and metal, and the charge starts at nothing."
)
REASON_HELP = "“Misread”, “wrong hour”: what stood there before stays in the history."


class LineForm(AsksUnusual, SentOnce, RecordForm):
    """What readings and events share: time and person are filled in, the current is judged by the area it flows on."""

    token_scope = ("run",)

    class Meta:
        ranged = ["current_a", "voltage_v", "temperature_degc"]

    def __init__(self, *args: Any, run: Run, user: Any = None, **kwargs: Any) -> None:
        self.run = run
        super().__init__(*args, **kwargs)
        person_field(self, "person", user)
        self.fields["note"].widget = forms.TextInput({"autocomplete": "off"})
        if self.instance._state.adding:
            self.offer("at", clock.now().replace(second=0, microsecond=0))
        else:
            self.fields["reason"] = forms.CharField(
                label="Why it is corrected", max_length=300, help_text=REASON_HELP,
                error_messages={"required": "Say why: a sheet whose figures change without a reason proves nothing."},
            )  # fmt: skip

    def range_step(self) -> str:
        return self.run.agitation

    def opinion(self, name: str) -> Opinion:
        return self._of_current() if name == "current_a" else super().opinion(name)

    def _of_current(self) -> Opinion:
        return of_current(self.entered["current_a"], self._area_dm2(), step=self.range_step())

    def _area_dm2(self) -> float:
        """What hangs in the bath from the instant of this line on."""
        at = self.cleaned_data.get("at") or clock.now()
        rail = hanging_at(self.run.cathodes.all(), self.run.events.exclude(pk=self.instance.pk), at)
        kind, own = getattr(self.instance, "kind", ""), getattr(self.instance, "cathode_id", None)
        if kind == Event.Kind.TAKEN_OUT:
            rail = [cathode for cathode in rail if cathode.pk != own]
        return sum(cathode.total_area_dm2 for cathode in rail)

    def others(self, lines: Iterable[Any]) -> list[Any]:
        """Without this very line, be it corrected or sent a second time."""
        token = self.data.get(self.add_prefix("token"))
        return [each for each in lines if each.pk != self.instance.pk and str(each.token) != token]

    @property
    def line(self) -> dict[str, Any]:
        """What the service writes, besides run, time and kind."""
        columns = {f.name for f in self._meta.model._meta.fields} - {"at", "kind"}
        values = {name: value for name, value in self.cleaned_data.items() if name in columns and name != "version"}
        return values | {
            "as_typed": self.instance.as_typed,
            "reason": getattr(self.instance, "_change_reason", None) or "",
        }

    def says_otherwise(self, first: Reading | Event) -> bool:
        """Sent a second time with other figures: the page was gone back to and changed.

        What the first sending left behind may make the same words wrong now, but never makes a figure unreadable.
        """
        if not self.is_valid():
            return any(isinstance(self.fields.get(name), QuantityField) for name in self.errors)
        said = {name: value for name, value in self.line.items() if name not in {"token", "as_typed", "reason"}}
        said |= {"at": self.cleaned_data["at"]}
        return any(getattr(first, name) != value for name, value in said.items() if hasattr(first, name))

    def add_error(self, field: str | None, error: Any) -> None:
        """A service names fields that this screen may not show: then the sentence stands at the top."""
        if (
            field is None
            and hasattr(error, "error_dict")
            and not set(error.error_dict) <= {*self.fields, NON_FIELD_ERRORS}
        ):
            error = [message for messages in error.message_dict.values() for message in messages]
        super().add_error(field, error)


class ReadingForm(LineForm):
    class Meta(LineForm.Meta):
        model = Reading
        fields = ["at", "current_a", "voltage_v", "temperature_degc", "meter_ah", "person", "note"]
        ranged = [*LineForm.Meta.ranged, "meter_ah"]

    def __init__(self, *args: Any, last: Reading | Event | None = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance._state.adding and last is not None:
            for name in FIGURES:
                self.offer(name, getattr(last, name))

    def opinion(self, name: str) -> Opinion:
        return self._of_meter() if name == "meter_ah" else super().opinion(name)

    def opinions(self) -> dict[str, Opinion]:
        """Two readings of one instant that differ cannot both be right, and the charge hangs on one of them."""
        found, at = super().opinions(), self.cleaned_data.get("at")
        if any(each.at == at and self._contradicts(each) for each in self.others(self.run.readings.all())):
            found["at"] = Opinion("unusual", ANOTHER_STANDS)
        return found

    def _contradicts(self, other: Reading) -> bool:
        pairs = [(self.cleaned_data.get(name), getattr(other, name)) for name in FIGURES]
        return any(own is not None and theirs is not None and own != theirs for own, theirs in pairs)

    def _of_meter(self) -> Opinion:
        """A meter that was not set back may show more than flowed: what no current could bring is asked about."""
        events = list(self.run.events.all())
        entry = next((event.at for event in events if event.kind == Event.Kind.ENTRY), None)
        at, meter = self.cleaned_data.get("at"), self.cleaned_data["meter_ah"]
        if fell := self._fallen(at, meter):
            return fell
        hung = area_hours(self.run.cathodes.all(), events, entry, at) if at and entry else 0.0
        if hung <= 0:
            return Opinion("usual")
        if judge("current_density_a_dm2", meter / hung, step=self.range_step()).verdict != "impossible":
            return Opinion("usual")
        hours = (at - entry).total_seconds() / 3600
        shown = f"{units.show(meter, '_ah')} in {units.show(hours, '_h')} on what hung there"
        return Opinion(
            "unusual", f"{shown} is more than this run can have taken. Is the decimal right, was it set back?"
        )

    def _fallen(self, at: Any, meter: float) -> Opinion | None:
        """A counter only rises, unless it is set back; the sum is then counted stretch by stretch."""
        counts = counted(self.others(self.run.readings.all())) if at else []
        before = next((each.meter_ah for each in reversed(counts) if each.at <= at), None)
        if before is None or meter >= before:
            return None
        return Opinion("unusual", f"the meter stood at {units.show(before, '_ah')} before that. Was it set back?")

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        written = [cleaned.get(name) for name in (*FIGURES, "meter_ah")]
        if not self.errors and not cleaned.get("note") and all(value is None for value in written):
            self.add_error("current_a", "A reading says something: write at least one figure, or a note.")
        return cleaned


class StartForm(LineForm):
    """Into the bath, current on: live entry with the strike current."""

    class Meta(LineForm.Meta):
        model = Event
        fields = ["at", "current_a", "voltage_v", "temperature_degc", "person", "note"]
        help_texts = {"current_a": "What flows at entry: the charge is counted from it."}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["current_a"].required = True

    def clean_at(self):
        return since_made_up(self.run.bath, self.cleaned_data["at"])

    def range_step(self) -> str:
        return Range.Step.STRIKE

    def opinion(self, name: str) -> Opinion:
        dead = name == "current_a" and self.cleaned_data[name] == 0
        return Opinion("unusual", NO_CURRENT) if dead else super().opinion(name)
