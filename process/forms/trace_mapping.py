"""How a trace is to be read: what the file leaves open comes first, what was found stands folded beneath."""

from dataclasses import replace
from datetime import datetime
from typing import Any
from zoneinfo import available_timezones

from django import forms
from django.conf import settings
from django.core.exceptions import ValidationError

from process.models import Trace
from process.tracing import AskFirst, Mapping, Proposal
from process.tracing import mapping as words
from process.tracing.reading import ask_what_is_missing
from records.forms.conflicts import AsItStood
from records.forms.dates import InstantField

SIGNS = [("1", "as written"), ("-1", "with the sign turned round")]
DECIMALS = [(".", "point"), (",", "comma")]
ELAPSED = {"ms": "milliseconds", "s": "seconds", "min": "minutes", "h": "hours", "dhms": "days, h:m:s"}


class MappingForm(AsItStood):
    time_kind = forms.ChoiceField(label="The time is written as", choices=words.TIME_KINDS.items())
    time_column = forms.TypedChoiceField(label="Column of the time", coerce=int)
    clock_column = forms.TypedChoiceField(label="Time of day, if the date stands alone", coerce=int, required=False)
    date_order = forms.ChoiceField(label="Dates are written as", required=False)
    zone = forms.ChoiceField(label="The logger’s clock showed", required=False)
    doubled_hour = forms.ChoiceField(label="The hour that came twice, if the clocks went back", required=False)
    elapsed_unit = forms.ChoiceField(label="It counts", required=False)
    starts_at = InstantField(label="The logger began at", required=False)
    decimal = forms.ChoiceField(label="Decimals have a", choices=DECIMALS)
    current_column = forms.TypedChoiceField(label="Column of the current", coerce=int)
    current_unit = forms.ChoiceField(label="Current in")
    sign = forms.TypedChoiceField(label="The current counts", choices=SIGNS, coerce=int)
    voltage_column = forms.TypedChoiceField(label="Column of the voltage", coerce=int, required=False)
    voltage_unit = forms.ChoiceField(label="Voltage in", choices=[(unit, unit) for unit in words.VOLTAGE_UNITS])
    temperature_column = forms.TypedChoiceField(label="Column of the temperature", coerce=int, required=False)
    temperature_unit = forms.ChoiceField(
        label="Temperature in", choices=[(unit, unit) for unit in words.TEMPERATURE_UNITS]
    )

    def __init__(self, *args: Any, trace: Trace, proposal: Proposal, mapping: Mapping, **kwargs: Any) -> None:
        self.stands = trace
        self.proposal, self.kept = proposal, mapping
        super().__init__(*args, initial=_initial(mapping), **kwargs)
        columns = [(str(at), name) for at, name in enumerate(proposal.columns)]
        for name in ("time_column", "current_column"):
            self.fields[name].choices = [("", "choose"), *columns]
        for name in ("clock_column", "voltage_column", "temperature_column"):
            self.fields[name].choices = [("", "none"), *columns]
            self.fields[name].empty_value = None
        self.fields["zone"].choices = _zones()
        asked = ("date_order", words.DATE_ORDERS), ("doubled_hour", words.DOUBLED_HOURS), ("elapsed_unit", ELAPSED)
        for name, offered in asked:
            self.fields[name].choices = [("", "choose"), *offered.items()]
        self.fields["current_unit"].choices = [("", "choose"), *((unit, unit) for unit in words.CURRENT_UNITS)]
        for question in proposal.questions:
            self.fields[question.field].help_text = question.sentence
            self.fields[question.field].required = True

    def grouped(self) -> list[tuple[str, bool, list[forms.BoundField]]]:
        """Open questions first; a field that the file does not need is not shown at all."""
        asked = [question.field for question in self.proposal.questions]
        asked = list(dict.fromkeys([*asked, *(name for name in self.errors if name in self.fields)]))
        rest = [name for name in self.fields if name not in asked]
        groups = [("What the file leaves open", False, [self[name] for name in asked])] if asked else []
        return [*groups, ("What was found: correct it where it is wrong", bool(asked), [self[name] for name in rest])]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if not self.errors:
            try:
                ask_what_is_missing(self.mapping)
            except AskFirst as question:
                self.add_error(question.field, str(question))
        return cleaned

    def ask(self, question: AskFirst) -> ValidationError:
        """A question that came up while the file was read."""
        return ValidationError({question.field if question.field in self.fields else "zone": str(question)})

    @property
    def mapping(self) -> Mapping:
        """What was answered, on top of how the lines are parted."""
        said = self.cleaned_data
        clock, starts = said.get("clock_column"), said.get("starts_at")
        return replace(
            self.kept,
            **{name: said[name] for name in said if name not in {"time_column", "clock_column", "starts_at"}},
            time_columns=(said["time_column"], *(() if clock in (None, "") else (clock,))),
            starts_at=starts.isoformat() if starts else "",
        )


def _initial(mapping: Mapping) -> dict[str, Any]:
    kept = mapping.as_json()
    columns = [*mapping.time_columns, None]
    start = datetime.fromisoformat(mapping.starts_at) if mapping.starts_at else None
    zone = mapping.zone or settings.TIME_ZONE
    return kept | {"time_column": columns[0], "clock_column": columns[1], "starts_at": start, "zone": zone}


def _zones() -> list[tuple[str, Any]]:
    """The museum's own first, then one offset kept all year, then the world."""
    offsets = [f"UTC{hours:+03d}:00" for hours in range(-12, 15)]
    fixed = [("UTC", "UTC"), *((offset, f"{offset}, never changed") for offset in offsets if offset != "UTC+00:00")]
    world = [
        (name, name) for name in sorted(available_timezones()) if "/" in name and not name.startswith(("Etc/", "posix"))
    ]
    own = settings.TIME_ZONE
    return [(own, f"{own}, the museum’s"), ("One offset throughout", fixed), ("Other places", world)]
