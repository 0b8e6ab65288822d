"""What stands before a cathode that goes into the bath, whether the run begins with it or goes on already."""

from collections.abc import Sequence
from datetime import date

from django.core.exceptions import ValidationError

from process.models import Cathode, Pull, Run
from records import clock, gates
from records.models import Gate

from .moulds import OFF_A_MOULD, ON_A_CORE, hold_moulds, use_pull, using


def enter_bath(*, run: Run, cathodes: Sequence[Cathode], on: date, afterwards: bool) -> None:
    """The gates are passed, and each mould loses a pull; call it within the transaction that writes the line."""
    refuse_before_made(cathodes, on)
    hold_moulds(cathode.mould for cathode in cathodes if cathode.mould)
    _pass_gates(run, cathodes, on, afterwards)
    for cathode in cathodes:
        if cathode.mould:
            cathode.pull = use_pull(mould=cathode.mould, on=on, use=Pull.Use.DEPOSIT)
        if cathode.mould or cathode._state.adding:
            cathode.save()


def refuse_before_made(cathodes: Sequence[Cathode], day: date) -> None:
    """Nothing hangs in a bath before it is there; no gate and no concession can change that."""
    for cathode in cathodes:
        source = cathode.mould or cathode.core
        made_on = cathode.mould.made_on if cathode.mould else cathode.core.cast_on if cathode.core else None
        if source and made_on and day < made_on:
            raise ValidationError(
                f"{source.item.number} was made on {clock.day_words(made_on)}: it went into the bath later than that."
            )


def _subjects(run: Run, cathode: Cathode) -> list[tuple[str, gates.Subject]]:
    """Which gates a cathode stands before."""
    source = cathode.mould or cathode.core
    if source is None:
        raise ValidationError(
            f"“{cathode.label}” is neither a mould nor a core: say which one hangs there before the start."
        )
    bath = gates.Subject(cathode, run.number, (source.item,))
    mould = cathode.mould or cathode.core.pull.mould
    model, techniques = mould.model, OFF_A_MOULD if cathode.mould else ON_A_CORE
    act = using(mould, f"{source.item.number} goes into {run.number}", techniques)
    before = [(Gate.PERMISSION, gates.Subject(model, run.number, (model, source.item), act=act))]
    if cathode.mould:
        before.append((Gate.AFTER, gates.Subject(model, run.number, (model, source.item))))
    return [*before, (Gate.BATH, bath)]


def _pass_gates(run: Run, cathodes: Sequence[Cathode], day: date, afterwards: bool) -> None:
    """Every unmet check of the whole rail is shown at once, so that nobody walks to the bath three times."""
    before = [pair for cathode in cathodes for pair in _subjects(run, cathode)]
    missing = [(gate, check) for gate, subject in before for check in gates.unmet(gate, subject, day)]
    if missing and not afterwards:
        checks = {check.sentence: check for _, check in missing}
        sources = [(cathode.mould or cathode.core).item for cathode in cathodes]
        raise gates.GateClosed(missing[0][0], list(checks.values()), sources)
    for gate, subject in before if missing else ():
        gates.pass_gates([gate], subject, day, afterwards=True)
