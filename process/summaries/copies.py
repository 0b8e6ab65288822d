"""A copy's figures: what it should weigh and measure by its parts and its moulds, and what it does."""

from dataclasses import dataclass, field

from pint import Quantity

from process.chemistry.density import copy_mass, mass_of, mass_ratio, volume_of
from process.chemistry.dimensions import deviation, fill_volume, predicted_dimension
from process.models import FinishStep, Inspection, MakingUp
from process.summaries.copy_parts import ShellPart, parts_of
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from records.figures import Figure
from records.models import Item, Measurement
from records.units import ureg

What = Measurement.What
SKINS = {"silver": 10.49, "gold": 19.3}  # g/cm³; OpenStax College Physics 2e, table 11.1
NEAR = (0.97, 1.03)


@dataclass(frozen=True)
class CopySummary:
    """Everything that the page and the process report say of how a copy came out."""

    making_up: MakingUp
    parts: tuple[ShellPart, ...]
    model: Item | None
    fill: Figure | None
    skin: Figure | None
    mass: tuple[Figure, ...]
    size: tuple[Figure, ...]
    measured: list[Measurement] = field(default_factory=list)  # of the copy and of its model
    warnings: list[str] = field(default_factory=list)


def summarise(making_up: MakingUp, finishes: list[FinishStep], inspection: Inspection | None) -> CopySummary:
    """Reads the rows that are handed in, the shells, and the measurements of copy and model."""
    parts = parts_of(making_up)
    model = next((part.model for part in parts if part.model), None)
    things = [making_up.copy_id, *([model.pk] if model else [])]
    measured = list(Measurement.objects.filter(item__in=things))
    own = [row for row in measured if row.item_id == making_up.copy_id]
    rows = [row for row in measured if row.item_id != making_up.copy_id]
    skin_name = skin_of(finishes)
    skin = _skin(finishes, skin_name, parts)
    fill = _fill(making_up, parts, rows)
    mass = _masses(making_up, parts, fill, skin, _measured(own, inspection, What.MASS), _row(rows, What.MASS, "mass_g"))
    size = _sizes(parts, making_up, finishes, rows, own, inspection)
    ratio = next((each.value for each in mass if each.label == "Against the model"), None)
    warnings = []
    if ratio is not None and skin_name == "silver" and NEAR[0] <= ratio / 100 <= NEAR[1]:
        warnings.append("It weighs nearly what its model weighs and is silvered: weight no longer tells them apart. Add a mark on the field.")
    return CopySummary(making_up, parts, model, fill, skin, mass, size, measured, warnings)


def skin_of(finishes: list[FinishStep]) -> str:
    """The precious metal on the surface, if any."""
    words = [step.finish.label.lower() for step in finishes]
    if any(word.startswith("silver") for word in words):
        return "silver"
    return "gold" if any(word.startswith(("gilt", "gild")) for word in words) else ""


def _row(rows: list[Measurement], what: str, column: str) -> Quantity | None:
    """The latest measurement of a kind, with its ±."""
    found = [row for row in rows if row.what == what and getattr(row, column) is not None]
    return quantity(found[-1], column) if found else None


def _measured(own: list[Measurement], inspection: Inspection | None, what: str) -> Quantity | None:
    if inspection and what == What.MASS:
        return quantity(inspection, "mass_g")
    return _row(own, what, "mass_g")


def _skin(finishes: list[FinishStep], name: str, parts: tuple[ShellPart, ...]) -> Figure | None:
    step = next((step for step in finishes if step.thickness_um), None)
    if step is None or not name or not parts:
        return None
    area = sum((quantity(part.cathode, "face_area_dm2") for part in parts[1:]), quantity(parts[0].cathode, "face_area_dm2"))
    volume = (area * quantity(step, "thickness_um")).to("cm**3")
    found = figure(f"Skin of {name}", "_g", mass_of, volume=volume, density=ureg.Quantity(SKINS[name], "g/cm**3"))
    return Figure(found.label, found.value, "_g", found.kind, found.plus_minus, "on the two faces; the edge is not counted", None, found.working)


