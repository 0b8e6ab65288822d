"""Stretches without current inside a trace, and whether anybody wrote down how the current came back."""

import math
from collections.abc import Callable
from dataclasses import asdict, dataclass
from typing import Any

import numpy as np

from process.tracing.samples import Floats

LEAST_S = 60.0  # shorter is a note of the logger, not an interruption


@dataclass(frozen=True)
class Stretch:
    """Instants in seconds since 1970. The current was still seen at `last_on_s`, gone at `from_s`; still gone at
    `to_s`, back at `back_s` (None where the trace ends without it). `restart` is one of recorded, by itself, silent,
    or empty where it did not come back. `before_spread_ah` is the ± of the charge before, for nobody saw it go.
    """

    last_on_s: float
    from_s: float
    to_s: float
    back_s: float | None
    restart: str
    charge_before_ah: float
    back_a: float = 0.0
    before_spread_ah: float = 0.0

    def as_json(self) -> dict[str, Any]:
        return asdict(self)


@dataclass(frozen=True)
class Zero:
    """Places in the arrays: the first and last sample without current."""

    first: int
    last: int


def zeros(times_s: Floats, currents_a: Floats, zero_a: float) -> list[Zero]:
    """Runs without current that have current before them and last more than a minute; the last may not end."""
    nothing = (currents_a <= zero_a) & (currents_a >= -zero_a)
    if not nothing.any():
        return []
    edges = np.flatnonzero(np.diff(nothing.astype(np.int8)))
    firsts = [int(i) + 1 for i in edges if not nothing[i]]
    lasts = [int(i) for i in edges if nothing[i]]
    if nothing[0] and lasts:
        lasts = lasts[1:]
    found = []
    for at, first in enumerate(firsts):
        last = lasts[at] if at < len(lasts) else int(times_s.size) - 1
        until = times_s[min(last + 1, times_s.size - 1)]
        if until - times_s[first] > LEAST_S:
            found.append(Zero(first, last))
    return found


def zero_stretches(
    times_s: Floats, currents_a: Floats, zero_a: float, switchings: tuple, spans_ah: Callable[[], Floats]
) -> tuple[Stretch, ...]:
    """Each stretch with the charge that had passed before it, as decided between each two samples: `spans_ah`.

    `switchings` are case.Switching of the sheet.
    """
    found = zeros(times_s, currents_a, zero_a)
    if not found:
        return ()
    passed = np.append(0.0, np.cumsum(spans_ah()))
    return tuple(_stretch(times_s, currents_a, zero, passed, switchings) for zero in found)


def _stretch(times_s: Floats, currents_a: Floats, zero: Zero, passed: Floats, switchings: tuple) -> Stretch:
    ends = zero.last + 1 >= times_s.size
    back_s = None if ends else float(times_s[zero.last + 1])
    return Stretch(
        last_on_s=float(times_s[zero.first - 1]),
        from_s=float(times_s[zero.first]),
        to_s=float(times_s[zero.last]),
        back_s=back_s,
        restart="" if back_s is None else restart_of(float(times_s[zero.last]), back_s, switchings),
        charge_before_ah=float(passed[zero.first]),
        back_a=0.0 if ends else float(currents_a[zero.last + 1]),
        before_spread_ah=_spread_ah(times_s, currents_a, zero.first),
    )


def _spread_ah(times_s: Floats, currents_a: Floats, gone: int) -> float:
    """It went anywhere between two samples alike: one standard uncertainty (JCGM 100:2008, 4.3.7)."""
    return abs(float(currents_a[gone - 1] * (times_s[gone] - times_s[gone - 1]))) / math.sqrt(12) / 3600


def restart_of(last_off_s: float, back_s: float, switchings: tuple) -> str:
    """What the sheet says of a return of the current; a sampling interval of tolerance on both sides."""
    slack = max(LEAST_S, back_s - last_off_s)
    near = [s for s in switchings if s.is_on and last_off_s - slack <= s.at_s <= back_s + slack]
    if not near:
        return "silent"
    return "by itself" if any(switching.by_itself for switching in near) else "recorded"
