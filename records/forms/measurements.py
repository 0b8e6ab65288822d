"""One form for every measurement: the dimension decides in which column, and in which units, the number is kept."""

from typing import Any

from django import forms

from records import clock, extensions, units
from records.forms.base import RecordForm
from records.forms.conflicts import Difference
from records.forms.quantities import QuantityField, QuantityWidget
from records.models import Measurement
from records.models.measurements import VALUE_FIELDS

What = Measurement.What
COLUMNS = {What.MASS.value: "mass_g", What.DENSITY.value: "density_g_cm3", What.DIE_AXIS.value: "angle_deg"}
GROUPS = (("a length", "_mm"), ("a mass", "_g"), ("a density", "_g_cm3"), ("an angle", "_deg"))


def column_of(what: str) -> str:
    """The column in which a dimension is kept.

    >>> column_of("diameter"), column_of("mass")
    ('length_mm', 'mass_g')
    """
    return COLUMNS.get(what, "length_mm")


def _suffix(column: str) -> str:
    return column[column.index("_") :]


class AnyUnitWidget(QuantityWidget):
    """Offers the units of every dimension, since the form does not know beforehand which one is measured."""

    def __init__(self, suffix: str, evidence: bool = False) -> None:
        super().__init__(suffix, evidence)
        usual = {"_mm": 6, "_g": 7, "_g_cm3": 2, "_deg": 1}
        self.widgets[1].choices = [
            (noun, [(choice.symbol, choice.symbol) for choice in units.CHOICES[kind][: usual[kind]]])
            for noun, kind in GROUPS
        ]


class MeasurementForm(RecordForm):
    amount = QuantityField("_mm", evidence=True, label="Number and unit", widget=AnyUnitWidget("_mm", evidence=True))

    class Meta:
        model = Measurement
        fields = ["what", "point", "temperature_degc", "measured_on", "measured_by", "note"]
        bounds = {"temperature_degc": (-50, 200)}
        groups = [
            ("", ["what", "amount", "point"]),
            ("Who measured it, and when?", ["measured_on", "measured_by", "temperature_degc", "note"]),
        ]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.column = column_of(self["what"].value() or "")
        field = self.fields["amount"]
        field.suffix = field.widget.suffix = _suffix(self.column)
        if not self.instance._state.adding:
            kept = self.instance.value_field
            typed = self.instance.as_typed.get(kept)
            self.initial["amount"] = typed if typed and column_of(self.instance.what) == kept else self.instance.value
        elif not self.is_bound:
            self.initial["measured_on"] = clock.today()

    def add_error(self, field: str | None, error: Any) -> None:
        """The unit stands at mm until it is changed: a mass in mm is a unit not chosen, rather than an unknown one."""
        unit = (self["amount"].value() or ["", ""])[1] if field == "amount" else ""
        if unit and getattr(error, "code", "") == "unreadable" and f"“{unit}”" in str(error):
            usual = ", ".join(choice.symbol for choice in units.CHOICES[_suffix(self.column)])
            error = f"This is not given in {unit}: choose the unit beside the number, one of {usual}."
        super().add_error(field, error)

    def clean_measured_on(self):
        return not_ahead(self.cleaned_data["measured_on"])

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        value = cleaned.get("amount")
        if value is None:
            return cleaned
        if value < 0 or (value == 0 and self.column != "angle_deg"):
            self.add_error("amount", "A measured size is more than nought: look at the number again.")
        elif self.column == "angle_deg" and value >= 360:
            self.add_error("amount", "A die axis lies between 0° and 359°: look at the number again.")
        else:
            for name in VALUE_FIELDS:
                setattr(self.instance, name, value if name == self.column else None)
        self._ask_the_others(cleaned)
        return cleaned

    def _ask_the_others(self, cleaned: dict[str, Any]) -> None:
        """What another app knows of the piece may forbid that this be called measured."""
        typed = Measurement(item=self.instance.item, what=cleaned.get("what", ""), point=cleaned.get("point", ""))
        kind = self.entered["amount"].kind if self.entered.get("amount") else ""
        for sentence in filter(None, (doubt(typed, kind) for doubt in extensions.measurement_doubts)):
            self.add_error("point" if typed.point else "what", sentence)

    def _keep_what_was_typed(self) -> None:
        """What was written belongs to the column that holds the number."""
        super()._keep_what_was_typed()
        typed = self.instance.as_typed.pop("amount", None)
        if typed:
            warm = self.instance.as_typed.get("temperature_degc")
            self.instance.as_typed = {self.column: typed} | ({"temperature_degc": warm} if warm else {})

    def _post_clean(self) -> None:
        super()._post_clean()
        if not self.conflict:
            return
        current = Measurement.objects.get(pk=self.instance.pk)
        theirs = units.show(current.value, _suffix(current.value_field))
        yours = " ".join(part for part in self["amount"].value()[:2] if part)
        if theirs != yours:
            self.conflict.append(Difference("Number and unit", theirs, yours))


def not_ahead(day):
    """A day on which something was done lies not in the future."""
    if day and day > clock.today():
        raise forms.ValidationError("This day has not come yet: write when it happened. Is it the year?")
    return day
