"""From a kept file, its mapping and its decisions to the figures of a trace; outside of every transaction."""

import sys
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from process.models import HeaderWord, Trace, TraceCurve, TraceShape
from process.services.trace_files import path_of
from process.summaries.trace_context import context_of
from process.tracing import (
    ENGINE,
    Mapping,
    Proposal,
    argue,
    evaluate,
    read,
    reduce,
    sniff,
    survey,
)
from process.tracing.samples import Samples, span_of
from process.tracing.survey import Survey

NO_LIMIT = sys.maxsize
READING = "reading the lines"
# Shares of the time that each step takes with five million rows; all but the reading together take a tenth.
READ, COMPARED, ADDED, DRAWN = 0.05, 0.9, 0.94, 0.97
Tell = Callable[[str, float], None]


def unheard(step: str, share: float) -> None:
    """Where the person waits for the page itself, nobody asks how far it is."""


@dataclass(frozen=True)
class Reckoning:
    """What the rows hold of a trace: `columns` of Trace, and the points of its curve."""

    columns: dict[str, Any]
    points: list[list[float | None]] = field(default_factory=list)


def propose(path: Path, limit_bytes: int = NO_LIMIT, delimiter: str = "") -> Proposal:
    """How the file is to be read, by the museum's words and the shapes that it remembers."""
    words = list(HeaderWord.objects.values_list("meaning", "word"))
    shapes = {row.signature: Mapping.from_json(row.mapping) for row in TraceShape.objects.all()}
    return sniff(survey(path, limit_bytes), words, shapes, delimiter)


def reckon(
    trace: Trace, mapping: Mapping, decisions: dict[str, str], cuts: list[dict[str, float]], tell: Tell = unheard
) -> Reckoning:
    """Read, argue, evaluate, reduce: the same file and the same decisions give the same figures."""
    context, ruled = context_of(trace.run), [(cut["from_s"], cut["to_s"]) for cut in cuts]
    tell(READING, 0.0)
    samples = read_telling(survey(path_of(trace), NO_LIMIT), mapping, tell, until=COMPARED)
    tell("comparing it with the run", COMPARED)
    case, findings = argue(samples, context, decisions, elapsed=mapping.time_kind == "elapsed", cuts=ruled)
    keys = {each.key for each in findings}
    kept = {key: choice for key, choice in decisions.items() if key in keys}
    tell("adding up the charge", ADDED)
    found = evaluate(case, findings, kept, context, ruled)
    tell("drawing the curve", DRAWN)
    volts, warmth = span_of(samples.voltages_v), span_of(samples.temperatures_degc)
    return Reckoning(
        {
            "mapping": mapping.as_json(), "findings": [each.as_json() for each in findings], "decisions": kept,
            "cuts": cuts, "stretches": [each.as_json() for each in found.stretches], "engine": ENGINE,
            "known_ah": found.known_ah, "bridged_ah": found.bridged_ah, "open_ah": found.open_ah,
            "absolute_ah": found.absolute_ah, "switching_ah": found.switching_ah, "interval_s": found.interval_s,
            "energised_s": found.energised_s, "sample_count": found.sample_count,
            "left_out_count": found.left_out_count, "starts_at": _at(found.starts_s), "ends_at": _at(found.ends_s),
            "voltage_least_v": volts and volts[0], "voltage_most_v": volts and volts[1],
            "temperature_least_degc": warmth and warmth[0], "temperature_most_degc": warmth and warmth[1],
        },
        reduce(found.times_s, found.currents_a, 2 * found.interval_s),
    )  # fmt: skip


def read_telling(surveyed: Survey, mapping: Mapping, tell: Tell, *, until: float = 1.0) -> Samples:
    """Read, and say how far it is: `until` is the share that is done when all lines are read."""
    return read(surveyed, mapping, tell=lambda share: tell(READING, READ + share * (until - READ)))


def write(trace: Trace, reckoning: Reckoning, **more: Any) -> None:
    """One short write; call it inside a transaction."""
    for name, value in (reckoning.columns | more).items():
        setattr(trace, name, value)
    trace.save()
    TraceCurve.objects.update_or_create(trace=trace, defaults={"points": reckoning.points})


def cuts_between(ruler: Trace) -> dict[str, float]:
    """The stretch in which this trace rules, as another one is to keep it."""
    return {"from_s": ruler.starts_at.timestamp(), "to_s": ruler.ends_at.timestamp(), "trace": ruler.pk}


def _at(seconds: float) -> datetime:
    return datetime.fromtimestamp(seconds, UTC)
