"""The originals of open commissions, each with what has been done of the way to its mould."""

from django.db.models import Exists, OuterRef, QuerySet, Subquery

from records.models import Commission, ConditionReport, DescentLink, RiskAssessment

Occasion = ConditionReport.Occasion
Wanted = Commission.originals.through


def wanted_originals() -> QuerySet:
    """A row for each original of each open commission that has its consent.

    `risk_number` is the latest assessment's, `is_assessed` whether it is signed, `is_refused` what it decided;
    `is_begun_…` tells that a report exists, `is_examined_…` that one is signed; `is_moulded` looks since the request.
    """
    risks = RiskAssessment.objects.filter(item=OuterRef("item")).order_by("-assessed_on", "-pk")
    moulded = DescentLink.objects.filter(
        source=OuterRef("item"), transfer=DescentLink.Transfer.MOULDING,
        happened_on__gte=OuterRef("commission__requested_on"),
    )  # fmt: skip
    rows = Wanted.objects.filter(commission__closed_on__isnull=True).select_related("item", "commission")
    rows = rows.filter(Exists(Commission.objects.filter(pk=OuterRef("commission"), consents__isnull=False)))
    return rows.annotate(
        risk_number=Subquery(risks.values("number")[:1]),
        is_refused=Exists(risks.filter(decision=RiskAssessment.Decision.REFUSE)),
        is_assessed=Exists(risks.filter(signed_at__isnull=False)),
        is_begun_before=_reported(Occasion.BEFORE),
        is_examined_before=_reported(Occasion.BEFORE, signed_at__isnull=False),
        is_begun_after=_reported(Occasion.AFTER),
        is_moulded=Exists(moulded),
    ).order_by("commission__number", "item__number")


def _reported(occasion: str, **more: bool) -> Exists:
    return Exists(ConditionReport.objects.filter(item=OuterRef("item"), occasion=occasion, **more))
