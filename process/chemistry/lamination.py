"""How far a boundary in the wall can be trusted: the rule for interruptions, its rows given as data."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum
from itertools import product
from typing import Any

from process.chemistry.errors import ChemistryError

HANDLINGS = ("immersed", "wet", "dried", "touched")


class Risk(IntEnum):
    """How likely the layers part, the gravest last."""

    NOTE = 0
    LOW = 1
    MEDIUM = 2
    HIGH = 3


@dataclass(frozen=True)
class Stoppage:
    """What is known of one interruption; None where nobody has answered yet.

    It lasted between `shortest_s` and `longest_s`, which are the same where both ends are known.
    """

    shortest_s: float
    longest_s: float
    handling: str | None = None
    out_of_bath_s: float | None = None
    activated: bool | None = None
    returned_by_itself: bool | None = None
    contact_lost: bool | None = None

    @property
    def time_is_known(self) -> bool:
        return self.shortest_s == self.longest_s


@dataclass(frozen=True)
class RiskRow:
    """One row of the rule: a condition that is None (or "") asks nothing."""

    risk: Risk
    longer_than_s: float | None = None
    up_to_s: float | None = None
    time_is_known: bool | None = None
    handling: str = ""
    out_up_to_s: float | None = None
    activated: bool | None = None
    returned_by_itself: bool | None = None
    contact_lost: bool | None = None
    words: str = ""


@dataclass(frozen=True)
class Verdict:
    """The risk, and the rows of the rule that say so; none where no row matches."""

    risk: Risk
    rows: tuple[RiskRow, ...] = ()


def judge_stoppage(stoppage: Stoppage, rows: Sequence[RiskRow]) -> Verdict:
    """Risk of lamination: the most severe row that matches wins, and where no row matches the risk is high.

    What nobody has answered counts as its worst answer, and a length that lies between two bounds as the worst one.

    Equation: risk = max over the possible answers of (max of the matching rows, or high where none matches)
    Errors: a length that is negative, no number, or whose bounds are crossed; a handling that is not known.
    Source: rule of this register after common practice, from memory; a museum keeps its own rows.

    >>> rows = [RiskRow(Risk.LOW, 59, 600, handling="immersed"), RiskRow(Risk.HIGH, returned_by_itself=True)]
    >>> judge_stoppage(Stoppage(300, 300, "immersed", returned_by_itself=False), rows).risk.name
    'LOW'
    >>> judge_stoppage(Stoppage(300, 300, "immersed"), rows).risk.name
    'HIGH'
    """
    _check(stoppage)
    found = [_of_one(each, seconds, rows) for each, seconds in _possible(stoppage, rows)]
    worst = max(verdict.risk for verdict in found)
    return Verdict(worst, tuple(dict.fromkeys(row for v in found if v.risk == worst for row in v.rows)))


def _check(stoppage: Stoppage) -> None:
    spans = (stoppage.shortest_s, stoppage.longest_s)
    if not all(math.isfinite(span) and span >= 0 for span in spans) or spans[0] > spans[1]:
        raise ChemistryError("stoppage", f"cannot last between {spans[0]:g} and {spans[1]:g} s")
    if stoppage.handling not in (None, *HANDLINGS):
        raise ChemistryError("handling", f"{stoppage.handling!r} is not one of {', '.join(HANDLINGS)}")


def _possible(stoppage: Stoppage, rows: Sequence[RiskRow]) -> Iterable[tuple[Stoppage, float]]:
    """Every case that what is known leaves open, with a length at which it is looked at."""
    lengths = {stoppage.shortest_s, stoppage.longest_s}
    for row in rows:
        for bound in (row.longer_than_s, row.up_to_s):
            if bound is not None:
                lengths |= {each for each in (bound, math.nextafter(bound, math.inf)) if _within(each, stoppage)}
    cases = product(
        lengths,
        _open(stoppage.handling, HANDLINGS),
        _open(stoppage.activated, (False, True)),
        _open(stoppage.returned_by_itself, (False, True)),
        _open(stoppage.contact_lost, (False, True)),
    )
    for seconds, handling, activated, returned, contact in cases:
        case = replace(
            stoppage, handling=handling, activated=activated, returned_by_itself=returned, contact_lost=contact
        )
        yield case, seconds


def _within(length: float, stoppage: Stoppage) -> bool:
    return stoppage.shortest_s <= length <= stoppage.longest_s


def _open(answer: Any, answers: tuple[Any, ...]) -> tuple[Any, ...]:
    return answers if answer is None else (answer,)


def _of_one(case: Stoppage, seconds: float, rows: Sequence[RiskRow]) -> Verdict:
    matching = [row for row in rows if _matches(row, case, seconds)]
    if not matching:
        return Verdict(Risk.HIGH)
    worst = max(row.risk for row in matching)
    return Verdict(worst, tuple(row for row in matching if row.risk == worst))


def _matches(row: RiskRow, case: Stoppage, seconds: float) -> bool:
    # A piece lifted for a time that nobody noted was out for as long as one cares to fear.
    out = 0.0 if case.handling == "immersed" else math.inf if case.out_of_bath_s is None else case.out_of_bath_s
    return (
        (row.longer_than_s is None or seconds > row.longer_than_s)
        and (row.up_to_s is None or seconds <= row.up_to_s)
        and (row.out_up_to_s is None or out <= row.out_up_to_s)
        and row.handling in ("", case.handling)
        and row.time_is_known in (None, case.time_is_known)
        and row.activated in (None, case.activated)
        and row.returned_by_itself in (None, case.returned_by_itself)
        and row.contact_lost in (None, case.contact_lost)
    )


GOOD_BENDS = 5  # sound copper bends oftener than this; common practice, from memory


def passes_bend_test(bends_count: int, layers_part: bool) -> bool:
    """Whether a coupon of the wall held: it bent oftener than five times, and no layers parted.

    Equation: passes where n [1] > 5 and no layers are seen
    Errors: a negative count.
    Source: common practice, from memory (GOOD_BENDS).

    >>> passes_bend_test(14, layers_part=False), passes_bend_test(3, layers_part=True)
    (True, False)
    """
    if bends_count < 0:
        raise ChemistryError("bends", f"cannot be fewer than none; {bends_count} was given")
    return bends_count > GOOD_BENDS and not layers_part
