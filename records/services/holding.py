"""How a copy is held, who gets it, whose hands are on it; the owners of what it repeats may have said no."""

from collections.abc import Callable

from django.db import transaction

from records import clock, gates
from records.consents import Act
from records.line import line_of
from records.models import Gate, HandlingSession, Item
from records.purposes import EXCHANGE, HANDLING, SALE

HELD_FOR = {Item.Status.FOR_SALE: SALE, Item.Status.EXCHANGE: EXCHANGE, Item.Status.HANDLING: HANDLING}


def keep_thing(*, thing: Item, save: Callable[[], Item], held_anew: bool, afterwards: bool) -> Item:
    """A correction; where it says that the thing is held in another way, the owners' consents are asked."""
    with transaction.atomic():
        if held_anew:
            pass_holding(copy=thing, status=thing.status, afterwards=afterwards)
        return save()


def pass_holding(*, copy: Item, status: str, afterwards: bool = False) -> None:
    """Asked when a copy is accepted and whenever its status changes; call it within the transaction that saves it."""
    if status in HELD_FOR and copy.is_copy:
        pass_use(copy=copy, words=f"{copy.number} is held", purposes=(HELD_FOR[status],), afterwards=afterwards)


def log_handling(*, session: HandlingSession, afterwards: bool = False) -> HandlingSession:
    """Hands are on a copy: not every owner allows that."""
    copy = session.item
    with transaction.atomic():
        pass_use(copy=copy, words=f"{copy.number} is touched", purposes=(HANDLING,), afterwards=afterwards)
        session.save()
    return session


def pass_use(*, copy: Item, words: str, purposes: tuple[str, ...], afterwards: bool = False) -> None:
    """What is done with a copy, against the consents for all that it was made from. They bind it for ever."""
    line = line_of(copy)
    forebears = tuple(line.descent.forebears)
    commissions = {commission.pk for commission in copy.made_for.all()}
    consents = [row for row in line.consents if _binds(row, commissions)]
    if not consents or not purposes:
        return
    act = Act(words=words, purposes=purposes, consents=consents)
    subject = gates.Subject(copy, copy.number, (copy, *forebears), act=act)
    gates.pass_gates([Gate.PERMISSION], subject, clock.today(), afterwards=afterwards)


def _binds(consent, commissions: set[int]) -> bool:
    """A consent that names commissions binds the copies made for them; one that names none, or a copy without, all."""
    named = consent.commission_keys
    return not named or not commissions or bool(named & commissions)
