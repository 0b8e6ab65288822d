"""What a scan told, kept beside its area, and what follows for the side that takes metal."""

from typing import Any

from process.chemistry.scans import SIDES, Scan
from process.models import AreaPart
from process.summaries.figures import apart
from records import units
from records.units import ureg

SIDE_WORDS = {"all": "the whole surface"} | {
    side: f"what looks towards {side.replace('-', '−')}" for side in SIDES if side != "all"
}


def facts_of(scan: Scan) -> dict[str, Any]:
    """Of one piece, whatever side is chosen later."""
    volume = None if scan.volume is None else round(apart(scan.volume.m_as("cm**3"))[0], 3)
    return {
        "faces": scan.face_count, "volume_cm3": volume, "remarks": list(scan.remarks),
        "sides_dm2": {side: round(area.m_as("dm**2"), 6) for side, area in scan.side_areas.items()},
        "whole_area_dm2": round(scan.whole_area.m_as("dm**2"), 6),
        "extent_mm": [round(each, 3) for each in scan.extent_mm],
    }  # fmt: skip


def sides_of(part: AreaPart) -> dict[str, float]:
    """The area of one piece by side; of a scan read before sides were kept, only of the side that was chosen."""
    facts = part.scan_facts
    return facts.get("sides_dm2") or {facts["side"]: part.area_dm2 / part.pieces_count}


def in_unit(facts: dict[str, Any], unit: str) -> dict[str, Any]:
    """The same scan, counted in another unit than it was read with."""
    scale = ureg.Quantity(1.0, unit).m_as(facts["unit"])
    if scale == 1:
        return facts
    volume = facts["volume_cm3"]
    return facts | {
        "unit": unit, "volume_cm3": None if volume is None else float(f"{volume * scale**3:.6g}"),
        "sides_dm2": {side: dm2 * scale**2 for side, dm2 in facts["sides_dm2"].items()},
        "whole_area_dm2": facts["whole_area_dm2"] * scale**2,
        "extent_mm": [round(each * scale, 3) for each in facts["extent_mm"]],
    }  # fmt: skip


def side_choices(part: AreaPart) -> list[tuple[str, str]]:
    """Sides that have an area, with it."""
    return [(side, f"{SIDE_WORDS[side]}: {units.show(dm2, '_dm2')}") for side, dm2 in sides_of(part).items() if dm2]
