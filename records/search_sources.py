"""What the search box finds besides things: the register's own records by number, name and words."""

from collections.abc import Iterable

from django.db.models import Q
from django.urls import reverse

from records.extensions import SearchHit
from records.models import Commission, Concession, ConditionReport, Handover, Party, RiskAssessment

SHOWN = 20


def commissions(typed: str) -> Iterable[SearchHit]:
    named = Q(number__icontains=typed) | Q(requester__name__icontains=typed)
    for row in Commission.objects.filter(named).select_related("requester", "purpose")[:SHOWN]:
        sentence = f"asked for by {row.requester}, for {row.purpose}"
        yield SearchHit(row.number, sentence, "commission", reverse("commission", args=[row.number]))


def reports(typed: str) -> Iterable[SearchHit]:
    for row in ConditionReport.objects.filter(number__icontains=typed).select_related("item")[:SHOWN]:
        sentence = f"{row.get_occasion_display()}, {row.item.number} {row.item.title}"
        yield SearchHit(row.number, sentence, "condition report", reverse("condition", args=[row.number]))


def risks(typed: str) -> Iterable[SearchHit]:
    for row in RiskAssessment.objects.filter(number__icontains=typed).select_related("item")[:SHOWN]:
        sentence = f"{row.get_decision_display()}, {row.item.number} {row.item.title}"
        yield SearchHit(row.number, sentence, "risk assessment", reverse("risk", args=[row.number]))


def concessions(typed: str) -> Iterable[SearchHit]:
    for row in Concession.objects.filter(number__icontains=typed)[:SHOWN]:
        sentence = f"{row.get_gate_display()}: {row.reason}"
        yield SearchHit(row.number, sentence, "concession", reverse("concession", args=[row.number]))


def handovers(typed: str) -> Iterable[SearchHit]:
    for row in Handover.objects.filter(number__icontains=typed).select_related("item", "party")[:SHOWN]:
        sentence = f"{row.get_kind_display()}, {row.item.number} to {row.party}"
        yield SearchHit(row.number, sentence, "handover", row.get_absolute_url())


def parties(typed: str) -> Iterable[SearchHit]:
    for row in Party.objects.filter(name__icontains=typed)[:SHOWN]:
        yield SearchHit("", row.name, row.get_kind_display(), reverse("party", args=[row.pk]))


OWN_SOURCES = (commissions, reports, risks, concessions, handovers, parties)
