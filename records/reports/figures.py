"""Numbers of rows as facts and cells of a paper: the digits that were written, the unit, the kind of evidence."""

from typing import Any, get_args

from records import units
from records.figures import Figure
from records.models import Measurement, Tracked
from records.pdf.blocks import Cell, Fact
from records.pdf.evidence import Kind

KINDS = frozenset(get_args(Kind))


def number_of(row: Tracked, field: str) -> tuple[str, str]:
    """Number and unit of a column, with its ± where one was entered; empty where nothing was."""
    value = getattr(row, field)
    if value is None:
        return "", ""
    suffix = units.suffix_of(field)
    digits = units.decimals_written(row.as_typed.get(field) or {}, suffix)
    return units.figure(value, suffix, digits=digits, plus_minus=row.plus_minus(field))


def in_words(row: Tracked, field: str) -> str:
    """Number with unit, for a sentence or a cell."""
    return " ".join(filter(None, number_of(row, field)))


def row_fact(label: str, row: Tracked, field: str) -> Fact:
    """A column of a row, marked by what kind of evidence it is."""
    number, unit = number_of(row, field)
    kind = row.evidence(field)
    return Fact(label, number, unit, kind if kind in KINDS else "unknown")


def written(figure: Figure) -> tuple[str, str]:
    """Number and unit of a derived figure with a value."""
    return units.figure(figure.value, figure.suffix, plus_minus=figure.plus_minus)


def figure_fact(figure: Figure | None, label: str = "") -> Fact:
    """A derived figure; one that could not be computed is said to be not recorded."""
    if figure is None or figure.value is None:
        return Fact(label or (figure.label if figure else ""), "")
    number, unit = written(figure)
    return Fact(label or figure.label, number, unit, figure.kind if figure.kind in KINDS else "unknown")


def figure_cell(figure: Figure | None, **more: Any) -> Cell | str:
    """A derived figure in a table whose heading carries the unit."""
    if figure is None or figure.value is None:
        return ""
    number, _ = written(figure)
    if figure.kind not in {"measured", "calculated"}:
        number = f"{number} ({figure.kind})"
    return Cell(number, calculated=figure.kind == "calculated", **more)


ORDER = [str(what) for what in Measurement.What]


def size_facts(measurements: list[Measurement], most: int = 6) -> list[Fact]:
    """The measured sizes and the mass of a thing."""
    named = [
        (row, f", {row.point}" if row.point else "")
        for row in sorted(measurements, key=lambda row: ORDER.index(row.what))[:most]
    ]
    return [row_fact(f"{row.get_what_display().capitalize()}{where}", row, row.value_field) for row, where in named]
