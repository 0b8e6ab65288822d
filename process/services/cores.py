"""A core after the bath: weighed again and again, closed, and made up only when its mass is constant."""

from collections.abc import Callable
from datetime import date

from django.core.exceptions import ValidationError
from django.db import transaction
from django.utils import timezone

from process.models import CoreClosing, Shell, Weighing
from process.summaries.drying import drying_of_shell, settled_by
from records import clock, gates
from records.models import Gate, Item, Party, UnmetGate
from records.roles import CONSERVATOR
from records.services.signing import refuse_if_moved_on, sign

DRYING = "core dry"


def keep_weighing(*, weighing: Weighing, reason: str = "", save: Callable[[], Weighing] | None = None) -> Weighing:
    """Add or correct a weighing (`save` is that of its form); the shell's own mass is always that of the last one."""
    _refuse_future(weighing)
    with transaction.atomic():
        item = Item.objects.select_for_update(of=("self",)).get(pk=weighing.item_id)
        if weighing._state.adding and (first := item.weighings.filter(token=weighing.token).first()):
            return first
        shell = Shell.objects.select_related("cathode", "item", "making_up").filter(pk=item.pk).first()
        if shell and shell.cathode.core_id and weighing.kind == Weighing.Kind.SKIN:
            _refuse_closed(shell, weighing)
            _keep_first(shell)
        if reason:
            weighing._change_reason = " ".join(filter(None, [reason, getattr(weighing, "_change_reason", "")]))
        if save:
            save()
        else:
            weighing.save()
        if shell and shell.cathode.core_id:
            follow_series(shell)
    return weighing


def _refuse_future(weighing: Weighing) -> None:
    if weighing.at > clock.now() + clock.FUTURE_TOLERANCE:
        raise ValidationError({"at": "This instant lies in the future: weigh first, then write."})


def _refuse_closed(shell: Shell, weighing: Weighing) -> None:
    """After the closing the piece holds wax and solder too: its mass says nothing of the core any more."""
    closed = next((each for each in shell.closings.all() if each.closes), None)
    day = (closed.sealed_on or closed.decided_on) if closed else None
    if shell.making_up_id and day is None:
        day = shell.making_up.made_up_on
    if day and timezone.localdate(weighing.at) > day:
        raise ValidationError(
            {"at": f"It was closed on {clock.day_words(day)}: what is weighed later holds sealing and finish too. "
             "Enter that mass among the measurements of the copy."}
        )  # fmt: skip


def _keep_first(shell: Shell) -> None:
    """The weighing with which the shell was entered begins its series."""
    if shell.gross_mass_g is None or shell.item.weighings.filter(kind=Weighing.Kind.SKIN).exists():
        return
    begin_series(shell=shell)


def begin_series(*, shell: Shell) -> Weighing | None:
    """What lay on the balance first, as a row of the series."""
    if not shell.cathode.core_id:
        return None
    typed = {"mass_g": shell.as_typed["gross_mass_g"]} if "gross_mass_g" in shell.as_typed else {}
    return Weighing.objects.create(
        item=shell.item, kind=Weighing.Kind.SKIN, at=shell.weighed_at or shell.created_at, mass_g=shell.gross_mass_g,
        as_typed=typed, conditions="surface-dry, first weighing",
    )  # fmt: skip


def follow_series(shell: Shell) -> None:
    """The shell's mass is the last of its series; nothing else may say otherwise."""
    last = shell.item.weighings.filter(kind=Weighing.Kind.SKIN).order_by("at", "pk").last()
    mass, at = (last.mass_g, last.at) if last else (None, None)
    if (shell.gross_mass_g, shell.weighed_at) == (mass, at):
        return
    shell.gross_mass_g, shell.weighed_at = mass, at
    shell.as_typed = {name: typed for name, typed in shell.as_typed.items() if name != "gross_mass_g"}
    if last and "mass_g" in last.as_typed:
        shell.as_typed["gross_mass_g"] = last.as_typed["mass_g"]
    shell._change_reason = f"Weighed again: {last}." if last else "Its last weighing was struck out."
    shell.save()


def closing_check(shell: Shell, on: date) -> gates.Check | None:
    """A skinned core is closed at constant mass; None for a shell without a core inside."""
    drying = drying_of_shell(shell)
    if drying is None:
        return None
    sentence = f"{shell.item.number}: {drying.sentence}"
    return gates.Check(DRYING, settled_by(shell, on), sentence[:400], CONSERVATOR)


def pass_closing(*, shell: Shell, on: date, afterwards: bool, also: tuple[Item, ...] = ()) -> None:
    """Closed already is closed; else the mass must be constant, or a concession for the acceptance names the piece."""
    if any(each.closes for each in shell.closings.all()):
        _carry_on(shell, also)
        return
    check = closing_check(shell, on)
    if check is not None:
        items = (shell.item, shell.cathode.core.item, *also)
        gates.pass_check(Gate.ACCEPT, check, gates.Subject(shell, shell.item.number, items), on, afterwards=afterwards)


def _carry_on(shell: Shell, also: tuple[Item, ...]) -> None:
    """What was not met when it was closed goes on to what is made of it."""
    for row in UnmetGate.objects.filter(check_name=DRYING, items=shell.item_id):
        row.items.add(*also)


def sign_closing(*, closing: CoreClosing, party: Party, role: str, afterwards: bool = False) -> None:
    """The conservator's name under the decision; closing too early needs a concession or is kept as unmet."""
    with transaction.atomic():
        refuse_if_moved_on(closing)
        if closing.decision == CoreClosing.Decision.CLOSE:
            _refuse_gaps(closing)
            pass_closing(shell=closing.shell, on=closing.sealed_on or closing.decided_on, afterwards=afterwards)
        sign(row=closing, party=party, role=role)


def _refuse_gaps(closing: CoreClosing) -> None:
    """What must be on record before a core is closed for good."""
    gaps = []
    if closing.rinse_ph is None:
        gaps.append("Enter the pH of the last rinse: nobody can measure it once the core is closed.")
    if not closing.sealed_with:
        gaps.append("Say what closes the holes and the back.")
    if closing.pinholes_count is None:
        gaps.append("Count the pinholes, nought included: each is a way in for water and out for salt.")
    if gaps:
        raise ValidationError(gaps)
