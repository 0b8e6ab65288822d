"""Hot work on a wall with a boundary that is not to be trusted: it needs a concession."""

from collections.abc import Callable

from django.db import transaction

from process.models import MakingUp, Shell
from process.summaries.copy_limits import is_hot, limits_of_shells
from records import gates
from records.models import Gate, Item
from records.roles import CONSERVATOR

CHECK = "no heat on a boundary"


def hot_work_check(making_up: MakingUp, shells: list[Shell]) -> gates.Check | None:
    """None where nothing hot is done or no wall is limited."""
    if not is_hot(making_up):
        return None
    barred = [limit for limit in limits_of_shells(shells) if limit.bars_heat]
    if not barred:
        return None
    words = " ".join(f"{limit.name}: {limit.risk_word} of lamination. {limit.sentence}" for limit in barred)
    return gates.Check(CHECK, False, f"It is soldered or filled hot. {words}"[:400], CONSERVATOR)


def pass_hot_work(*, copy: Item, making_up: MakingUp, shells: list[Shell], afterwards: bool) -> None:
    """Fill and join cold, or write a concession that names these shells."""
    check = hot_work_check(making_up, shells)
    if check:
        # A concession can only name the shells; what was not met goes on with the copy.
        items = (*(shell.item for shell in shells), *([copy] if afterwards else []))
        subject = gates.Subject(making_up, copy.number, items)
        gates.pass_check(Gate.ACCEPT, check, subject, making_up.made_up_on, afterwards=afterwards)


def correct_making_up(*, making_up: MakingUp, save: Callable[[], MakingUp], afterwards: bool) -> MakingUp:
    """A correction that says it was hot after all stands before the same check."""
    shells = list(making_up.shells.select_related("item"))
    with transaction.atomic():
        if not is_hot(MakingUp.objects.get(pk=making_up.pk)):
            pass_hot_work(copy=making_up.copy, making_up=making_up, shells=shells, afterwards=afterwards)
        return save()
