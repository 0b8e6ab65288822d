"""A round of surveys as a list to take along: what is due at each place, what was found last, room to write."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from itertools import groupby
from operator import attrgetter
from typing import Any

from django.conf import settings
from django.urls import reverse

from records.extensions import PaperContext
from records.limits import limited_among
from records.models import Finding
from records.pdf import blocks as b
from records.pdf.document import build
from records.reports.parts import head, local_day
from records.surveys import Survey

KIND = "Survey list"
ROW = 54.0  # 19 mm: two lines of writing with a gloved hand
PIECE = (("Piece, when due, and what the last look found", "", 84.0),)
BY_HAND = (("Same", "tick", 13.0), ("Changed", "tick", 17.0), ("Seen now", "where, mm, severity 1–3", 56.0))
LIMITS = "▲ Its use is limited: read its tag before it is taken in hand."
RULE = (
    "A line without a tick was not looked at; it never counts as “same”. Each piece gets its own report in the "
    "register the same day; this list alone proves nothing, and is no issued paper."
)


def make_round(
    surveys: Sequence[Survey], *, words: str, light: Mapping[str, str], now: datetime, page_size: str = "A4"
) -> bytes:
    paper = head(KIND, local_day(now), "Copies to be looked at again", words, PaperContext(1, now, "", "", page_size))
    found = _findings(surveys)
    return build(paper, blocks(surveys, found, light), _record(surveys, found, words, now), now)


def blocks(surveys: Sequence[Survey], found: Mapping[int, list[str]], light: Mapping[str, str]) -> list[b.Block]:
    limited = limited_among([survey.item.number for survey in surveys])
    return [
        b.FactList(_facts(surveys)),
        b.RuledLines("Light, with its direction", 1, light.get("light", "")),
        b.RuledLines("Aids; air: °C and % RH", 1, light.get("aids", "")),
        *_by_place(surveys, found, limited),
        b.Prose(RULE),
        b.Signatures((b.Signer("", "Looked at by"), b.Signer("", "Typed in by"))),
    ]  # fmt: skip


def _facts(surveys: Sequence[Survey]) -> tuple[b.Fact, ...]:
    late = sum(survey.state == "blocked" for survey in surveys)
    return (
        b.Fact("Copies", str(len(surveys))), b.Fact("Of them overdue", str(late)),
        b.Fact("Typed in under", f"{settings.BASE_URL}{reverse('survey_list')}"),
    )  # fmt: skip


def _by_place(surveys: Sequence[Survey], found: Mapping[int, list[str]], limited: set[str]) -> list[b.Block]:
    if not surveys:
        return [b.Prose("Nothing is due in this round.")]
    tables: list[b.Block] = []
    for place, here in groupby(surveys, key=attrgetter("place")):
        rows = tuple((_words(survey, found, limited),) for survey in here)
        tables.append(b.BoxTable(PIECE, BY_HAND, rows, str(place or "No known place"), row_height=ROW))
    return tables


def _words(survey: Survey, found: Mapping[int, list[str]], limited: set[str]) -> str:
    """Number and title, and in a second line all that one wants to know before looking."""
    item, last = survey.item, survey.last
    said = [f"{survey.state_words.capitalize()}: {local_day(survey.due_on)}, {survey.because.rstrip('.')}."]
    if last:
        before = "; ".join(found.get(last.pk, [])) or "no findings"
        said.append(f"{last.number}, {last.light}, {last.get_stability_display()}: {before}.")
    if item.number in limited:
        said.append(LIMITS)
    return f"{item.number} {item.title}\n{' '.join(said)}"


def _findings(surveys: Iterable[Survey]) -> dict[int, list[str]]:
    """What each last report found, one question for all."""
    last = [survey.last.pk for survey in surveys if survey.last]
    told: dict[int, list[str]] = {}
    for finding in Finding.objects.filter(report__in=last).select_related("term"):
        words = ", ".join(filter(None, [str(finding.term), finding.location, finding.extent]))
        told.setdefault(finding.report_id, []).append(f"{finding.position_count} {words}")
    return told


def _record(surveys: Sequence[Survey], found: Mapping[int, list[str]], words: str, now: datetime) -> dict[str, Any]:
    return {
        "paper": KIND, "museum": settings.MUSEUM_NAME, "made_on": local_day(now), "round": words,
        "pieces": [
            {
                "number": survey.item.number, "place": str(survey.place or ""), "due_on": survey.due_on.isoformat(),
                "because": survey.because, "last_report": survey.last.number if survey.last else "",
                "findings": found.get(survey.last.pk, []) if survey.last else [],
            }
            for survey in surveys
        ],
    }  # fmt: skip
