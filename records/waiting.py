"""The originals of commissions that still owe copies, each with what has been done of the way to its mould."""

from typing import Any

from django.db.models import Count, Exists, F, OuterRef, Q, QuerySet, Subquery
from django.http import HttpRequest

from records import clock
from records.lost import GONE
from records.models import Commission, ConditionReport, Consent, DescentLink, Photo, RiskAssessment

Occasion = ConditionReport.Occasion
Wanted = Commission.originals.through
SHOWN = 60


def wanted_originals() -> QuerySet:
    """A row for each original of each open commission that has fewer copies than were asked for.

    `has_consent` tells whether the owner's consent is in force today.

    `risk_number` is the latest assessment's, `is_assessed` whether it is signed, `is_refused` what it decided;
    `is_begun_…` tells that a report exists (after moulding: since the last one), `is_examined_…` that one is signed;
    `is_moulded` looks since the request, `has_mould` at any mould that is still there: a piece is not moulded again
    while one serves; `lacks_…` at a side that a photograph shows and no mould has, where the other side is moulded.
    """
    risks = RiskAssessment.objects.filter(item=OuterRef("item")).order_by("-assessed_on", "-pk")
    moulded = DescentLink.objects.filter(source=OuterRef("item"), transfer=DescentLink.Transfer.MOULDING)
    kept = moulded.exclude(target__status__in=GONE)
    today = clock.today()
    consents = Consent.objects.filter(Q(valid_to__isnull=True) | Q(valid_to__gte=today), valid_from__lte=today)
    rows = Wanted.objects.filter(commission__closed_on__isnull=True).select_related("item", "commission")
    owing = rows.annotate(made_count=Count("commission__copies")).filter(made_count__lt=F("commission__quantity_count"))
    return owing.annotate(
        has_consent=Exists(consents.filter(commissions=OuterRef("commission"), items=OuterRef("item"))),
        risk_number=Subquery(risks.values("number")[:1]),
        is_both_sides=~Exists(risks.filter(decision=RiskAssessment.Decision.ONE_SIDE)),
        is_refused=Exists(risks.filter(decision=RiskAssessment.Decision.REFUSE)),
        is_assessed=Exists(risks.filter(signed_at__isnull=False)),
        is_begun_before=_reported(Occasion.BEFORE),
        is_examined_before=_reported(Occasion.BEFORE, signed_at__isnull=False),
        last_moulded_on=Subquery(moulded.order_by(F("happened_on").desc(nulls_last=True)).values("happened_on")[:1]),
        is_begun_after=_reported(Occasion.AFTER, examined_on__gte=OuterRef("last_moulded_on")),
        is_moulded=Exists(moulded.filter(happened_on__gte=OuterRef("commission__requested_on"))),
        has_mould=Exists(kept),
        lacks_reverse=_lacks(kept, "reverse"),
        lacks_obverse=_lacks(kept, "obverse"),
    ).order_by("commission__number", "item__number")


def wanted_for(request: HttpRequest) -> list:
    """The same for one page, asked of the database once though several cards read it."""
    if not hasattr(request, "_wanted_originals"):
        request._wanted_originals = list(wanted_originals()[:SHOWN])
    return request._wanted_originals


def _lacks(kept: QuerySet, side: str) -> Q:
    other = {"reverse": "obverse", "obverse": "reverse"}[side]
    seen = Exists(Photo.objects.filter(item=OuterRef("item"), view=side))
    return Q(Exists(kept.filter(side=other)), ~Exists(kept.filter(side__in=[side, "whole"])), seen)


def _reported(occasion: str, **more: Any) -> Exists:
    return Exists(ConditionReport.objects.filter(item=OuterRef("item"), occasion=occasion, **more))
