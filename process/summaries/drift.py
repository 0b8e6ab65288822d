"""How size drifts along a line of descent: each measured piece against the first, and what was foretold of the last.

A size that an old source gives of a model nobody has is quoted: it is set beside what was measured, never among it.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from pint import Quantity

from process.chemistry.dimensions import deviation, linear_scale
from process.summaries.copy_sizes import ACROSS, length_of
from process.summaries.evidence import quantity
from process.summaries.figures import apart
from records.figures import Figure
from records.line import Line, line_of
from records.models import Item
from records.pdf.charts import Axis
from records.pdf.charts.steps import StepChart
from records.units import decimals_written, figure, show

SIZED = {Item.Kind.ORIGINAL, Item.Kind.HISTORIC_COPY, Item.Kind.CAST, Item.Kind.COPY}
MEASURED = "measured"


@dataclass(frozen=True)
class DriftStep:
    """A piece and its size across, in per cent of others.

    `measured_pct` is against the first piece measured, `quoted_pct` against the quoted size; `by_moulds_pct` is what
    the quoted size would have become if each generation had shrunk like the last mould; `…_within_pct` is the ±.
    """

    name: str
    url: str
    size_mm: float
    kind: str = MEASURED
    note: str = ""
    measured_pct: float | None = None
    predicted_pct: float | None = None
    quoted_pct: float | None = None
    by_moulds_pct: float | None = None
    digits: int | None = None
    measured_within_pct: float | None = None
    predicted_within_pct: float | None = None
    quoted_within_pct: float | None = None

    @property
    def size(self) -> str:
        """In mm; a quoted size with the decimals of its source, which knew no more."""
        return figure(self.size_mm, "_mm", digits=self.digits)[0]


@dataclass(frozen=True)
class _Piece:
    step: DriftStep
    length: Quantity


def drift_of(copy: Item, sizes: Iterable[Figure]) -> list[DriftStep]:
    """Empty unless two pieces have a size across and one was measured; the first measured is the reference."""
    pieces = _pieces(copy)
    measured = [piece for piece in pieces if piece.step.kind == MEASURED]
    if len(pieces) < 2 or not measured:
        return []
    first, last = measured[0].length, measured[-1]
    foretold = next((f.working.quantity for f in sizes if f.label.endswith("predicted") and f.working), None)
    steps = []
    for piece in pieces:
        step = replace(piece.step, **_pct("measured", piece.length, first)) if piece in measured else piece.step
        if piece is last and step.name == copy.number and foretold is not None:
            step = replace(step, **_pct("predicted", foretold, first))
        steps.append(step)
    return _beside_the_quoted(pieces, steps, foretold)


def _pieces(copy: Item) -> list[_Piece]:
    line = line_of(copy)
    known = {**line.descent.things, copy.number: copy}
    path = [known[key] for key in line.descent.lineage.path if key in known and known[key].kind in SIZED]
    return [*_quoted_models(line), *(piece for item in path if (piece := _piece(item, line)) is not None)]


def _quoted_models(line: Line) -> list[_Piece]:
    """The unknown beginning of the line, as an old source gives its size."""
    found = []
    for row in line.descent.rows:
        if row.source_id is None and (size := quantity(row, "source_across_mm")) is not None:
            name, url = row.source_words or "the unknown model", row.target.get_absolute_url()
            digits = decimals_written(row.as_typed.get("source_across_mm") or {}, "_mm")
            step = DriftStep(name, url, row.source_across_mm, "quoted", row.source_quoted_from, digits=digits)
            found.append(_Piece(step, size))
    return found[:1]


def _piece(item: Item, line: Line) -> _Piece | None:
    rows = line.measured_on(item)
    for row in rows:
        row.item = item  # read already: nobody asks the database again
    for what in ACROSS:
        length, _, kind = length_of(rows, what)
        if length is not None:
            return _Piece(DriftStep(item.number, item.get_absolute_url(), apart(length.m_as("mm"))[0], kind), length)
    return None


def _beside_the_quoted(pieces: list[_Piece], steps: list[DriftStep], foretold: Quantity | None) -> list[DriftStep]:
    """What was measured against the quoted size before it, and what the moulds alone would have left of that."""
    if pieces[0].step.kind == MEASURED:
        return steps
    quoted, compared = pieces[0].length, [steps[0]]
    change = deviation(foretold, pieces[-2].length) if foretold is not None and len(pieces) > 2 else None
    for generation, (piece, step) in enumerate(zip(pieces[1:], steps[1:], strict=True), start=1):
        left = None if change is None else apart((linear_scale([change] * generation) - 1).m_as("pct"))[0]
        compared.append(replace(step, by_moulds_pct=left, **_pct("quoted", piece.length, quoted)))
    return compared


def _pct(name: str, found: Quantity, first: Quantity) -> dict[str, float | None]:
    """A deviation and its ±, as a step names them."""
    value, spread = apart(deviation(found, first).m_as("pct"))
    return {f"{name}_pct": value, f"{name}_within_pct": spread}


def drift_chart(steps: list[DriftStep]) -> StepChart | None:
    """Drawn of measured pieces alone; one of them is no line."""
    steps = [step for step in steps if step.measured_pct is not None]
    if len(steps) < 2:
        return None
    foretold = tuple(step.predicted_pct for step in steps)
    if foretold[-1] is not None:  # drawn on from the piece that it was foretold from
        foretold = (*foretold[:-2], steps[-2].measured_pct, foretold[-1])
    said = "; ".join(f"{step.name} {show(step.measured_pct, '_pct', digits=2)}" for step in steps)
    return StepChart(
        "Size along the line of descent", f"Deviation from the first piece measured: {said}.",
        Axis("Deviation from the first", "%"), tuple(step.name for step in steps),
        tuple(step.measured_pct for step in steps), foretold,
    )  # fmt: skip
