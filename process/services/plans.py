"""The ramp of a run, kept step by step so that its history says what was changed."""

from collections.abc import Sequence

from django.core.exceptions import ValidationError
from django.db import transaction

from process.models import Event, RampStep, Run

KEPT = ("words", "current_density_a_dm2", "current_a", "time_h", "as_typed")


def keep_ramp(*, run: Run, steps: Sequence[RampStep]) -> None:
    """The steps as they are planned now; a row that did not change is left alone."""
    with transaction.atomic():
        before = list(RampStep.objects.filter(run=run))
        for order, step in enumerate(steps, start=1):
            _keep(run, before[order - 1] if order <= len(before) else None, step, order)
        for surplus in before[len(steps) :]:
            surplus.delete()


def _keep(run: Run, row: RampStep | None, step: RampStep, order: int) -> None:
    row = row or RampStep(run=run)
    values = {"order_count": order} | {name: getattr(step, name) for name in KEPT}
    if not row._state.adding and all(getattr(row, name) == value for name, value in values.items()):
        return
    for name, value in values.items():
        setattr(row, name, value)
    row.full_clean()
    row.save()


def refuse_started(run: Run) -> None:
    """Once the run is in the bath its plan is what it was judged by: it is corrected, with a reason, not rewritten."""
    if run.events.filter(kind=Event.Kind.ENTRY).exists():
        raise ValidationError("The run has started: its plan stands. Correct single figures under “Correct the plan”.")