def _fill(making_up: MakingUp, parts: tuple[ShellPart, ...], model: list[Measurement]) -> Figure | None:
    """Weighed, or the room that the shells leave inside the model's volume times the density of what fills it."""
    weighed = quantity(making_up, "fill_mass_g")
    if weighed is not None:
        return Figure("Fill", making_up.fill_mass_g, "_g", "measured", making_up.plus_minus("fill_mass_g"))
    density, mass, own = quantity(making_up, "fill_density_g_cm3"), _row(model, What.MASS, "mass_g"), _row(model, What.DENSITY, "density_g_cm3")
    if None in (density, mass, own) or any(part.trimmed is None or part.metal is None for part in parts) or making_up.core_id:
        return None
    shells = [volume_of(part.trimmed, part.metal.density) for part in parts]
    room = fill_volume(volume_of(mass, own), changes_of(parts, making_up), sum(shells[1:], shells[0]))
    return figure("Fill", "_g", mass_of, evidence={"density": "estimated"}, volume=room, density=density)


def changes_of(parts: tuple[ShellPart, ...], making_up: MakingUp) -> list[Quantity]:
    """The linear change of each transfer between the model and the copy."""
    mould = next((part.mould for part in parts if part.mould and part.mould.shrinkage_pct is not None), None)
    changes = [quantity(mould, "shrinkage_pct")] if mould else []
    if making_up.core and making_up.core.linear_change_pct is not None:
        changes.append(quantity(making_up.core, "linear_change_pct"))
    return changes or [ureg.Quantity(0.0, "pct")]


def _masses(
    making_up: MakingUp, parts: tuple[ShellPart, ...], fill: Figure | None, skin: Figure | None,
    measured: Quantity | None, model: Quantity | None,
) -> tuple[Figure, ...]:  # fmt: skip
    found = []
    core = quantity(making_up.core, "ready_mass_g") or quantity(making_up.core, "dry_mass_g") if making_up.core else None
    hollow = making_up.fill is not None and making_up.fill.label == "none"
    whole = all(part.trimmed is not None for part in parts) and (fill is not None or core is not None or hollow)
    if whole and parts:
        masses = [part.trimmed for part in parts] + ([core] if core is not None else [])
        masses += [ureg.Quantity(each.value, "g") for each in (fill, skin) if each and each.value is not None]
        found.append(figure("Mass predicted", "_g", copy_mass, parts=masses))
    if measured is not None:
        magnitude = measured.m_as("g")
        found.append(Figure("Mass measured", float(getattr(magnitude, "nominal_value", magnitude)), "_g", "measured", float(getattr(magnitude, "std_dev", 0)) or None))
        if model is not None:
            found.append(figure("Against the model", "_pct", mass_ratio, evidence={"copy": "measured", "model": "measured"}, copy=measured, model=model))
    return tuple(found)


def _sizes(
    parts: tuple[ShellPart, ...], making_up: MakingUp, finishes: list[FinishStep], model: list[Measurement],
    own: list[Measurement], inspection: Inspection | None,
) -> tuple[Figure, ...]:  # fmt: skip
    """Diameter, or breadth where the model has none."""
    what = next((kind for kind in (What.DIAMETER, What.BREADTH) if _row(model, kind, "length_mm") is not None), None)
    measured = quantity(inspection, "diameter_mm") if inspection else None
    if measured is None:
        measured = _row(own, what or What.DIAMETER, "length_mm")
    name = (what or What.DIAMETER).label.capitalize()
    found = []
    if what:
        skin = _skin_depth(parts, making_up, finishes)
        predicted = figure(
            f"{name} predicted", "_mm", predicted_dimension, evidence={"original": "measured"},
            original=_row(model, what, "length_mm"), changes=changes_of(parts, making_up), skin=skin,
        )  # fmt: skip
        found.append(predicted)
    if measured is not None:
        magnitude = measured.m_as("mm")
        found.append(Figure(f"{name} measured", float(getattr(magnitude, "nominal_value", magnitude)), "_mm", "measured"))
        if what and predicted.working:
            found.append(figure("Deviation", "_pct", deviation, evidence={"measured": "measured"}, measured=measured, predicted=predicted.working.quantity))
    return tuple(found)


def _skin_depth(parts: tuple[ShellPart, ...], making_up: MakingUp, finishes: list[FinishStep]) -> Quantity:
    """What lies outside the face that was copied: the metal on a core, and a skin of silver or gold."""
    depths = [part.face.working.quantity for part in parts if making_up.core_id and part.face and part.face.working][:1]
    depths += [quantity(step, "thickness_um") for step in finishes if step.thickness_um]
    return sum(depths[1:], depths[0]).to("mm") if depths else ureg.Quantity(0.0, "mm")
