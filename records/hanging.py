"""What hangs on a thing, read in one query: photographs, reports, papers, duties, provenance, concessions and more.

A page may ask fifteen times; asking each table by itself would use them up before the making is shown.
"""

from dataclasses import dataclass, field
from datetime import date
from typing import Any

from django.db.models import BigIntegerField, DateField, F, OuterRef, QuerySet, Subquery, TextField, Value
from django.db.models.functions import Cast, Coalesce, TruncDate

from records import clock
from records.limits import concessions_along
from records.lineage import Descent
from records.models import (
    Commission,
    Concession,
    ConditionReport,
    Document,
    Duty,
    Finding,
    Gate,
    Grade,
    Item,
    Photo,
    ProvenanceEvent,
    UnmetGate,
)
from records.models.photos import view_words
from records.services.permissions import NOTICE

OCCASIONS = dict(ConditionReport.Occasion.choices)
GATES, GRADES = dict(Gate.choices), {str(value): label for value, label in Grade.choices}


@dataclass(frozen=True)
class Hanging:
    """One row of any of these tables, in the columns that they share."""

    what: str
    pk: int
    number: str
    day: date | None
    words: str
    more: str
    state: str

    @property
    def gate(self) -> str:
        return GATES.get(self.state, self.state)

    @property
    def occasion(self) -> str:
        return OCCASIONS.get(self.words, self.words)

    @property
    def view(self) -> str:
        return self.number

    @property
    def view_words(self) -> str:
        return view_words(self.number, float(self.state) if self.state else None)

    @property
    def grade(self) -> str:
        return GRADES.get(self.more, "")

    @property
    def is_signed(self) -> bool:
        return bool(self.state)

    @property
    def duty_state(self) -> str:
        if self.state:
            return "done"
        today = clock.today()
        return "blocked" if self.day < today else "look" if self.day <= today + NOTICE else "open"


@dataclass(frozen=True)
class Everything:
    reports: list[Hanging] = field(default_factory=list)
    documents: list[Hanging] = field(default_factory=list)
    duties: list[Hanging] = field(default_factory=list)
    commissions: list[Hanging] = field(default_factory=list)
    concessions: list[Hanging] = field(default_factory=list)
    unmet: list[Hanging] = field(default_factory=list)
    photos: list[Hanging] = field(default_factory=list)
    provenance: list[Hanging] = field(default_factory=list)

    @property
    def open_duties(self) -> list[Hanging]:
        return sorted((duty for duty in self.duties if not duty.state), key=lambda duty: duty.day)


def _text(value: Any) -> Cast:
    return Cast(value if hasattr(value, "resolve_expression") else Value(value), TextField())


def _known(value: Any) -> Coalesce:
    """The value as text, or nothing where there is none."""
    return Coalesce(_text(value), _text(""))


def _columns(
    rows: QuerySet, what: str, *, number: Any, day: Any, words: Any, more: Any = "", state: Any = ""
) -> QuerySet:
    """The rows in the common columns, each of the same type in every table."""
    return rows.order_by().values_list(
        _text(what), Cast("pk", BigIntegerField()), _text(number), Cast(day, DateField()),
        _text(words), _text(more), _text(state),
    )  # fmt: skip


def hanging_on(item: Item, chain: Descent) -> Everything:
    """Everything about a thing; duties and concessions of what it was made from hold for it too."""
    line = [item.pk, *(forebear.pk for forebear in chain.forebears)]
    worst = Subquery(Finding.objects.filter(report=OuterRef("pk")).order_by("-severity").values("severity")[:1])
    parts = [
        _columns(ConditionReport.objects.filter(item=item), "reports", number=F("number"), day=F("examined_on"),
                 words=F("occasion"), more=Coalesce(F("grade"), worst, Value(0)), state=F("signed_role")),
        _columns(Document.objects.filter(item=item), "documents", number=F("number"), day=TruncDate("issued_at"),
                 words=F("title"), more=F("edition_count"), state=F("kind")),
        _columns(Duty.objects.filter(item__in=line) | Duty.objects.filter(consent__items__in=line), "duties", number="",
                 day=F("due_on"), words=F("sentence"), more=F("role"), state=_known(F("done_on"))),
        _columns(Commission.objects.filter(originals=item) | Commission.objects.filter(copies=item), "commissions",
                 number=F("number"), day=F("requested_on"), words=F("purpose__label"), more=F("requester__name")),
        _columns(Concession.objects.filter(concessions_along(chain)), "concessions", number=F("number"),
                 day=F("given_on"), words=F("reason"), more=F("limits_of_use"), state=F("gate")),
        _columns(UnmetGate.objects.filter(items=item), "unmet", number=F("subject_number"), day=F("happened_on"),
                 words=F("sentence"), more="", state=F("gate")),
        _columns(Photo.objects.filter(item=item), "photos", number=F("view"), day=TruncDate("taken_at"),
                 words=F("caption"), more=_known(F("taken_by__name")), state=_known(F("angle_deg"))),
        _columns(ProvenanceEvent.objects.filter(item=item), "provenance", number=F("date_words"),
                 day=F("date_earliest"), words=F("what"), more=_known(F("party__name")), state=F("source")),
    ]  # fmt: skip
    found = Everything()
    for row in parts[0].union(*parts[1:]):
        getattr(found, row[0]).append(Hanging(*row))
    found.reports.sort(key=lambda report: (report.day, report.number), reverse=True)
    found.documents.sort(key=lambda paper: (paper.day, paper.pk), reverse=True)
    found.provenance.sort(key=lambda event: (event.day or date.min, event.pk))
    return found
