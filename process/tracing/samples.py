"""What a file holds once it is read: one row a sample, in the order of the lines."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Whole = NDArray[np.int64]


@dataclass(frozen=True)
class Samples:
    """Seconds since 1970 in UTC, amperes with the sign of the mapping; `lines` are those of the file, or the first."""

    times_s: Floats
    currents_a: Floats
    lines: Whole | int
    blank_lines: tuple[int, ...] = ()
    blank_count: int = 0
    voltages_v: Floats | NDArray[np.float32] | None = None
    temperatures_degc: Floats | NDArray[np.float32] | None = None
    cut_off: tuple[int, str, str] | None = None  # line, its last cell, and one as it usually is

    @property
    def count(self) -> int:
        return int(self.times_s.size)

    def line_of(self, index: int) -> int:
        return int(self.lines + index if isinstance(self.lines, int) else self.lines[index])


def span_of(values: Floats | NDArray[np.float32] | None) -> tuple[float, float] | None:
    """Least and greatest of what was measured, to seven figures: more is not read of what only has a span."""
    if values is None or not np.isfinite(values).any():
        return None
    return float(f"{np.nanmin(values):.7g}"), float(f"{np.nanmax(values):.7g}")
