"""Giving a copy or a shell up: decided on paper, carried out once, its number never free again."""

from django.core.exceptions import ValidationError
from django.db import transaction

from records.models import DescentLink, Disposal, Item

Kind = Item.Kind
GIVEN_UP = (Kind.COPY, Kind.HISTORIC_COPY, Kind.CAST, Kind.MATRIX, Kind.SHELL)


def decide(*, disposal: Disposal) -> Disposal:
    """Keep the decision; the piece is still there."""
    _refuse_absent(disposal.item)
    disposal.save()
    return disposal


def carry_out(*, disposal: Disposal) -> Disposal:
    """The piece is no more; what was seen of it stays, with the photograph of what is left."""
    with transaction.atomic():
        held = Item.objects.select_for_update().get(pk=disposal.item_id)
        if held.status != Item.Status.DESTROYED:
            _refuse_absent(held)
        disposal.save()
        held.status, held.place = Item.Status.DESTROYED, None
        held._change_reason = f"{disposal.get_way_display().capitalize()}, {disposal.number}."
        held.save()
    return disposal


def _refuse_absent(thing: Item) -> None:
    """What is not here, or is a part of something that stays, cannot be given up."""
    if thing.kind not in GIVEN_UP:
        raise ValidationError(
            f"A {thing.get_kind_display()} is not given up here: its own page says what becomes of it."
        )
    if thing.status in (Item.Status.LEFT, Item.Status.LOST, Item.Status.DESTROYED):
        raise ValidationError(f"{thing.number} is held as “{thing.get_status_display()}”: it is not here.")
    out = thing.handovers.filter(out_on__isnull=False, back_on__isnull=True).select_related("party").first()
    if out:
        raise ValidationError(f"{thing.number} is with {out.party} ({out.number}): take it back first.")
    inside = thing.descendants.filter(transfer=DescentLink.Transfer.MAKING_UP).select_related("target").first()
    if inside:
        raise ValidationError(f"{thing.number} is a part of {inside.target.number}: only the whole piece is given up.")
