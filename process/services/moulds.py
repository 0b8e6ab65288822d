"""Moulds: taking one, and using a pull of it."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from typing import Any

from django.db import transaction
from django.db.models import Max

from process.models import Core, Mould, MouldWear, Pull
from records import gates
from records.consents import Act, quoted
from records.models import Consent, DescentLink, Gate, Item
from records.roles import CONSERVATOR

BEFORE_MOULDING = (Gate.PERMISSION, Gate.RISK, Gate.BEFORE)


def take_mould(*, number: str, mould: Mould, title: str, owner, place, afterwards: bool) -> Mould:
    """Record a mould with its item and its step of descent, if permission, risk and condition allow it."""
    model = mould.model
    with transaction.atomic():
        item = Item.objects.create(
            number=number, kind=Item.Kind.MOULD, status=Item.Status.WORKSHOP, title=title, owner=owner, place=place,
            materials=mould.material.label, documented_on=mould.made_on,
        )  # fmt: skip
        subject = gates.Subject(model, number, (model, item), act=_moulding(number, mould))
        gates.pass_gates(BEFORE_MOULDING, subject, mould.made_on, afterwards=afterwards)
        mould.item = item
        mould.save(force_insert=True)
        DescentLink.objects.create(
            source=model,
            target=item,
            transfer=DescentLink.Transfer.MOULDING,
            side=mould.side,
            happened_on=mould.made_on,
        )
    return mould


def _moulding(number: str, mould: Mould) -> Act:
    """What the conditions of a consent are asked of."""
    commission = mould.commission
    return Act(
        words=f"{number} was taken", commission=commission, is_moulding=True, material=mould.material,
        temperature_degc=mould.working_temperature_degc, purposes=(commission.purpose.label,) if commission else (),
        present=tuple(party for party in (mould.made_by, mould.present) if party),
    )  # fmt: skip


OFF_A_MOULD = (Consent.Technique.HOLLOW, Consent.Technique.MATRIX, Consent.Technique.FACING)
ON_A_CORE = (Consent.Technique.CORE,)


def using(mould: Mould, words: str, techniques: tuple[str, ...]) -> Act:
    """A run or a cast uses the mould, or the core that was cast in it."""
    return Act(words=words, commission=mould.commission, uses_mould=True, techniques=techniques)


def pulls_allowed(mould: Mould) -> int:
    """What the mould bears or what the owner's consent allows: the lower one rules."""
    return min([mould.pulls_allowed_count, *(consent.pulls_max_count for consent in _limiting(mould))])


def _limiting(mould: Mould) -> list[Consent]:
    """The consents that say how many uses each mould may have, the strictest first."""
    rows = mould.model.consents.filter(pulls_max_count__isnull=False).select_related("owner")
    return list(rows.order_by("pulls_max_count"))


def pull_check(mould: Mould) -> gates.Check:
    """Whether a use of the mould is left, by what it bears and by the consent; the lower one says so itself."""
    limiting, used = _limiting(mould), mould.pulls.count()
    allowed = min([mould.pulls_allowed_count, *(consent.pulls_max_count for consent in limiting)])
    sentence = f"{mould.item.number}: {used} of {allowed} pulls used."
    if worn := mould.wear_seen.filter(bearing=MouldWear.Bearing.ENDS).last():
        return gates.Check("pull left", False, f"{sentence} Worn out: {worn.feature}"[:400], CONSERVATOR)
    if limiting and limiting[0].pulls_max_count == allowed and used >= allowed:
        sentence += f" {quoted(limiting[0], 'pulls')}"
    return gates.Check("pull left", used < allowed, sentence, CONSERVATOR)


def hold_moulds(moulds: Iterable[Mould]) -> None:
    """Keep these moulds to this transaction, so that two runs cannot take the last pull at the same moment."""
    numbers = sorted({mould.pk for mould in moulds})  # in one order, so that two rails never wait for each other
    list(Mould.objects.select_for_update(of=("self",)).filter(pk__in=numbers).order_by("pk").only("pk"))


def use_pull(*, mould: Mould, on: date, use: str, **more: Any) -> Pull:
    """Count one use of a mould. Whether one is left is a check of the bath gate, not of this count."""
    last = mould.pulls.aggregate(last=Max("number_count"))["last"] or 0
    return Pull.objects.create(mould=mould, number_count=last + 1, use=use, used_on=on, **more)


def cast_core(*, mould: Mould, number: str, core: Core, title: str, owner, place, afterwards: bool) -> Core:
    """Cast a core in a mould: it uses a pull, and becomes an item of its own with its step of descent."""
    with transaction.atomic():
        item = Item.objects.create(
            number=number, kind=Item.Kind.CORE, status=Item.Status.WORKSHOP, title=title, owner=owner, place=place,
            materials=core.material, documented_on=core.cast_on,
        )  # fmt: skip
        hold_moulds([mould])
        subject = gates.Subject(mould.model, number, (mould.model, mould.item, item))
        consent = replace(subject, act=using(mould, f"{number} is cast in {mould.item.number}", ON_A_CORE))
        gates.pass_gates([Gate.PERMISSION], consent, core.cast_on, afterwards=afterwards)
        gates.pass_gates([Gate.AFTER], subject, core.cast_on, afterwards=afterwards)
        gates.pass_check(Gate.BATH, pull_check(mould), subject, core.cast_on, afterwards=afterwards)
        core.item, core.pull = item, use_pull(mould=mould, on=core.cast_on, use=Pull.Use.CAST)
        core.save(force_insert=True)
        DescentLink.objects.create(
            source=mould.item,
            target=item,
            transfer=DescentLink.Transfer.CASTING,
            side=mould.side,
            happened_on=core.cast_on,
        )
    return core
