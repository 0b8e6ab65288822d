"""A table as both readers give it: the clock's microseconds or elapsed seconds, and the columns that were asked for."""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from process.tracing.mapping import Mapping

MOST = 1e9  # of any figure, whatever its unit: no logger measures more


@dataclass(frozen=True)
class Table:
    """`clock_us` for dates on a clock with `offset_s` where each says it; `seconds` for elapsed time and epochs."""

    clock_us: NDArray[np.int64] | None
    offset_s: NDArray[np.int64] | int | None
    seconds: NDArray[np.float64] | None
    numbers: dict[int, NDArray[Any]]  # voltage and temperature of the fast reader with seven figures only
    lines: NDArray[np.int64] | int  # of each row, or of the first where none is left out

    def line_of(self, row: int) -> int:
        return int(self.lines + row if isinstance(self.lines, int) else self.lines[row])


def number_columns(mapping: Mapping) -> list[int]:
    """Columns of figures that are read: current, and voltage and temperature where there are such."""
    asked = (mapping.current_column, mapping.voltage_column, mapping.temperature_column)
    return [column for column in dict.fromkeys(asked) if column is not None]
