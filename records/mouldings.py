"""Which moulding an examination looks back at: the last one up to its day."""

from collections.abc import Iterable
from datetime import date

from django.db.models import OuterRef, QuerySet

from records.clock import day_words
from records.models import ConditionReport, DescentLink, Item
from records.riding import read_rows, riding

Transfer = DescentLink.Transfer
TOO_EARLY = (
    "{} was moulded on {}: an examination “after moulding” lies on that day or later. Correct the day, or choose "
    "another occasion."
)
USUAL_DAYS = 3
LATE = "This look came {} days after the moulding, usual is within {}: what it finds may have come since."
NOT_RECORDED = (
    "No moulding of {} up to this day is recorded: record the mould, so that it is known what this examination "
    "looks back at."
)


def with_mouldings(things: QuerySet[Item]) -> QuerySet[Item]:
    """For a page about many things."""
    return things.annotate(moulding_rows=riding(_dated().filter(source=OuterRef("pk")), ("id", "happened_on")))


def _dated() -> QuerySet[DescentLink]:
    return DescentLink.objects.filter(transfer=Transfer.MOULDING, happened_on__isnull=False)


def mouldings_of(item: Item) -> list[DescentLink]:
    """The dated mouldings, the latest first; from what came along (`with_mouldings`) or reads `descendants`."""
    if hasattr(item, "moulding_rows"):
        rows = read_rows(DescentLink, item.moulding_rows)
    else:
        rows = [link for link in item.descendants.all() if link.transfer == Transfer.MOULDING and link.happened_on]
    return sorted(rows, key=lambda link: (link.happened_on, link.pk), reverse=True)


def last_moulding(item: Item, on: date) -> DescentLink | None:
    return next((link for link in mouldings_of(item) if link.happened_on <= on), None)


def moulding_of(report: ConditionReport) -> DescentLink | None:
    """What a report “after moulding” looks back at; of another occasion, or where none is recorded, nothing.

    Remembered on the row for its day, since a page asks it for several of its sentences.
    """
    if report.occasion != ConditionReport.Occasion.AFTER:
        return None
    day, found = getattr(report, "_moulding", (None, None))
    if day != report.examined_on:
        found = last_moulding(report.item, report.examined_on)
        report._moulding = report.examined_on, found
    return found


def days_after(report: ConditionReport) -> int | None:
    """How long after the moulding one looked; common practice is within three days."""
    moulding = moulding_of(report)
    return (report.examined_on - moulding.happened_on).days if moulding else None


def occasion_words(report: ConditionReport) -> str:
    """“after moulding of 4 February 2026”; of any other occasion its name."""
    moulding, words = moulding_of(report), report.get_occasion_display()
    return f"{words} of {day_words(moulding.happened_on)}" if moulding else words


def advice(report: ConditionReport) -> str:
    """What is doubtful of a report “after moulding” as to its day; it forbids no signature."""
    if report.occasion != ConditionReport.Occasion.AFTER:
        return ""
    days = days_after(report)
    if days is None:
        return NOT_RECORDED.format(report.item.number)
    return LATE.format(days, USUAL_DAYS) if days > USUAL_DAYS else ""


def too_early(item: Item, day: date) -> str:
    """Why an examination “after moulding” cannot be of that day; empty where it can."""
    known = mouldings_of(item)
    if not known or known[-1].happened_on <= day:
        return ""
    return TOO_EARLY.format(item.number, day_words(known[-1].happened_on))


def looked_back(reports: Iterable[ConditionReport], item: Item, on: date) -> tuple[ConditionReport | None, str]:
    """Of reports “after moulding”, the latest that follows the last moulding up to a day; else why there is none."""
    moulding, rows = last_moulding(item, on), list(reports)
    since = moulding.happened_on if moulding else date.min
    found = next((report for report in rows if report.examined_on >= since and report.change), None)
    early = next((report for report in rows if report.examined_on < since), None)
    if found or moulding is None or early is None:
        return found, ""
    return None, f" {early.number} is of {day_words(early.examined_on)}, before the moulding of {day_words(since)}."
