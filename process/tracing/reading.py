"""Reading a surveyed file by a confirmed mapping: fast where every line is sound, carefully where one is not."""

import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import datetime
from pathlib import Path

import numpy as np

from process.tracing.careful import read_carefully
from process.tracing.cut_off import cut_off
from process.tracing.dialect import DELIMITERS, SPACES, split
from process.tracing.errors import AskFirst, TraceRefused
from process.tracing.fast import read_fast
from process.tracing.mapping import CURRENT_UNITS, ELAPSED_UNITS, VOLTAGE_UNITS, Mapping
from process.tracing.samples import Floats, Samples
from process.tracing.survey import Survey
from process.tracing.table import Table
from process.tracing.zones import MICRO, to_utc

SHOWN_LINES = 20
FAHRENHEIT_ZERO, FAHRENHEIT_STEP = 32.0, 5 / 9
HOUR_S = 3600
CALENDAR_S = (-2_208_988_800, 7_258_118_400)  # 1900 to 2200: a clock that was never set still writes a year in between


def read(
    surveyed: Survey, mapping: Mapping, *, careful: bool = False, tell: Callable[[float], None] | None = None
) -> Samples:
    """All samples of the file; `careful` leaves the fast reader out, for the same result; `tell` hears the share."""
    ask_what_is_missing(mapping)
    first = _first_time(surveyed, mapping)
    with _as_utf8(surveyed, by_spaces=mapping.delimiter == SPACES) as (path, newline_count):
        mapping = replace(mapping, delimiter="\t") if mapping.delimiter == SPACES else mapping
        expected = newline_count + (0 if surveyed.ends_with_newline else 1) - mapping.skip
        careful = careful or _hides_figures(surveyed, mapping)
        table = None if careful else read_fast(path, mapping, first, expected, tell)
        if table is None:
            shares = tell and (lambda line: tell(line / max(newline_count, 1)))
            table = read_carefully(path, mapping, surveyed.ends_with_newline, shares)
    return replace(_samples(table, mapping), cut_off=cut_off(surveyed, mapping, newline_count))


def _hides_figures(surveyed: Survey, mapping: Mapping) -> bool:
    """The fast reader takes 1_000 for a thousand, which no logger means: where an underscore stands, care is taken."""
    return surveyed.has_underscores_below or any("_" in line for line in surveyed.head[mapping.skip :])


def ask_what_is_missing(mapping: Mapping) -> None:
    """A mapping is whole before it is used: nothing is guessed here."""
    if mapping.delimiter not in DELIMITERS or mapping.decimal not in {".", ","}:
        raise AskFirst("delimiter", "Say by which sign the columns are parted, and whether decimals have a comma.")
    if mapping.current_column is None:
        raise AskFirst("current_column", "Say which column is the current.")
    if mapping.current_unit not in CURRENT_UNITS:
        raise AskFirst("current_unit", "Say whether the current is written in A or in mA: a thousand times apart.")
    if mapping.time_kind in {"instant", "local"} and not mapping.date_order:
        raise AskFirst("date_order", "Say whether the day or the month stands first.")
    if mapping.time_kind == "local" and not mapping.zone:
        raise AskFirst("zone", "Say by which clock the times were written: they have no offset from UTC.")
    if mapping.time_kind == "elapsed" and mapping.elapsed_unit not in ELAPSED_UNITS:
        raise AskFirst("elapsed_unit", "Say in which unit the time since the start is counted.")
    if mapping.time_kind == "elapsed" and not mapping.starts_at:
        raise AskFirst("starts_at", "Say when the logger began: the file counts from there.")
    if mapping.time_columns[0] == mapping.current_column:
        raise AskFirst("current_column", "One column cannot be both time and current: choose another.")


def _first_time(surveyed: Survey, mapping: Mapping) -> str:
    if len(surveyed.head) <= mapping.skip:
        raise TraceRefused("the file ends before the first sample.")
    cells = split(surveyed.head[mapping.skip], mapping.delimiter)
    if len(cells) <= max(mapping.time_columns):
        raise TraceRefused("has no time.", mapping.skip + 1)
    return " ".join(cells[column] for column in mapping.time_columns)


@contextmanager
def _as_utf8(surveyed: Survey, *, by_spaces: bool) -> Iterator[tuple[Path, int]]:
    """The file itself where it can be read as it lies, else a passing copy; with its number of line ends."""
    if surveyed.is_plain and not by_spaces:
        yield surveyed.path, surveyed.newline_count
        return
    with tempfile.TemporaryDirectory(prefix="trace-") as folder:
        copy, newlines = Path(folder) / "trace.csv", 0
        try:
            with surveyed.path.open(encoding=surveyed.encoding) as source, copy.open("w", newline="") as target:
                for lines in iter(lambda: source.readlines(1 << 20), []):
                    newlines += sum(line.endswith("\n") for line in lines)
                    target.writelines(_tabbed(line) if by_spaces else line.removeprefix("\ufeff") for line in lines)
        except UnicodeError as error:
            raise TraceRefused(f"the file is not {surveyed.encoding} to its end: export it again as UTF-8.") from error
        yield copy, newlines


