"""The diameter or breadth of a copy: what its moulds foretell beside what was measured."""

from pint import Quantity

from process.chemistry.dimensions import deviation, predicted_dimension
from process.models import MakingUp
from process.summaries.copy_parts import ShellPart, changes_of, latest
from process.summaries.figures import apart, figure
from records.figures import Figure
from records.models import Measurement
from records.units import ureg

What = Measurement.What
ACROSS = (What.DIAMETER, What.BREADTH)


def sizes_of(
    making_up: MakingUp, parts: tuple[ShellPart, ...], skin: Quantity | None, own: list[Measurement],
    model: list[Measurement], measured: Quantity | None,
) -> tuple[Figure, ...]:  # fmt: skip
    """Diameter, or breadth where the model has none."""
    what = next((kind for kind in ACROSS if latest(model, kind, "length_mm") is not None), None)
    name = (what or What.DIAMETER).label.capitalize()
    predicted = None
    if what:
        predicted = figure(
            f"{name} predicted", "_mm", predicted_dimension, evidence={"original": "measured"},
            original=latest(model, what, "length_mm"), changes=changes_of(parts, making_up),
            skin=_outside(making_up, parts, skin),
        )  # fmt: skip
    if measured is None:
        measured = latest(own, what or What.DIAMETER, "length_mm")
    return tuple(each for each in (predicted, *_beside(name, measured, predicted)) if each)


def _beside(name: str, measured: Quantity | None, predicted: Figure | None) -> list[Figure]:
    if measured is None:
        return []
    size, spread = apart(measured.m_as("mm"))
    found = [Figure(f"{name} measured", size, "_mm", "measured", spread)]
    if predicted and predicted.working:
        ratio = figure(
            "Deviation",
            "_pct",
            deviation,
            evidence={"measured": "measured"},
            measured=measured,
            predicted=predicted.working.quantity,
        )
        note = f"{size - predicted.value:+.3f} mm".replace("-", "\u2212")
        found.append(Figure(ratio.label, ratio.value, "_pct", ratio.kind, ratio.plus_minus, note, None, ratio.working))
    return found


def _outside(making_up: MakingUp, parts: tuple[ShellPart, ...], skin: Quantity | None) -> Quantity:
    """What lies outside the face that was copied: the metal on a core, and a skin of silver or gold."""
    on_core = [part.face.working.quantity for part in parts if making_up.core_id and part.face and part.face.working][
        :1
    ]
    depths = [*on_core, *([skin] if skin is not None else [])]
    return sum(depths[1:], depths[0]).to("mm") if depths else ureg.Quantity(0.0, "mm")
