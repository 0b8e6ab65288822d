"""A face against the diameter of the piece it is taken from: a wrong unit, or a radius taken for a diameter, shows."""

import math

from process.models import Mould
from process.ranges import PAIRS, USUAL, Opinion
from records import units
from records.models import Measurement

# A face is its disc times a relief factor of 1 to 1.5, within a quarter: common practice, from memory.
LEAST, MOST = 0.75, 1.6
WHOLE_FACES = {"obverse", "reverse", "front", "back"}


def against_diameter(typed: units.Parsed, mould: Mould) -> Opinion:
    """Asked about where the two disagree by more than a quarter; with the unit in which they would agree, if any."""
    across = _diameter_mm(mould)
    if not across or mould.side not in WHOLE_FACES:
        return USUAL
    disc = math.pi / 4 * (across / 100) ** 2
    if _agree(typed.canonical, disc):
        return USUAL
    readings = [
        symbol
        for symbol in PAIRS["_dm2"]
        if symbol != typed.unit
        and _agree(units.to_canonical(typed.number, units.unit_choice("_dm2", symbol), "_dm2"), disc)
    ]
    meant = f"; {units.plain(typed.number)} {readings[0]} would be usual. Is the unit right?" if readings else "."
    shown = f"{units.plain(typed.number)} {typed.unit}"
    return Opinion(
        "unusual",
        f"{shown} is {typed.canonical / disc:.3g} times a disc of {units.show(across, '_mm')}, as "
        f"{mould.model.number} measures across{meant} A face in relief has 1.03 to 1.5 times the disc.",
    )


def _agree(area_dm2: float, disc_dm2: float) -> bool:
    return LEAST <= area_dm2 / disc_dm2 <= MOST


def _diameter_mm(mould: Mould) -> float | None:
    rows = mould.model.measurements.filter(what=Measurement.What.DIAMETER, length_mm__gt=0)
    return rows.values_list("length_mm", flat=True).last()
