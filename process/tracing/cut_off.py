"""A last line that ends in the middle of a figure still reads as a number: it is asked about."""

import numpy as np

from process.tracing.case import Case
from process.tracing.dialect import split
from process.tracing.findings import Choice, Finding
from process.tracing.mapping import Mapping
from process.tracing.survey import Survey

COMPARED = 50  # lines before the last
ENOUGH = 3
CHOICES = (Choice("exclude", "it was cut off: leave the line out"), Choice("keep", "it is whole: count it"))


def cut_off(surveyed: Survey, mapping: Mapping, newline_count: int) -> tuple[int, str, str] | None:
    """The last line, where no line end follows it and its last cell is shorter than all before it."""
    at = mapping.column_count - 1
    if surveyed.ends_with_newline or at not in _used(mapping):
        return None
    rows = [split(line, mapping.delimiter) for line in surveyed.tail[-COMPARED - 1 :] if line.strip()]
    cells = [row[at].strip() for row in rows if len(row) == mapping.column_count]
    if len(cells) <= ENOUGH or len(cells[-1]) >= min(len(cell) for cell in cells[:-1]):
        return None
    return newline_count + 1, cells[-1], cells[-2]


def _used(mapping: Mapping) -> set[int | None]:
    return {*mapping.time_columns, mapping.current_column, mapping.voltage_column, mapping.temperature_column}


def last_line(case: Case) -> list[Finding]:
    """The question, if the last line of the file holds a sample."""
    if case.samples.cut_off is None:
        return []
    line, cell, usual = case.samples.cut_off
    last = case.samples.count - 1
    if case.samples.line_of(last) != line:
        return []
    place = last if case.order is None else int(np.flatnonzero(case.order == last)[0])
    said = (
        f"Line {line}, the last, has no line end and its last figure “{cell}” is shorter than those before it "
        f"(“{usual}”): the file may have been cut off within it."
    )
    return [Finding("cut-off", "cut-off", said, CHOICES, "", (line,), 1, indices=np.array([place], dtype=np.intp))]
