"""Interruptions of a run: when, what is known of each, how deep its boundary lies in each wall, and the risk."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property
from typing import Any

from process.chemistry.lamination import Risk, RiskRow, Stoppage, Verdict, judge_stoppage
from process.models import Answer, Event, InterruptionAnswers, RiskRule, Run
from process.models.run_rows import RULE_COLUMNS
from process.summaries.answers import RISKS, Answers, answers_to
from process.summaries.boundaries import Boundary, Wall, boundaries_at
from process.summaries.figures import apart
from process.summaries.segments import Rail
from process.summaries.sheet import hours
from process.summaries.stretches import Stretch, joined, stretches_on
from records import clock
from records.figures import Figure

WORDS = {Risk.NOTE: "note only", Risk.LOW: "low risk", Risk.MEDIUM: "medium risk", Risk.HIGH: "high risk"}
SHAPES = {Risk.NOTE: "open", Risk.LOW: "open", Risk.MEDIUM: "look", Risk.HIGH: "blocked"}
TRUE_OR_FALSE = {Answer.YES: True, Answer.NO: False}


def rule_of(run: Run) -> tuple[RiskRow, ...]:
    """The museum's rule, as it came with the run; asked for where it did not."""
    rows = getattr(run, "rule_rows", None)
    if rows is None:
        rows = list(RiskRule.objects.filter(is_retired=False).values(*RULE_COLUMNS))
    return tuple(map(_rule_row, sorted(rows, key=lambda row: row["id"])))


def _rule_row(row: dict[str, Any]) -> RiskRow:
    asked = {name: TRUE_OR_FALSE.get(row[name]) for name in ("contact_lost", "activated", "returned_by_itself")}
    plain = {name: row[name] for name in ("longer_than_s", "up_to_s", "handling", "out_up_to_s", "words")}
    return RiskRow(RISKS[row["risk"]], time_is_known=TRUE_OR_FALSE.get(row["time_known"]), **asked, **plain)


@dataclass(frozen=True)
class Interruption:
    """One stretch without current with its answers, its boundaries and its risk."""

    stretch: Stretch
    answers: Answers
    run: Run
    until: datetime
    charge_before_ah: float
    boundaries: tuple[Boundary, ...] = ()

    @property
    def began_at(self) -> datetime:
        return self.stretch.began_by

    @property
    def ended_at(self) -> datetime | None:
        return self.stretch.ended_by

    @property
    def key(self) -> str:
        """Its name in addresses: the instant by which it had begun, in UTC."""
        return f"{self.began_at:%Y%m%dT%H%M%S}"

    @property
    def hours(self) -> float:
        return hours((self.ended_at or self.until) - self.began_at)

    @property
    def duration(self) -> str:
        """3 h 10 min, or the bounds between which it lies."""
        shortest, longest = spans_of(self.stretch, self.until)
        if _clock_words(shortest) == _clock_words(longest):
            return _clock_words(longest)
        return f"between {_clock_words(shortest)} and {_clock_words(longest)}"

    @property
    def is_bounded(self) -> bool:
        """Its beginning or its end is only known to lie between two instants."""
        stretch = self.stretch
        return stretch.began_after != stretch.began_by or stretch.ended_after != stretch.ended_by

    @cached_property
    def verdict(self) -> Verdict:
        """What the rule says; it is read when somebody asks for the risk."""
        answers = self.answers
        stoppage = Stoppage(
            *spans_of(self.stretch, self.until), answers.handling or None, answers.out_of_bath_s, answers.activated,
            answers.returned_by_itself, answers.cause == Event.Cause.CONTACT if answers.cause else None,
        )  # fmt: skip
        return judge_stoppage(stoppage, rule_of(self.run))

    @property
    def words(self) -> tuple[str, ...]:
        """What was answered, and what stands on the sheet beside it."""
        notes = [row.note for row in self.stretch.rows if row.note]
        own = self.answers.row.note if self.answers.row else ""
        return tuple(filter(None, [*self.answers.words(), *notes, own]))

    @property
    def unanswered(self) -> list[str]:
        return self.answers.unanswered(self.stretch.came_back)

    @property
    def is_silent(self) -> bool:
        """Current flowed again, and nobody wrote how it came back."""
        return self.stretch.came_back and not self.stretch.restart_was_written

    @property
    def set_by_hand(self) -> InterruptionAnswers | None:
        return self.answers.row if self.answers.row and self.answers.row.set_risk else None

    @property
    def risk(self) -> Risk:
        """By the rule, or as a named person has set it with a reason."""
        return RISKS[self.set_by_hand.set_risk] if self.set_by_hand else self.verdict.risk

    @property
    def risk_word(self) -> str:
        return WORDS[self.risk]

    @property
    def rule_word(self) -> str:
        return WORDS[self.verdict.risk]

    @property
    def shape(self) -> str:
        return SHAPES[self.risk]

    @property
    def rule_words(self) -> str:
        """The rows of the rule that decide."""
        rows = "; ".join(row.words for row in self.verdict.rows)
        return rows or "no row of the rule fits, so it counts as high"

    @property
    def makes_boundary(self) -> bool:
        """Something grew after it, so there is a boundary in the wall."""
        return self.stretch.came_back

    @property
    def depths(self) -> tuple[Figure, ...]:
        return tuple(each.depth for each in self.boundaries)


def interruptions_of(
    run: Run, rail: Rail, walls: Sequence[Wall], others: Sequence[Stretch] = (), traced_ah: float | None = None
) -> tuple[Interruption, ...]:
    """Every interruption that the sheet or other evidence shows, judged by the rule.

    `traced_ah` is the charge of the run by its traces, where that was chosen: then they tell the charge before, too.
    """
    found = joined([*stretches_on(rail.sheet), *others])
    rows = _answers(run) if found else []
    until = rail.sheet.until_at or clock.now()
    return tuple(_interruption(each, answers_to(each, rows), rail, walls, until, run, traced_ah) for each in found)


def _interruption(
    stretch: Stretch, answers: Answers, rail: Rail, walls, until: datetime, run: Run, traced_ah: float | None
) -> Interruption:  # fmt: skip
    if stretch.logged is not None and traced_ah:
        before, _ = apart(stretch.logged.m)
    else:
        (before,) = rail.sheet.charge_by([stretch.began_by])
    walls = boundaries_at(stretch, rail, walls, traced_ah) if stretch.came_back else ()
    return Interruption(stretch, answers, run, until, before, walls)


def spans_of(stretch: Stretch, until: datetime) -> tuple[float, float]:
    """The shortest and the longest that it may have lasted, in seconds."""
    least = (stretch.ended_after or until) - stretch.began_by
    most = (stretch.ended_by or until) - stretch.began_after
    return max(least.total_seconds(), 0.0), max(most.total_seconds(), 0.0)


def _clock_words(seconds: float) -> str:
    if seconds < 60:
        return f"{seconds:.0f} s"
    whole, minutes = divmod(round(seconds / 60), 60)
    return f"{whole} h {minutes} min" if whole else f"{minutes} min"


def _answers(run: Run) -> list[InterruptionAnswers]:
    """From what was prefetched, if it was; else with those who gave them."""
    if "interruption_answers" in getattr(run, "_prefetched_objects_cache", {}):
        return list(run.interruption_answers.all())
    return list(run.interruption_answers.select_related("answered_by", "set_risk_by"))
