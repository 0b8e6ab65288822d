"""What is begun and not ended: reports to sign, copies to hand over or to ask back. One question for both."""

from collections.abc import Iterable
from datetime import date, timedelta

from django.db.models import Case, CharField, F, Q, QuerySet, Value, When
from django.db.models.functions import Cast
from django.http import HttpRequest
from django.urls import reverse

from records import access, clock
from records.extensions import HomeCard, home_cards
from records.models import ConditionReport, Handover
from records.roles import CONSERVATOR

SHOWN = 24
WEEK = timedelta(days=7)
COLUMNS = ("what", "about", "thing", "day", "whom")


def unfinished(request: HttpRequest) -> Iterable[HomeCard]:
    asked = []
    if request.user.is_superuser or CONSERVATOR in access.roles_of(request.user):
        asked.append(_reports())
    if access.may(request.user, "write", Handover):
        asked.append(_handovers())
    if not asked:
        return
    for what, about, thing, day, whom in asked[0].union(*asked[1:], all=True).order_by("day", "about")[:SHOWN]:
        yield CARDS[what](about, thing, day, whom)


def _text(words: str) -> Cast:
    return Cast(Value(words), CharField())


def _reports() -> QuerySet:
    rows = ConditionReport.objects.filter(signed_at__isnull=True).order_by()
    return rows.annotate(
        what=_text("report"), about=F("number"), thing=F("item__number"), day=F("examined_on"), whom=_text("")
    ).values_list(*COLUMNS)


def _handovers() -> QuerySet:
    """Agreed and still here, and what is due back within four weeks."""
    due = Q(out_on__isnull=False, due_on__lte=clock.today() + 4 * WEEK, kind__in=Handover.RETURNING)
    rows = Handover.objects.filter(Q(out_on=None) | due, back_on=None, called_off_on=None).order_by()
    what = Case(When(out_on=None, then=_text("agreed")), default=_text("out"))
    day = Case(When(out_on=None, then=F("agreed_on")), default=F("due_on"))
    return rows.annotate(
        what=what, about=F("number"), thing=F("item__number"), day=day, whom=F("party__name")
    ).values_list(*COLUMNS)


def _report(number: str, thing: str, day: date, whom: str) -> HomeCard:
    sentence = f"Finish and sign condition report {number} of {thing}"
    old = day < clock.today() - WEEK
    url = reverse("condition", args=[number])
    return HomeCard(sentence, url, "now" if old else "week", "look" if old else "open", things=(thing,))


def _agreed(number: str, thing: str, day: date, whom: str) -> HomeCard:
    return HomeCard(f"Hand {thing} to {whom}", reverse("handover", args=[number]), "week", things=(thing,))


def _out(number: str, thing: str, day: date, whom: str) -> HomeCard:
    today, late = clock.today(), day < clock.today()
    when = "now" if day <= today else "week" if day <= today + WEEK else "later"
    sentence = f"{'Overdue: ask' if late else 'Ask'} for {thing} back from {whom}"
    return HomeCard(
        sentence, reverse("handover", args=[number]), when, "blocked" if late else "look", day, things=(thing,)
    )


CARDS = {"report": _report, "agreed": _agreed, "out": _out}

home_cards.append(unfinished)
