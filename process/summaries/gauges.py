"""How a mould went on shrinking: its lengths measured over time, each against the piece, at 20 °C."""

from collections.abc import Iterable
from dataclasses import dataclass

from django.utils.formats import date_format

from process.chemistry.dimensions import deviation
from process.chemistry.expansion import expansion_of, length_at
from process.models import Mould, MouldGauge
from process.summaries.evidence import quantity
from process.summaries.figures import apart, figure
from records.figures import Figure
from records.pdf.charts import Axis
from records.pdf.charts.steps import StepChart
from records.units import show, ureg

ROUNDING_PCT = 0.005  # the change at acceptance is written to a hundredth of a percent


@dataclass(frozen=True)
class GaugeLine:
    row: MouldGauge
    change: Figure


@dataclass(frozen=True)
class Gauging:
    lines: list[GaugeLine]
    sentence: str


def gauging_of(mould: Mould, rows: Iterable[MouldGauge]) -> Gauging:
    lines = [GaugeLine(row, _change(mould, row)) for row in rows]
    return Gauging(lines, _sentence(mould, lines))


def change_of(measured_mm: float, nominal_mm: float) -> float:
    """Linear change in percent, without regard to warmth."""
    lengths = (ureg.Quantity(each, "mm") for each in (measured_mm, nominal_mm))
    return apart(deviation(*lengths).m_as("pct"))[0]


def _change(mould: Mould, row: MouldGauge) -> Figure:
    length, warm = quantity(row, "measured_mm"), quantity(row, "temperature_degc")
    material, note = expansion_of(mould.material.label), "as measured"
    if warm is not None and material is not None:
        length = length_at(length, material.quantity, warm)
        note = f"at 20 °C, by the {material.label}"
    found = figure(
        "linear change", "_pct", deviation, evidence={"measured": "measured", "predicted": "measured"},
        measured=length, predicted=quantity(row, "nominal_mm"),
    )  # fmt: skip
    return Figure(
        found.label, found.value, found.suffix, found.kind, found.plus_minus, found.note or note, None, found.working
    )


def _sentence(mould: Mould, lines: list[GaugeLine]) -> str:
    last = next((line for line in reversed(lines) if line.change.value is not None), None)
    if last is None or mould.shrinkage_pct is None:
        return ""
    further = last.change.value - mould.shrinkage_pct
    accepted, now = (show(each, "_pct", digits=2) for each in (mould.shrinkage_pct, last.change.value))
    if abs(further) <= (last.change.plus_minus or 0.0) + ROUNDING_PCT:
        return f"Last measured {now}: within its ± of the {accepted} recorded when it was accepted."
    return (
        f"Recorded when it was accepted: {accepted}; last measured {now}. Copies are foretold with {accepted}: "
        "before another pull, decide which of the two rules, and correct the mould."
    )


def gauge_chart(mould: Mould, lines: list[GaugeLine]) -> StepChart | None:
    """None before there are two measurements of one length to draw between."""
    drawn = [line for line in lines if line.change.value is not None]
    if len(drawn) < 2 or len({line.row.feature for line in drawn}) > 1:
        return None
    days = tuple(date_format(line.row.gauged_on, "j M Y") for line in drawn)
    values = tuple(line.change.value for line in drawn)
    said = "; ".join(f"{day} {show(value, '_pct', digits=2)}" for day, value in zip(days, values, strict=True))
    return StepChart(
        f"{mould.item.number}: linear change over time", f"Against the piece it was taken from: {said}.",
        Axis("Change against the piece", "%"), days, values,
    )  # fmt: skip
