"""Numbers of rows as facts and cells of a paper: the digits that were written, the unit, the kind of evidence."""

from typing import Any, get_args

from records import units
from records.figures import Figure
from records.models import Measurement, Tracked
from records.pdf.blocks import Cell, Fact
from records.pdf.evidence import Kind

KINDS = frozenset(get_args(Kind))


def decimals_of(row: Tracked, field: str) -> int | None:
    """As many decimals as were typed, where the typed unit is the column's own; else the usual ones."""
    typed = row.as_typed.get(field) or {}
    own = units.unit_choice(units.suffix_of(field), None).symbol
    text = str(typed.get("text") or "").strip().replace(",", ".")
    if typed.get("unit") != own or not text.replace(".", "", 1).isdigit():
        return None
    return len(text.partition(".")[2])


def number_of(row: Tracked, field: str) -> tuple[str, str]:
    """Number and unit of a column, with its ± where one was entered; empty where nothing was."""
    value = getattr(row, field)
    if value is None:
        return "", ""
    spread = row.plus_minus(field)
    digits = None if spread else decimals_of(row, field)
    return units.figure(value, units.suffix_of(field), digits=digits, plus_minus=spread)


def in_words(row: Tracked, field: str) -> str:
    """Number with unit, for a sentence or a cell."""
    return " ".join(filter(None, number_of(row, field)))


def row_fact(label: str, row: Tracked, field: str) -> Fact:
    """A column of a row, marked by what kind of evidence it is."""
    number, unit = number_of(row, field)
    kind = row.evidence(field)
    return Fact(label, number, unit, kind if kind in KINDS else "unknown")


def figure_fact(figure: Figure | None, label: str = "") -> Fact:
    """A derived figure; one that could not be computed is said to be not recorded."""
    if figure is None or figure.value is None:
        return Fact(label or (figure.label if figure else ""), "")
    number, unit = units.figure(figure.value, figure.suffix, plus_minus=figure.plus_minus)
    return Fact(label or figure.label, number, unit, figure.kind if figure.kind in KINDS else "unknown")


def figure_cell(figure: Figure | None, **more: Any) -> Cell | str:
    """A derived figure in a table whose heading carries the unit."""
    if figure is None or figure.value is None:
        return ""
    number, _ = units.figure(figure.value, figure.suffix, plus_minus=figure.plus_minus)
    if figure.kind not in {"measured", "calculated"}:
        number = f"{number} ({figure.kind})"
    return Cell(number, calculated=figure.kind == "calculated", **more)


def size_facts(measurements: list[Measurement], most: int = 6) -> list[Fact]:
    """The measured sizes and the mass of a thing."""
    named = [(row, f", {row.point}" if row.point else "") for row in measurements[:most]]
    return [row_fact(f"{row.get_what_display().capitalize()}{where}", row, row.value_field) for row, where in named]
