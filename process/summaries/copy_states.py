"""Where a copy stands, as a word and a shape, and the same as a question to the database."""

from dataclasses import dataclass

from django.db.models import Exists, OuterRef, Q, QuerySet, Subquery

from process.models import Inspection
from records.models import Item, Mark

ACCEPTING = (Inspection.Decision.ACCEPT, Inspection.Decision.CONCESSION)


@dataclass(frozen=True)
class State:
    code: str
    word: str
    shape: str


UNMARKED = State("unmarked", "unmarked", "blocked")
MARKED = State("marked", "marked, not inspected", "open")
ACCEPTED = State("accepted", "accepted", "done")
CONCESSION = State("accepted", "accepted with concession", "look")
REWORK = State("rework", "to be reworked", "look")
REJECTED = State("rejected", "rejected, kept as evidence", "blocked")
HISTORIC = State("historic", "historic copy", "look")
BY_DECISION = {
    Inspection.Decision.ACCEPT: ACCEPTED, Inspection.Decision.CONCESSION: CONCESSION,
    Inspection.Decision.REWORK: REWORK, Inspection.Decision.REJECT: REJECTED,
}  # fmt: skip
CHOICES = [(state.code, state.word) for state in (UNMARKED, MARKED, REWORK, ACCEPTED, REJECTED, HISTORIC)]


def with_states(copies: QuerySet[Item]) -> QuerySet[Item]:
    """Each copy with `has_mark` (permanent, photographed, says copy) and `last_decision` (of a signed inspection)."""
    marks = Mark.objects.filter(item=OuterRef("pk"), purpose=Mark.Purpose.COPY, photo__isnull=False)
    signed = Inspection.objects.filter(copy=OuterRef("pk"), signed_at__isnull=False).order_by("-inspected_on", "-pk")
    return copies.annotate(
        has_mark=Exists(marks.exclude(method=Mark.Method.INK)), last_decision=Subquery(signed.values("decision")[:1])
    )


def state_of(copy: Item) -> State:
    """The state of a row of `with_states`."""
    return state_from(copy.made_here, copy.has_mark, copy.last_decision)


def state_from(made_here: bool, has_mark: bool, decision: str | None) -> State:
    if not made_here:
        return HISTORIC
    if decision and (has_mark or decision != Inspection.Decision.ACCEPT):
        return BY_DECISION[Inspection.Decision(decision)]
    if decision:
        return CONCESSION
    return MARKED if has_mark else UNMARKED


def narrow(copies: QuerySet[Item], code: str) -> QuerySet[Item]:
    """Rows of `with_states` that are in a state."""
    here = Q(kind=Item.Kind.COPY)
    conditions = {
        "historic": Q(kind=Item.Kind.HISTORIC_COPY),
        "unmarked": here & Q(has_mark=False, last_decision__isnull=True),
        "marked": here & Q(has_mark=True, last_decision__isnull=True),
        "accepted": here & Q(last_decision__in=ACCEPTING),
        "rework": here & Q(last_decision=Inspection.Decision.REWORK),
        "rejected": here & Q(last_decision=Inspection.Decision.REJECT),
    }
    return copies.filter(conditions[code]) if code in conditions else copies
