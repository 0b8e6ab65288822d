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
    typed, suffix = row.as_typed.get(field) or {}, units.suffix_of(field)
    own = units.unit_choice(suffix, None).symbol
    text = str(typed.get("text") or "").strip().replace(",", ".").lstrip("-−+")
    if typed.get("unit") != own or not text.replace(".", "", 1).isdigit():
        return small_change(getattr(row, field), suffix)
    return len(text.partition(".")[2])


def small_change(value: float, suffix: str) -> int | None:
    """A shrinkage or deviation under one per cent is nothing without its second decimal."""
    return 2 if suffix == "_pct" and abs(value) < 1 else None


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


def written(figure: Figure) -> tuple[str, str]:
    """Number and unit of a derived figure with a value."""
    digits = None if figure.plus_minus else small_change(figure.value, figure.suffix)
    return units.figure(figure.value, figure.suffix, digits=digits, plus_minus=figure.plus_minus)


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
