"""Stretches without current inside a run, found in what was written on its sheet and in other evidence."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from itertools import pairwise
from typing import Any

from pint import Quantity
from uncertainties import ufloat

from process.models import Event, Reading, Trace
from process.summaries.charge import SheetLine
from process.summaries.sheet import Sheet
from records.units import ureg


@dataclass(frozen=True)
class Stretch:
    """It began after one instant and by another, and ended so too; the same instant where it is known.

    `ended_by` is None while no current has been seen since. `came_back` says whether current flowed again in the run,
    `restart_was_written` whether anybody entered how; `logged` is the charge before it by the loggers.
    """

    began_after: datetime
    began_by: datetime
    ended_after: datetime | None = None
    ended_by: datetime | None = None
    came_back: bool = False
    restart_was_written: bool = False
    sources: tuple[str, ...] = ()
    rows: tuple[Event | Reading, ...] = ()
    logged: Quantity | None = None


def stretches_on(sheet: Sheet) -> tuple[Stretch, ...]:
    """From the line that found no current to the next one that found some."""
    found: list[Stretch] = []
    flowing: SheetLine | None = None  # the last line with current
    began: Stretch | None = None
    dead: SheetLine | None = None  # the last line without
    for line in sheet.currents:
        if line.current_a > 0 or _is_stop(line):
            if began and dead:
                found.append(_ended(began, dead, line))
            began, flowing = None, line
        else:
            began = began or _begun(flowing, line)
            dead = line
    return (*found, began) if began else tuple(found)


def _is_stop(line: SheetLine) -> bool:
    return isinstance(line.row, Event) and line.row.kind == Event.Kind.STOP


def _begun(flowing: SheetLine | None, line: SheetLine) -> Stretch:
    """An event gives the instant; a reading only says that the current went since the line before."""
    after = flowing.at if flowing and not line.is_switching else line.at
    return Stretch(after, line.at, sources=(_source(line),), rows=(line.row,))


def _ended(began: Stretch, dead: SheetLine, line: SheetLine) -> Stretch:
    after = line.at if line.is_switching else dead.at
    return replace(
        began, ended_after=after, ended_by=line.at, came_back=not _is_stop(line), restart_was_written=line.is_switching,
        sources=tuple(dict.fromkeys((*began.sources, _source(line)))), rows=(*began.rows, line.row),
    )  # fmt: skip


def _source(line: SheetLine) -> str:
    return "an event on the sheet" if line.is_switching else "readings"


def stretches_in(traces: Sequence[Trace]) -> tuple[Stretch, ...]:
    """What accepted logger traces show, in time order; between two of their samples nobody knows the instant.

    The charge before is told where one trace follows the other: of two that overlap neither counted all of it.
    """
    in_turn = all(one.ends_at <= other.starts_at for one, other in pairwise(traces))
    earlier, found = 0.0, []
    for trace in traces:
        found += [_logged(each, earlier if in_turn else None) for each in trace.stretches]
        earlier += trace.charge_ah or 0.0
    return tuple(found)


def _logged(each: dict[str, Any], earlier_ah: float | None) -> Stretch:
    last_on, gone, still_gone, back = (
        None if each[name] is None else datetime.fromtimestamp(each[name], UTC)
        for name in ("last_on_s", "from_s", "to_s", "back_s")
    )
    return Stretch(
        last_on, gone, still_gone if back else None, back, came_back=back is not None,
        restart_was_written=each["restart"] == "recorded", sources=("a logger’s trace",),
        logged=None if earlier_ah is None else _before(each, earlier_ah),
    )  # fmt: skip


def _before(each: dict[str, Any], earlier_ah: float) -> Quantity:
    value, spread = earlier_ah + each["charge_before_ah"], each.get("before_spread_ah")
    return ureg.Quantity(ufloat(value, spread) if spread else value, "A*h")


def joined(stretches: Iterable[Stretch]) -> tuple[Stretch, ...]:
    """Evidence of one and the same interruption taken together, in time order."""
    found: list[Stretch] = []
    for each in sorted(stretches, key=lambda stretch: stretch.began_by):
        if found and _meet(found[-1], each):
            found[-1] = _together(found[-1], each)
        else:
            found.append(each)
    return tuple(found)


def _meet(one: Stretch, other: Stretch) -> bool:
    """Whether they could be the same; one that has not ended yet reaches as far as it may."""
    return (one.ended_by is None or other.began_after < one.ended_by) and (
        other.ended_by is None or one.began_after < other.ended_by
    )


def _together(one: Stretch, other: Stretch) -> Stretch:
    began = _narrower((one.began_after, one.began_by), (other.began_after, other.began_by))
    ends = [(each.ended_after, each.ended_by) for each in (one, other) if each.ended_by]
    ended = _narrower(*ends) if len(ends) == 2 else ends[0] if ends else (None, None)
    return Stretch(
        *began, *ended, one.came_back or other.came_back, one.restart_was_written or other.restart_was_written,
        tuple(dict.fromkeys((*one.sources, *other.sources))), (*one.rows, *other.rows),
        other.logged if one.logged is None else one.logged,
    )  # fmt: skip


def _narrower(one: tuple, other: tuple) -> tuple:
    """The bounds that say more: a known instant before a span, else the shorter span."""
    return min((one, other), key=lambda bounds: bounds[1] - bounds[0])
