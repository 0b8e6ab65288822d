"""What must be true before a copy leaves the house. Without its mark it does not leave; nothing stands in for that."""

from datetime import date

from django.core.exceptions import ValidationError

from records import gates
from records.checks import permanent_mark
from records.clock import day_words
from records.gates import Check, Subject, gate_check
from records.models import Document, Gate, Handover, Item
from records.roles import CURATOR

CERTIFICATE = "certificate issued"


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


def _handed(subject: Subject) -> Item | None:
    return subject.thing.item if isinstance(subject.thing, Handover) else None


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
    """What is asked of the handover itself: the certificate that travels with it."""
    copy = handover.item
    subject = Subject(handover, copy.number, (copy,))
    if found := certificate_issued(subject, on):
        gates.pass_check(Gate.IDENTIFY, found, subject, on, afterwards=afterwards)
