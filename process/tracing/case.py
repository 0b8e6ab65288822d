"""The samples in time order beside what the run says of itself: all that is argued about."""

from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from process.tracing.samples import Floats, Samples

ENOUGH = 100_000  # samples from which the usual interval and current are told


@dataclass(frozen=True)
class Switching:
    """A line of the sheet that set the current: `is_on` where some flowed from then."""

    at_s: float
    is_on: bool
    by_itself: bool = False


@dataclass(frozen=True)
class Context:
    """What is known of the run without the trace; instants in seconds since 1970."""

    planned_a: float | None = None
    starts_s: float | None = None
    stops_s: float | None = None
    switchings: tuple[Switching, ...] = ()
    now_s: float | None = None


@dataclass(frozen=True)
class Case:
    """`order` leads from a place in time order to a place in the file; None where the file is in order."""

    samples: Samples
    times_s: Floats
    currents_a: Floats
    order: NDArray[np.intp] | None
    disorder: NDArray[np.intp]  # places in the file that lie before the line above them
    interval_s: float
    typical_a: float
    counted: dict[Any, Any] = field(default_factory=dict, compare=False, repr=False)  # by the decisions that led to it

    def line_of(self, index: int) -> int:
        return self.samples.line_of(int(self.order[index]) if self.order is not None else index)

    def lines_of(self, indices: NDArray[np.intp], most: int) -> tuple[int, ...]:
        return tuple(self.line_of(int(index)) for index in indices[:most])

    @property
    def zero_a(self) -> float:
        """What a logger shows when nothing flows: under a hundredth of what is typical."""
        return max(self.typical_a / 100, 1e-6)


def case_of(samples: Samples) -> Case:
    """Sorted by instant, lines of one instant in the order of the file."""
    times, currents = samples.times_s, samples.currents_a
    disorder, order = np.flatnonzero(times[1:] < times[:-1]) + 1, None
    if disorder.size:
        order = np.argsort(times, kind="stable")
        times, currents = times[order], currents[order]
    # Some of a great many say the same as all.
    some = slice(None, None, max(1, times.size // ENOUGH))
    forward, sizes = times[1:][some] - times[:-1][some], np.abs(currents[some])
    forward, flowing = forward[forward > 0], sizes[sizes > sizes.max(initial=0.0) / 1000]
    return Case(
        samples, times, currents, order, disorder,
        float(np.median(forward)) if forward.size else 1.0, float(np.median(flowing)) if flowing.size else 0.0,
    )  # fmt: skip
