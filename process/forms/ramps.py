"""The steps of a ramp, as many as are wanted: a density or a current, and for how long."""

from typing import Any

from django import forms
from django.core.exceptions import ValidationError

from process.models import RampStep, Range, Run
from process.ranges import judge_by, range_of
from records.forms.quantities import QuantityField

MOST_STEPS = 40
PREFIX = "step"
COLUMNS = {"density": "current_density_a_dm2", "current": "current_a", "time": "time_h"}


class StepForm(forms.Form):
    """One row; an empty row is no step."""

    words = forms.CharField(label="What it is for", max_length=80, required=False)
    density = QuantityField("_a_dm2", required=False, label="Current density")
    current = QuantityField("_a", required=False, label="or current")
    time = QuantityField("_h", required=False, label="For")

    @property
    def is_blank(self) -> bool:
        return not any(self.cleaned_data.get(name) for name in self.fields)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        density, current, time = (cleaned.get(name) for name in COLUMNS)
        if not self.errors and any(cleaned.get(name) for name in ("words", *COLUMNS)):
            if (density is None) == (current is None):
                raise ValidationError("Give the step its current density or its current, one of the two.")
            flowing = density if current is None else current
            if flowing.canonical <= 0:
                raise ValidationError("A step without current deposits nothing: give it a current above zero.")
            if time is not None and time.canonical <= 0:
                raise ValidationError("A step lasts longer than nothing; leave the time of the last one empty.")
        return cleaned

    def refuse_impossible(self, row: Range | None) -> None:
        """By the editable table; what is only unusual stands among the checks of the plan."""
        density = self.cleaned_data.get("density")
        if density is None:
            return
        known = {"number": density.number, "unit": density.unit}
        opinion = judge_by(row, "current_density_a_dm2", density.canonical, **known)
        if opinion.verdict == "impossible":
            self.add_error("density", opinion.sentence)

    def row(self, run: Run, order: int) -> RampStep:
        """The step as an unsaved row."""
        entered = {column: self.cleaned_data.get(name) for name, column in COLUMNS.items()}
        typed = {column: parsed.as_typed() for column, parsed in entered.items() if parsed is not None}
        values = {column: None if parsed is None else parsed.canonical for column, parsed in entered.items()}
        return RampStep(run=run, order_count=order, words=self.cleaned_data["words"], as_typed=typed, **values)


class RampRows(forms.BaseFormSet):
    """Only the last step may go on until the charge is reached."""

    def clean(self) -> None:
        if any(self.errors):
            return
        filled = [form for form in self.forms if not form.is_blank]
        row = range_of("current_density_a_dm2")
        for form in filled:
            form.refuse_impossible(row)
        for form in filled[:-1]:
            if form.cleaned_data.get("time") is None:
                raise ValidationError(
                    "Only the last step may be without a time: it goes on until the charge is reached."
                )

    def densities(self) -> list[tuple[int, Any]]:
        """The densities that were typed, with the numbers of their steps."""
        typed = [(number, form.cleaned_data.get("density")) for number, form in enumerate(self.forms, start=1)]
        return [(number, density) for number, density in typed if density is not None]

    def rows(self, run: Run) -> list[RampStep]:
        filled = [form for form in self.forms if not form.is_blank]
        return [form.row(run, order) for order, form in enumerate(filled, start=1)]


RampFormSet = forms.formset_factory(
    StepForm, formset=RampRows, extra=1, max_num=MOST_STEPS, validate_max=True, absolute_max=MOST_STEPS + 10
)


def ramp_rows(run: Run, data: Any = None) -> RampRows:
    """The rows of a run's ramp, with an empty one after them; or what was sent."""
    initial = [_written(step) for step in run.ramp_steps.all()]
    return RampFormSet(data, prefix=PREFIX, initial=None if data else initial)


def _written(step: RampStep) -> dict[str, Any]:
    """What stands in a row: the words in which its numbers were typed, where they are known."""
    numbers = {
        name: step.as_typed.get(column) or getattr(step, column) for name, column in COLUMNS.items()
        if getattr(step, column) is not None
    }  # fmt: skip
    return {"words": step.words, **numbers}


def with_another_row(data: Any) -> Any:
    """The same entries and one empty row more."""
    more = data.copy()
    key = f"{PREFIX}-TOTAL_FORMS"
    count = more.get(key, "1")
    more[key] = str(min(int(count) + 1, MOST_STEPS)) if count.isdigit() else "1"
    return more
