"""What must be true before a copy leaves the house. Without its mark it does not leave; nothing stands in for that."""

from datetime import date

from django.core.exceptions import ValidationError

from records import gates
from records.checks import permanent_mark
from records.clock import day_words
from records.gates import Check, Subject, gate_check
from records.lineage import descent_of
from records.models import Consent, Document, Gate, Handover, Item
from records.roles import CURATOR, REGISTRAR

CERTIFICATE, SALE = "certificate issued", "sale allowed"


@gate_check(Gate.IDENTIFY, CERTIFICATE)
def certificate_issued(subject: Subject, on: date) -> Check | None:
    """The certificate travels with a copy that was made here; asked when it is handed over."""
    copy = _handed(subject)
    if copy is None or not copy.made_here:
        return None
    paper = Document.objects.filter(kind="certificate", item=copy).first()
    if paper:
        return Check(CERTIFICATE, True, f"{paper}, {day_words(paper.issued_at)}.")
    return Check(CERTIFICATE, False, f"No certificate of reproduction of {copy.number} is issued.", CURATOR)


@gate_check(Gate.PERMISSION, SALE)
def sale_allowed(subject: Subject, on: date) -> Check | None:
    """The owner of what a copy repeats may have barred its sale; asked when a sale is agreed and handed over."""
    copy = _handed(subject)
    if copy is None or subject.thing.kind != Handover.Kind.SALE:
        return None
    barring = _consents_of(copy).filter(sale_allowed=False).first()
    if barring is None:
        return Check(SALE, True, f"No consent bars the sale of {copy.number}.")
    said = barring.conditions.strip() or "no sale"
    sentence = f"The consent of {barring.owner}, {day_words(barring.given_on)}, does not allow a sale: “{said}”"
    return Check(SALE, False, sentence, REGISTRAR)


def _handed(subject: Subject) -> Item | None:
    return subject.thing.item if isinstance(subject.thing, Handover) else None


def _consents_of(copy: Item):
    """Those for what the copy was taken from, and for the commission that it was made for."""
    chain = descent_of(copy)
    behind = Consent.objects.filter(items__in=[thing.pk for thing in chain.forebears])
    return (behind | Consent.objects.filter(commissions__in=copy.made_for.all())).select_related("owner").distinct()


def refuse_unmarked(handover: Handover, on: date, *, afterwards: bool) -> None:
    """Its mark, whatever was conceded elsewhere; what has happened all the same is kept as unmet."""
    copy = handover.item
    check = permanent_mark(Subject(copy, copy.number, (copy,)), on)
    if check is None or check.met:
        return
    if not afterwards:
        raise ValidationError(
            f"{check.sentence} An unmarked copy does not leave the house: outside, nothing tells it from its original."
        )
    gates.pass_check(Gate.MARK, check, Subject(copy, copy.number, ()), on, afterwards=True)


def pass_leaving(handover: Handover, on: date, *, afterwards: bool) -> None:
    """All that stands before this kind of handover."""
    refuse_unmarked(handover, on, afterwards=afterwards)
    if handover.kind == Handover.Kind.FINISHER:
        return
    copy = handover.item
    gates.pass_gates([Gate.ACCEPT, Gate.IDENTIFY], Subject(copy, copy.number, (copy,)), on, afterwards=afterwards)
    pass_own(handover, on, afterwards=afterwards)


def pass_own(handover: Handover, on: date, *, afterwards: bool) -> None:
    """The checks that are asked of the handover itself: its certificate, and the owner's word on a sale."""
    copy, subject = handover.item, Subject(handover, handover.number, (handover.item,))
    for gate, check in ((Gate.IDENTIFY, certificate_issued), (Gate.PERMISSION, sale_allowed)):
        if found := check(subject, on):
            gates.pass_check(gate, found, Subject(handover, copy.number, (copy,)), on, afterwards=afterwards)


def pass_sale(handover: Handover, on: date) -> None:
    """A sale that the owner bars is not even agreed."""
    copy = handover.item
    if found := sale_allowed(Subject(handover, handover.number, (copy,)), on):
        gates.pass_check(Gate.PERMISSION, found, Subject(handover, copy.number, (copy,)), on, afterwards=False)
