"""How size drifts along a line of descent: each measured piece against the first, and what was foretold of the last."""

from collections.abc import Iterable
from dataclasses import dataclass

from process.chemistry.dimensions import deviation
from process.summaries.copy_sizes import ACROSS, length_of
from process.summaries.figures import apart
from records.figures import Figure
from records.line import line_of
from records.models import Item
from records.pdf.charts import Axis
from records.pdf.charts.steps import StepChart
from records.units import show

SIZED = {Item.Kind.ORIGINAL, Item.Kind.HISTORIC_COPY, Item.Kind.CAST, Item.Kind.COPY}


@dataclass(frozen=True)
class DriftStep:
    item: Item
    size_mm: float
    measured_pct: float
    predicted_pct: float | None = None


def drift_of(copy: Item, sizes: Iterable[Figure]) -> list[DriftStep]:
    """Empty unless two pieces of the line were measured across; the first of them is the reference."""
    line = line_of(copy)
    known = {**line.descent.things, copy.number: copy}
    path = [known[key] for key in line.descent.lineage.path if key in known and known[key].kind in SIZED]
    measured = [(item, found) for item in path if (found := _across(item, line)) is not None]
    if len(measured) < 2:
        return []
    first = measured[0][1]
    foretold = next((f.working.quantity for f in sizes if f.label.endswith("predicted") and f.working), None)
    return [
        DriftStep(item, apart(found.m_as("mm"))[0], _pct(found, first),
                  _pct(foretold, first) if item.pk == copy.pk and foretold is not None else None)
        for item, found in measured
    ]  # fmt: skip


def _across(item: Item, line):
    rows = line.measured_on(item)
    for row in rows:
        row.item = item  # read already: nobody asks the database again
    return next((length for what in ACROSS if (length := length_of(rows, what)[0]) is not None), None)


def _pct(found, first) -> float:
    return apart(deviation(found, first).m_as("pct"))[0]


def drift_chart(steps: list[DriftStep]) -> StepChart:
    foretold = tuple(step.predicted_pct for step in steps)
    if foretold[-1] is not None:  # drawn on from the piece that it was foretold from
        foretold = (*foretold[:-2], steps[-2].measured_pct, foretold[-1])
    said = "; ".join(f"{step.item.number} {show(step.measured_pct, '_pct', digits=2)}" for step in steps)
    return StepChart(
        "Size along the line of descent", f"Deviation from the first piece measured: {said}.",
        Axis("Deviation from the first", "%"), tuple(step.item.number for step in steps),
        tuple(step.measured_pct for step in steps), foretold,
    )  # fmt: skip
