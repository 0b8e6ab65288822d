"""What the making tells of copies for their surveys: what they came through, since when, and what lies inside them."""

from collections.abc import Iterable
from datetime import UTC, datetime
from typing import Any

from django.db.models import Exists, F, OuterRef, QuerySet, Subquery, Value
from django.db.models.functions import JSONObject

from process.chemistry import judgement
from process.chemistry.drying import settled_since
from process.models import CareRule, Event, FinishStep, Inspection, InterruptionAnswers, MakingUp, Shell, Weighing
from process.summaries.care import traits_named, traits_of
from records.extensions import SurveyHistory, survey_histories
from records.models import Item, Term
from records.models.json_rows import JsonRows
from records.units import ureg

ACCEPTED = [Inspection.Decision.ACCEPT, Inspection.Decision.CONCESSION]


def histories_of(copies: Iterable[int]) -> dict[int, SurveyHistory]:
    """By key of the copy; an interruption is one that was written down, as an event or by answers about it.

    One question, with the table of care beside it: the day's list asks this too.
    """
    accepted = Inspection.objects.filter(copy=OuterRef("pk"), signed_at__isnull=False, decision__in=ACCEPTED)
    rows = Item.objects.filter(pk__in=copies).annotate(
        accepted_on=Subquery(accepted.order_by("-inspected_on").values("inspected_on")[:1]),
        was_interrupted=Exists(_with(Event.objects.filter(kind=Event.Kind.INTERRUPTION)))
        | Exists(_with(InterruptionAnswers.objects.all())),
        finish_rows=_rows(FinishStep.objects.filter(copy=OuterRef("pk")), label=F("finish__label")),
        care_rows=_rows(
            CareRule.objects.filter(survey_months_count__isnull=False),
            trait=F("trait"), months=F("survey_months_count"),
        ),
        skin_rows=_rows(
            Weighing.objects.filter(item__shell__making_up=OuterRef("pk"), kind=Weighing.Kind.SKIN),
            at=F("at"), mass_g=F("mass_g"), item=F("item_id"),
        ),
    )  # fmt: skip
    return {item.pk: _history(item) for item in rows.select_related("making_up__fill")}


def _rows(rows: QuerySet, **columns: F) -> Subquery:
    found = rows.order_by().annotate(one=Value(1)).values("one")
    return Subquery(found.annotate(rows=JsonRows(JSONObject(**columns))).values("rows"))


def _with(stops: QuerySet) -> QuerySet:
    """Interruptions of the runs in which the shells of a copy grew."""
    runs = Shell.objects.filter(making_up=OuterRef(OuterRef("pk"))).values("cathode__run")
    return stops.filter(run__in=runs)


def _history(item: Item) -> SurveyHistory:
    making = getattr(item, "making_up", None)
    months, why = _at_most(item, making)
    if making is None:
        return SurveyHistory("other", None, "", months, why)
    code = "core" if making.core_id else "interrupted" if item.was_interrupted else "other"
    since, words = (item.accepted_on, "accepted") if item.accepted_on else (making.made_up_on, "made up")
    return SurveyHistory(code, since, words, months, why)


def _at_most(item: Item, making: MakingUp | None) -> tuple[int | None, str]:
    """The shortest time between two looks that what lies inside or on the piece asks for, by the table of care."""
    finishes = [FinishStep(finish=Term(label=row["label"])) for row in item.finish_rows or []]
    traits = traits_of(making, finishes, _may_hold_acid(item, making)) if making else traits_named(item)
    asked = [(row["months"], row["trait"]) for row in item.care_rows or [] if row["trait"] in traits]
    months, trait = min(asked, default=(None, ""))
    return months, str(CareRule.Trait(trait).label) if trait else ""


def _may_hold_acid(item: Item, making: MakingUp) -> bool:
    """A skinned core that was never seen to come to rest."""
    if not making.core_id:
        return False
    series: dict[int, list[judgement.Weighing]] = {}
    for row in sorted(item.skin_rows or [], key=lambda each: each["at"]):
        series.setdefault(row["item"], []).append(_weighing(row))
    return not series or any(settled_since(rows) is None for rows in series.values())


def _weighing(row: dict[str, Any]) -> judgement.Weighing:
    """Instants are text in JSON, with or without their zone."""
    at = datetime.fromisoformat(row["at"])
    return judgement.Weighing(at if at.tzinfo else at.replace(tzinfo=UTC), ureg.Quantity(row["mass_g"], "g"))


survey_histories.append(histories_of)