def _tabbed(line: str) -> str:
    return "\t".join(line.removeprefix("\ufeff").split()) + ("\n" if line.endswith("\n") else "")


def _samples(table: Table, mapping: Mapping) -> Samples:
    currents = _scaled(table, mapping.current_column, CURRENT_UNITS[mapping.current_unit] * mapping.sign)
    assert currents is not None  # ask_what_is_missing has seen to it
    voltages = _scaled(table, mapping.voltage_column, VOLTAGE_UNITS.get(mapping.voltage_unit, 1.0))
    temperatures = _scaled(table, mapping.temperature_column, 1.0)
    if temperatures is not None and mapping.temperature_unit == "°F":
        temperatures = (temperatures - FAHRENHEIT_ZERO) * FAHRENHEIT_STEP
    samples = Samples(
        _instants(table, mapping), currents, table.lines, voltages_v=voltages, temperatures_degc=temperatures
    )
    samples = _without_blanks(samples)
    if samples.count < 2:
        raise TraceRefused(f"the file holds {samples.count or 'no'} sample: a charge needs at least two.")
    return samples


def _scaled(table: Table, column: int | None, factor: float) -> Floats | None:
    if column is None:
        return None
    return table.numbers[column] if factor == 1.0 else table.numbers[column] * factor


def _instants(table: Table, mapping: Mapping) -> Floats:
    if table.seconds is not None:
        start = datetime.fromisoformat(mapping.starts_at).timestamp() if mapping.time_kind == "elapsed" else 0.0
        return _in_calendar(table.seconds + start, table)
    if table.clock_us is None or table.clock_us.size == 0:
        raise TraceRefused("the file holds no sample: a charge needs at least two.")
    _in_calendar(table.clock_us, table, MICRO)
    if mapping.time_kind == "local":
        return to_utc(table.clock_us, mapping.zone, mapping.doubled_hour) / MICRO
    offsets = 0 if table.offset_s is None else table.offset_s
    if isinstance(offsets, np.ndarray):
        _refuse_mixed(offsets, table)
    shifted = table.clock_us if isinstance(offsets, int) and offsets == 0 else table.clock_us - offsets * MICRO
    return shifted / MICRO


def _in_calendar(times: np.ndarray, table: Table, per_s: int = 1) -> np.ndarray:
    """No logger ran then; beyond lie instants that neither zones nor the register's rows can hold."""
    least, most = (bound * per_s for bound in CALENDAR_S)
    if times.size and not (least <= times.min() and times.max() < most):
        raise TraceRefused(
            "the time lies before 1900 or after 2199: its year is wrong, or the times are read in a wrong unit.",
            table.line_of(int(np.flatnonzero((times < least) | (times >= most))[0])),
        )
    return times


def _refuse_mixed(offsets: np.ndarray, table: Table) -> None:
    """One offset, or two with one change between them and an hour or less apart, as when the clocks are changed."""
    changes = np.flatnonzero(np.diff(offsets))
    if changes.size == 0 or (changes.size == 1 and abs(offsets[-1] - offsets[0]) <= HOUR_S):
        return
    at = int(changes[0 if changes.size == 1 else 1]) + 1
    raise TraceRefused(
        "the offset from UTC changes back and forth between the lines: no clock does that; export it by one clock.",
        table.line_of(at),
    )


def _without_blanks(samples: Samples) -> Samples:
    """Lines without a current are left out and named."""
    if not np.isnan(samples.currents_a.sum()):  # a sum finds one without an array of answers
        return samples
    blank = np.isnan(samples.currents_a)
    where = np.flatnonzero(blank)
    lines = samples.lines
    numbers = lines + np.arange(samples.count) if isinstance(lines, int) else lines
    keep = ~blank
    return replace(
        samples, times_s=samples.times_s[keep], currents_a=samples.currents_a[keep], lines=numbers[keep],
        voltages_v=None if samples.voltages_v is None else samples.voltages_v[keep],
        temperatures_degc=None if samples.temperatures_degc is None else samples.temperatures_degc[keep],
        blank_lines=tuple(samples.line_of(int(i)) for i in where[:SHOWN_LINES]), blank_count=int(where.size),
    )  # fmt: skip
