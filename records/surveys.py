"""Surveys: when each copy is looked at again, by the museum's table, the piece's history and its last report."""

from calendar import monthrange
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import groupby
from operator import attrgetter
from urllib.parse import urlencode

from django.db.models import Max, QuerySet
from django.urls import reverse
from django.utils import timezone

from records import clock
from records.clock import day_words
from records.extensions import SurveyHistory, survey_histories
from records.models import ConditionReport, Item, Place, SurveyRule, Urgency
from records.portraits import with_portraits

NOT_SURVEYED = [Item.Status.WORKSHOP, Item.Status.LEFT, Item.Status.LOST, Item.Status.DESTROYED]
OTHER = "other"
NO_PLACE = "none"
# How soon one looks again at what was urgent, whatever the table says: the upper ends of the scale of urgency.
SOONER_MONTHS = {Urgency.MONTHS: 12, Urgency.WEEKS: 1}
SOON = timedelta(days=30)
NAMED = 3  # more pieces at one place are counted


@dataclass(frozen=True)
class Survey:
    """A copy, the day by which it is looked at, and from what that day follows."""

    item: Item
    due_on: date
    because: str
    last: ConditionReport | None = None
    begun: ConditionReport | None = None

    @property
    def place(self) -> Place | None:
        return self.item.place

    @property
    def state(self) -> str:
        today = clock.today()
        return "blocked" if self.due_on < today else "look" if self.due_on <= today + SOON else "open"

    @property
    def state_words(self) -> str:
        return {"blocked": "overdue", "look": "due", "open": "later"}[self.state]


def surveyed() -> QuerySet:
    """Copies that are in the house, or lent: what is looked at again."""
    rows = Item.objects.copies().exclude(status__in=NOT_SURVEYED).select_related("place", "survey_date")
    return with_portraits(rows)


def surveys_of(items: Iterable[Item]) -> list[Survey]:
    """The next survey of each, by place, then by day."""
    listed = list(items)
    keys = [item.pk for item in listed]
    rules = {rule.history_code: rule for rule in SurveyRule.objects.all()} if listed else {}
    signed, begun = _reports(keys) if listed else ({}, {})
    known = {key: told for source in survey_histories for key, told in source(keys).items()} if listed else {}
    found = [_survey(item, known.get(item.pk), rules, signed.get(item.pk), begun.get(item.pk)) for item in listed]
    return sorted(found, key=lambda s: (s.place.name if s.place else "~", s.due_on, s.item.number))


@dataclass(frozen=True)
class Stop:
    """One place of a round: what is due there, and since when."""

    place: Place | None
    surveys: list[Survey]

    @property
    def first(self) -> Survey:
        return min(self.surveys, key=lambda survey: survey.due_on)

    @property
    def sentence(self) -> str:
        numbers = [survey.item.number for survey in self.surveys]
        words = ", ".join(numbers) if len(numbers) <= NAMED else f"{len(numbers)} copies"
        return f"Survey {words}, {self.place or 'no known place'}"

    @property
    def url(self) -> str:
        """The round at this place."""
        return f"{reverse('survey_list')}?{urlencode({'place': self.place.pk if self.place else NO_PLACE})}"


def stops_due() -> list[Stop]:
    """Where copies are to be looked at within a month, the most overdue place first."""
    due = [s for s in surveys_of(surveyed()) if s.due_on <= clock.today() + SOON and not s.begun]
    stops = [Stop(place, list(here)) for place, here in groupby(due, key=attrgetter("place"))]
    return sorted(stops, key=lambda stop: stop.first.due_on)


def _reports(keys: list[int]) -> tuple[dict[int, ConditionReport], dict[int, ConditionReport]]:
    """The last signed report of each thing, and the last that waits for its signature."""
    rows = ConditionReport.objects.filter(item__in=keys).annotate(most_urgent=Max("findings__urgency"))
    signed, begun = {}, {}
    for report in rows.order_by("examined_on", "number"):
        (signed if report.is_signed else begun)[report.item_id] = report
    return signed, begun


def _survey(item: Item, history: SurveyHistory | None, rules: dict, last, begun) -> Survey:
    fixed = getattr(item, "survey_date", None)
    if fixed and not (last and last.signed_at > fixed.set_at):
        return Survey(item, fixed.due_on, f"set by a person: {fixed.because}", last, begun)
    rule = rules[history.code if history else OTHER]
    if _is_first(history, last):
        due_on, because = _after_making(item, history, rule)
    else:
        due_on, because = _after_report(rule, last, history)
    return Survey(item, due_on, because, last, begun)


def _is_first(history: SurveyHistory | None, last: ConditionReport | None) -> bool:
    """An acceptance is no survey: the first one is counted from it."""
    if last is None:
        return True
    since = history.since if history else None
    return since is not None and (last.occasion == "acceptance" or last.examined_on <= since)


def _after_making(item: Item, history: SurveyHistory | None, rule: SurveyRule) -> tuple[date, str]:
    if history is None or history.since is None:
        entered = timezone.localtime(item.created_at).date()
        return entered, "never examined since it was entered"
    months, why = _not_longer(history, rule.first_months_count, rule.label.lower())
    told = f"{_months(months)} after it was {history.words} on {day_words(history.since)}"
    return months_after(history.since, months), f"{why}: {told}"


def _not_longer(history: SurveyHistory | None, months: int, why: str) -> tuple[int, str]:
    """What lies inside a piece may ask for a look sooner than its history does."""
    if history and history.at_most_months and history.at_most_months < months:
        return history.at_most_months, history.inside
    return months, why


def _after_report(rule: SurveyRule, last: ConditionReport, history: SurveyHistory | None) -> tuple[date, str]:
    months, why = _not_longer(history, rule.later_months_count, rule.label.lower())
    urgent = SOONER_MONTHS.get(last.most_urgent or 0, months)
    if urgent < months:
        months, why = urgent, f"urgency {last.most_urgent} in {last.number}"
    return months_after(last.examined_on, months), f"{why}: {_months(months)} after {last.number}"


def _months(count: int) -> str:
    return f"{count} month{'' if count == 1 else 's'}"


def months_after(day: date, months: int) -> date:
    """The same day of a later month, or its last one where that month is shorter."""
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))
