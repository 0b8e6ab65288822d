"""Taking back a row that should never have been written, and putting it back."""

from django.core.exceptions import ValidationError
from django.db import transaction

from records import clock, extensions
from records.models import Measurement, Party, Strikable

extensions.strikables["measurement"] = extensions.Struck(
    rows=lambda: Measurement.every.select_related("item", "struck_by"),
    words=lambda row: f"{row.get_what_display()} of {row.item.number}",
    back=lambda row: f"{row.item.get_absolute_url()}#measurements",
)


def _held(row: Strikable) -> Strikable:
    """The row as it is now, kept to this transaction."""
    return type(row).every.select_for_update(of=("self",)).get(pk=row.pk)


def strike_out(*, row: Strikable, kind: str, party: Party, reason: str) -> Strikable:
    """It stays, struck through, with who took it back and why; nothing is counted from it any more."""
    with transaction.atomic():
        held = _held(row)
        if held.is_struck:
            return held
        _refuse(held, kind)
        held.struck_at, held.struck_by, held.struck_reason = clock.now(), party, reason
        held._change_reason = f"struck out: {reason}"
        held.save()
        extensions.strikables[kind].follow(held)
    return held


def put_back(*, row: Strikable, kind: str, reason: str) -> Strikable:
    """It counts again; the history keeps that it was struck out."""
    with transaction.atomic():
        held = _held(row)
        if not held.is_struck:
            return held
        _refuse(held, kind)
        held.struck_at, held.struck_by, held.struck_reason = None, None, ""
        held._change_reason = f"put back: {reason}"
        held.save()
        extensions.strikables[kind].follow(held)
    return held


def _refuse(row: Strikable, kind: str) -> None:
    if sentence := extensions.strikables[kind].refuse(row):
        raise ValidationError(sentence)
