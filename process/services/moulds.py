"""Moulds: taking one, and using a pull of it."""

from collections.abc import Iterable
from datetime import date
from typing import Any

from django.db import transaction
from django.db.models import Max

from process.models import Core, Mould, Pull
from records import clock, gates
from records.models import DescentLink, Gate, Item
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
        subject = gates.Subject(model, number, (model, item))
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


def pulls_allowed(mould: Mould) -> int:
    """What the mould bears or what the owner's consent allows: the lower one rules."""
    limits = [mould.pulls_allowed_count, *mould.model.consents.values_list("pulls_max_count", flat=True)]
    return min(limit for limit in limits if limit is not None)


def pull_check(mould: Mould) -> gates.Check:
    """Whether a use of the mould is left, by what it bears and by the consent."""
    allowed, used = pulls_allowed(mould), mould.pulls.count()
    return gates.Check(
        "pull left", used < allowed, f"{mould.item.number}: {used} of {allowed} pulls used.", CONSERVATOR
    )


def hold_moulds(moulds: Iterable[Mould]) -> None:
    """Keep these moulds to this transaction, so that two runs cannot take the last pull at the same moment."""
    numbers = sorted({mould.pk for mould in moulds})  # in one order, so that two rails never wait for each other
    list(Mould.objects.select_for_update(of=("self",)).filter(pk__in=numbers).order_by("pk").only("pk"))


def use_pull(*, mould: Mould, on: date, use: str, **more: Any) -> Pull:
    """Count one use of a mould. Whether one is left is a check of the bath gate, not of this count."""
    last = mould.pulls.aggregate(last=Max("number_count"))["last"] or 0
    return Pull.objects.create(mould=mould, number_count=last + 1, use=use, used_on=on, **more)


def add_wear(*, mould: Mould, on: date, seen_on: str, words: str) -> None:
    """What a separation did to the mould is written where the next run is planned from."""
    mould = Mould.objects.select_for_update(of=("self",)).get(pk=mould.pk)  # as it is now: others may have corrected it
    line = f"{clock.day_words(on)}, {seen_on}: {words.strip()}"
    mould.wear = "\n".join(filter(None, [mould.wear, line]))
    mould._change_reason = f"Seen on separation of {seen_on}"
    mould.save()


def cast_core(*, mould: Mould, number: str, core: Core, title: str, owner, place, afterwards: bool) -> Core:
    """Cast a core in a mould: it uses a pull, and becomes an item of its own with its step of descent."""
    with transaction.atomic():
        item = Item.objects.create(
            number=number, kind=Item.Kind.CORE, status=Item.Status.WORKSHOP, title=title, owner=owner, place=place,
            materials=core.material, documented_on=core.cast_on,
        )  # fmt: skip
        hold_moulds([mould])
        subject = gates.Subject(mould.model, number, (mould.model, mould.item, item))
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
