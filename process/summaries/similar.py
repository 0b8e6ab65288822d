"""Runs like this one, the failed first: what hung there before, and what came of it."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from process.models import Cathode, Run

SHOWN = 6


@dataclass(frozen=True)
class Lesson:
    """One line beside a plan: what to look at, where it is told, and how it stands."""

    title: str
    words: str
    url: str
    state: str = "open"


# Other rooms add to what stands beside a plan: each takes the run and gives its lessons.
lesson_sources: list[Callable[[Run], Iterable[Lesson]]] = []

STATES = {
    Run.Outcome.FAILED: "look",
    Run.Outcome.GOOD: "done",
    Run.Outcome.RESERVED: "look",
    Run.Outcome.ABANDONED: "open",
}


def lessons_for(run: Run, cathodes: list[Cathode]) -> list[Lesson]:
    """From every source, then the earlier runs of the same models or, where there are none, of the same bath."""
    found = [lesson for source in lesson_sources for lesson in source(run)]
    return [*found, *map(_told, similar_runs(run, cathodes))]


def similar_runs(run: Run, cathodes: list[Cathode]) -> list[Run]:
    models = {cathode.mould.model_id for cathode in cathodes if cathode.mould_id}
    rows = Run.objects.exclude(pk=run.pk).exclude(outcome="").filter(ion=run.ion)
    alike = list(rows.filter(cathodes__mould__model__in=models).distinct()) if models else []
    chosen = alike or list(rows.filter(bath=run.bath_id)[:SHOWN])
    return sorted(chosen, key=lambda each: each.outcome != Run.Outcome.FAILED)[:SHOWN]


def _told(run: Run) -> Lesson:
    words = f"{run.get_outcome_display().capitalize()}. {run.outcome_words}".strip()
    return Lesson(run.number, words, run.get_absolute_url(), STATES.get(run.outcome, "open"))
