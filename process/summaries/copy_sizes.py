"""The lengths of a copy at 20 °C: what its moulds foretell beside what was measured."""

from dataclasses import replace
from typing import NamedTuple

from pint import Quantity

from process.chemistry.dimensions import deviation, predicted_dimension
from process.chemistry.expansion import expansion_of, length_at
from process.models import MakingUp
from process.summaries.copy_parts import ShellPart, changes_of, unknown_changes
from process.summaries.evidence import quantity
from process.summaries.figures import apart, figure
from records.figures import Figure
from records.models import Measurement
from records.units import show, ureg

What = Measurement.What
ACROSS = (What.DIAMETER, What.BREADTH)
# A thickness is measured at a point, and a copy's own wall and filling make it: it is no length of the chain.
LENGTHS = (*ACROSS, What.HEIGHT, What.DEPTH)
MEASURED = "measured"


class Length(NamedTuple):
    """At 20 °C; `note` says how far it was moved there, `kind` how it is known."""

    quantity: Quantity | None = None
    note: str = ""
    kind: str = MEASURED


def sizes_of(
    making_up: MakingUp, parts: tuple[ShellPart, ...], skin: Quantity | None, own: list[Measurement],
    model: list[Measurement], measured: Quantity | None,
) -> tuple[Figure, ...]:  # fmt: skip
    """Every length that the model was measured in; the first across also where only the copy was."""
    across = next((kind for kind in ACROSS if length_of(model, kind)[0] is not None), What.DIAMETER)
    outside, changes = outside_of(making_up, parts, skin), changes_of(parts, making_up)
    unknown = unknown_changes(parts, making_up)
    found: list[Figure] = []
    for what in LENGTHS:
        length, note, kind = length_of(model, what)
        if length is None and what != across:
            continue
        name = what.label.capitalize()
        predicted = length and figure(
            f"{name} predicted", "_mm", predicted_dimension, evidence={"original": kind},
            original=length, changes=changes, skin=outside,
        )  # fmt: skip
        predicted = _noted(predicted, note, unknown) if predicted and predicted.working else predicted
        mine = Length(measured) if what == across and measured is not None else length_of(own, what)
        found += [each for each in (predicted or None, *_beside(name, mine, predicted or None)) if each]
    return tuple(found)


def _noted(predicted: Figure, note: str, unknown: str) -> Figure:
    """What was moved to 20 °C, and what is not known: then it is an estimate."""
    if not unknown:
        return replace(predicted, note=note)
    guessed = f"The linear change of {unknown} is not on record and counts as none."
    return replace(predicted, kind="estimated", note=f"{note} {guessed}".strip())


def length_of(rows: list[Measurement], what: str) -> Length:
    """The latest of a kind; what was quoted or estimated only where nobody measured it."""
    found = [row for row in rows if row.what == what and row.length_mm is not None]
    if not found:
        return Length()
    row = next((row for row in reversed(found) if row.evidence("length_mm") == MEASURED), found[-1])
    kind = row.evidence("length_mm")
    length, warm = quantity(row, "length_mm"), quantity(row, "temperature_degc")
    material = expansion_of(row.item.materials) if warm is not None else None
    if material is None:
        return Length(length, "", kind)
    at_20 = length_at(length, material.quantity, warm)
    moved = f"{apart(at_20.m)[0] - row.length_mm:+.4f} mm".replace("-", "\u2212")
    note = f"Measured at {show(row.temperature_degc, '_degc')}, {moved} to 20 °C by the {material.label}."
    return Length(at_20, note, kind)


def _beside(name: str, mine: Length, predicted: Figure | None) -> list[Figure]:
    """Only what was measured is held against what was foretold."""
    measured, note, kind = mine
    if measured is None:
        return []
    size, spread = apart(measured.m_as("mm"))
    found = [Figure(f"{name} {kind}", size, "_mm", kind, spread, note)]
    if predicted and predicted.working and kind == MEASURED:
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


def outside_of(making_up: MakingUp, parts: tuple[ShellPart, ...], skin: Quantity | None) -> Quantity:
    """What lies outside the face that was copied: the metal on a core, and a skin of silver or gold."""
    on_core = [part.face.working.quantity for part in parts if making_up.core_id and part.face and part.face.working][
        :1
    ]
    depths = [*on_core, *([skin] if skin is not None else [])]
    return sum(depths[1:], depths[0]).to("mm") if depths else ureg.Quantity(0.0, "mm")
