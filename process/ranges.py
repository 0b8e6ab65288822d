"""Usual and impossible values: the one editable table, asked by forms before they believe a number."""

from dataclasses import dataclass

from process.models import Range
from records import units
from records.units.showing import THIN_SPACE

# Units that are taken for each other; a number usual in the other and unusual in this one is asked about.
PAIRS = {
    "_a_dm2": ("A/dm²", "A/ft²"), "_degc": ("°C", "°F"), "_dm2": ("dm²", "cm²", "in²"), "_a": ("A", "mA"),
    "_v": ("V", "mV"), "_mm": ("mm", "µm"), "_ms_cm": ("mS/cm", "S/m", "S/cm"), "_mg_l": ("mg/L", "g/L"),
    "_g_l": ("g/L", "mg/L", "oz/gal (US)", "oz/gal (imperial)", "oz t/gal (US)"),
}  # fmt: skip


@dataclass(frozen=True)
class Opinion:
    """What the table says of a value: usual (no sentence), unusual, or impossible."""

    verdict: str
    sentence: str = ""

    @property
    def is_usual(self) -> bool:
        return self.verdict == "usual"


USUAL = Opinion("usual")


def judge(
    field: str, value: float | None, *, step: str = Range.Step.ANY, number: float | None = None, unit: str = ""
) -> Opinion:
    """The table's opinion of a value in the column's unit; `number` and `unit` are what was typed, if it was typed."""
    return judge_by(range_of(field, step), field, value, number=number, unit=unit)


def judge_by(
    row: Range | None, field: str, value: float | None, *, number: float | None = None, unit: str = ""
) -> Opinion:
    """The same by a row that was looked up before, for many values of one field."""
    if value is None or row is None:
        return USUAL
    if _outside(value, row.possible_low, row.possible_high):
        return Opinion(
            "impossible", f"{_shown(field, value, number, unit)} is not possible here{_hint(field, row, number, unit)}"
        )
    if not _outside(value, row.usual_low, row.usual_high):
        return USUAL
    between = _between(row.usual_low, row.usual_high, _suffix(field))
    return Opinion(
        "unusual",
        f"{_shown(field, value, number, unit)} is unusual ({between} is usual){_hint(field, row, number, unit)}",
    )


def range_of(field: str, step: str = Range.Step.ANY) -> Range | None:
    """The row of a field for a step, or its row for any step; a planned number may have a row of its own."""
    names = (field, field.removeprefix("planned_"))
    rows = {(row.field, row.step): row for row in Range.objects.filter(field__in=names)}
    wanted = [(name, each) for name in names for each in (step, Range.Step.ANY)]
    return next((rows[key] for key in wanted if key in rows), None)


def _suffix(field: str) -> str:
    return units.suffix_of(field) or ""


def _outside(value: float, low: float | None, high: float | None) -> bool:
    return (low is not None and value < low) or (high is not None and value > high)


def _shown(field: str, value: float, number: float | None, unit: str) -> str:
    """With the digits that were typed, if it was typed: a slip of the point must not be rounded away."""
    own = units.CHOICES[_suffix(field)][0].symbol
    typed = None if number is None else f"{units.plain(number)}{THIN_SPACE}{unit or own}"
    shown = typed or units.show(value, _suffix(field), unit or own)
    return shown if unit in ("", own) else f"{shown} ({units.show(value, _suffix(field))})"


def _between(low: float | None, high: float | None, suffix: str) -> str:
    symbol = units.CHOICES[suffix][0].symbol
    if low is None or high is None:
        return f"{'at most' if low is None else 'at least'} {high if low is None else low:g} {symbol}"
    return f"{low:g} to {high:g} {symbol}"


def _hint(field: str, row: Range, number: float | None, unit: str) -> str:
    """The same number read in each unit that is taken for this one, where that would be usual."""
    suffix = _suffix(field)
    others = (symbol for symbol in PAIRS.get(suffix, ()) if number is not None and symbol != unit)
    meant = " or ".join(filter(None, (_read_as(number, symbol, suffix, row) for symbol in others)))
    return f"; {meant} would be usual. Is the unit right?" if meant else ". Look at the number and its unit again."


def _read_as(number: float, symbol: str, suffix: str, row: Range) -> str:
    value = units.to_canonical(number, units.unit_choice(suffix, symbol), suffix)
    if _outside(value, row.usual_low, row.usual_high):
        return ""
    own = symbol == units.CHOICES[suffix][0].symbol
    shown = units.show(value, suffix, digits=None if abs(value) >= 1 else 2)
    return f"{units.plain(number)} {symbol}" + ("" if own else f" = {shown}")
