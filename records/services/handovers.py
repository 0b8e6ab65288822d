"""Agreeing on a handover, handing a copy over, taking it back; what is final changes owner and place."""

from django.core.exceptions import ValidationError
from django.db import transaction

from records import clock, dating, labelling, wording
from records.leaving import pass_leaving
from records.models import Handover, Item, Place, ProvenanceEvent
from records.services.holding import pass_use
from records.wording import LabelDraft

GONE = (Item.Status.LEFT, Item.Status.LOST, Item.Status.DESTROYED)
TOLD = {
    Handover.Kind.LOAN: "lent",
    Handover.Kind.EXCHANGE: "exchanged",
    Handover.Kind.GIFT: "given",
    Handover.Kind.SALE: "sold",
}


def description_faults(item: Item, words: str) -> list[str]:
    """Why a receiver may not describe a copy in these words: the same rules as for its label."""
    draft = LabelDraft(words, "", item.number, "", "")
    found = wording.check(draft, labelling.gather(item).facts)
    return [complaint.sentence for complaint in found if complaint.severity == "refuse"]


def agree(*, handover: Handover) -> Handover:
    """Keep what was agreed; nothing has left the house yet."""
    _refuse_gone(handover.item)
    shown = handover.kind != Handover.Kind.FINISHER
    if shown and (faults := description_faults(handover.item, handover.described_as)):
        raise ValidationError({"described_as": faults})
    with transaction.atomic():
        _pass_consents(handover, afterwards=False)
        handover.save()
    return handover


def hand_over(*, handover: Handover, afterwards: bool = False) -> Handover:
    """The copy leaves; the receiver has acknowledged that it is one. A final handover changes its owner."""
    copy = handover.item
    _refuse_gone(copy)
    with transaction.atomic():
        held = Item.objects.select_for_update().get(pk=copy.pk)
        _refuse_out(handover, held)
        _pass_consents(handover, afterwards=afterwards)
        pass_leaving(handover, handover.out_on, afterwards=afterwards)
        handover.save()
        if handover.kind in TOLD:
            _tell(handover, held)
        if handover.is_final:
            held.status, held.owner, held.place = Item.Status.LEFT, handover.party, None
            held._change_reason = f"{handover.get_kind_display().capitalize()}, {handover.number}."
            held.save()
    return handover


def take_back(*, handover: Handover, place: Place | None = None) -> Handover:
    """The copy is in the house again, compared with how it went."""
    with transaction.atomic():
        held = Item.objects.select_for_update().get(pk=handover.item_id)
        handover.save()
        if place and place.pk != held.place_id:
            held.place = place
            held.save()
    return handover


def call_off(*, handover: Handover, because: str) -> Handover:
    """What was agreed does not happen."""
    if handover.out_on:
        raise ValidationError(f"{handover.item.number} was handed over already: take it back instead.")
    handover.called_off_on, handover.called_off_because = clock.today(), because
    handover.save()
    return handover


def _pass_consents(handover: Handover, *, afterwards: bool) -> None:
    """The owners of what the copy repeats may have barred a sale, or allowed other purposes only.

    A finisher works on it and has no use of it: no purpose, and nothing asked.
    """
    if handover.kind == Handover.Kind.FINISHER:
        return
    words = f"{handover.item.number} goes to {handover.party}"
    pass_use(copy=handover.item, words=words, purposes=handover.purposes, afterwards=afterwards)


def _refuse_gone(copy: Item) -> None:
    if copy.status in GONE:
        raise ValidationError(f"{copy.number} is held as “{copy.get_status_display()}”: it is not here to be given.")


def _refuse_out(handover: Handover, copy: Item) -> None:
    others = copy.handovers.filter(out_on__isnull=False, back_on__isnull=True).exclude(pk=handover.pk)
    if other := others.select_related("party").first():
        raise ValidationError(f"{copy.number} is with {other.party} ({other.number}): take it back first.")


def _tell(handover: Handover, copy: Item) -> None:
    """The handover stands in the history of the piece."""
    until = f", to {clock.day_words(handover.due_on)}" if handover.due_on else ""
    words = handover.out_on.isoformat()
    read = dating.read(words)
    ProvenanceEvent.objects.create(
        item=copy, date_words=words, date_edtf=read.edtf, date_earliest=read.earliest, date_latest=read.latest,
        what=f"{TOLD[Handover.Kind(handover.kind)]}: {handover.purpose}{until}"[:300], party=handover.party,
        source=handover.number,
    )  # fmt: skip
