"""One form for each kind of event: only what a person knows at that moment."""

from typing import Any

from django import forms
from django.utils import timezone

from process.forms.sheet import LineForm
from process.models import Event
from process.ranges import Opinion
from process.summaries.charge import sheet_lines
from records.units import show

KIND, CAUSE = Event.Kind, Event.Cause
ALWAYS = ["person", "note"]
FIELDS = {
    KIND.ENTRY: ["at", "current_a", "voltage_v", "temperature_degc"],
    KIND.COVERED: ["at", "current_a"],
    KIND.CURRENT: ["at", "current_a", "voltage_v"],
    KIND.INTERRUPTION: ["at", "cause", "handling"],
    KIND.RESTART: ["at", "current_a", "voltage_v", "returned_by_itself", "activation"],
    KIND.HUNG_IN: ["at", "current_a"],
    KIND.TAKEN_OUT: ["at", "current_a"],
    KIND.INSPECTION: ["at"],
    KIND.FAULT: ["at"],
    KIND.STOP: ["at", "cause", "voltage_v", "temperature_degc"],
}
CAUSES = {
    KIND.INTERRUPTION: [CAUSE.POWER, CAUSE.CONTACT, CAUSE.INSPECTION, CAUSE.LEVEL, CAUSE.SAFETY, CAUSE.TIME],
    KIND.STOP: [CAUSE.CHARGE, CAUSE.FAULT, CAUSE.LEVEL, CAUSE.POWER, CAUSE.SAFETY, CAUSE.TIME],
}
TITLES = {
    KIND.COVERED: "Fully covered", KIND.CURRENT: "Current changed", KIND.INTERRUPTION: "Current gone",
    KIND.RESTART: "Current back", KIND.HUNG_IN: "Hang it in", KIND.TAKEN_OUT: "Take it out",
    KIND.INSPECTION: "Looked at", KIND.FAULT: "Fault", KIND.STOP: "Stop the run",
    KIND.ENTRY: "Into the bath",
}  # fmt: skip
HELP = {
    KIND.COVERED: "No bare place is left: how long that took tells of the coat.",
    KIND.CURRENT: "The current was set to another value.",
    KIND.INTERRUPTION: "Mains, contact or a hand: nothing flows. The wall gets a boundary here.",
    KIND.RESTART: "It flows again, by hand or by itself.",
    KIND.HUNG_IN: "Another piece joined the rail: every density changed with it.",
    KIND.TAKEN_OUT: "The others go on: every density changes, so write the current that flows on them from now.",
    KIND.INSPECTION: "Edges, nodules, gas, colour; the current went on.",
    KIND.FAULT: "Trees, roughness, a bare place, a torn bag.",
    KIND.STOP: "By charge, not by the clock.",
}
NEEDED = {KIND.CURRENT: ["current_a"], KIND.HUNG_IN: ["current_a"], KIND.TAKEN_OUT: ["current_a"],
          KIND.RESTART: ["current_a"], KIND.ENTRY: ["current_a"],
          KIND.INTERRUPTION: ["cause", "handling"], KIND.STOP: ["cause"], KIND.FAULT: ["note"]}  # fmt: skip

# Whether current must have flowed before, and what is said where the sheet says otherwise.
CONTRARY = {
    KIND.RESTART: (False, "the sheet says {} before that, so it was not gone: enter first when it went."),
    KIND.INTERRUPTION: (True, "the sheet says {} before that: it was gone already. Correct that line, or this time."),
}  # fmt: skip


class EventForm(LineForm):
    class Meta(LineForm.Meta):
        model = Event
        fields = [
            "at",
            "cause",
            "handling",
            "current_a",
            "voltage_v",
            "temperature_degc",
            "returned_by_itself",
            "activation",
            "person",
            "note",
        ]

    def __init__(self, *args: Any, kind: str, **kwargs: Any) -> None:
        self.kind = kind
        super().__init__(*args, **kwargs)
        kept = {*FIELDS[kind], *ALWAYS, "token", "version", "reason"}
        for name in [name for name in self.fields if name not in kept]:
            del self.fields[name]
        for name in NEEDED.get(kind, ()):
            self.fields[name].required = True
        if kind == KIND.FAULT:
            self.fields["note"].error_messages["required"] = "Say what you see: without it nobody knows what to mend."
        for name in ("cause", "handling", "activation"):
            if name in self.fields:
                self._as_choices(name)
        if kind == KIND.RESTART:
            self.fields[
                "activation"
            ].help_text = "What was done to the surface before the current came back. “none” is an answer too."

    def opinions(self) -> dict[str, Opinion]:
        """What is gone cannot go, what flows cannot come back: then a line is missing, or its time is wrong."""
        found, at = super().opinions(), self.cleaned_data.get("at")
        if at is None or self.kind not in CONTRARY:
            return found
        events = self.others(self.run.events.all())
        before = [line for line in sheet_lines(self.run.readings.all(), events) if line.at <= at]
        wanted, words = CONTRARY[self.kind]
        if before and bool(before[-1].current_a) is not wanted:
            said = f"{show(before[-1].current_a, '_a')} at {timezone.localtime(before[-1].at):%H:%M}"
            found["at"] = Opinion("unusual", words.format(said))
        return found

    def _as_choices(self, name: str) -> None:
        """Every answer in sight, large enough for a wet thumb."""
        old, column = self.fields[name], Event._meta.get_field(name)
        choices = [(cause.value, cause.label) for cause in CAUSES[self.kind]] if name == "cause" else column.choices
        self.fields[name] = forms.ChoiceField(
            choices=choices, widget=forms.RadioSelect, required=old.required, label=str(old.label).capitalize(),
            error_messages={"required": "Choose one: it decides how far the wall can be trusted."},
        )  # fmt: skip
