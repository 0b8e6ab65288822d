"""A copy's figures: what it should weigh and measure by its parts and its moulds, and what it does."""

from dataclasses import dataclass, field

from process.models import FinishStep, Inspection, MakingUp
from process.summaries.copy_masses import Skin, fill_of, masses_of, skin_mass
from process.summaries.copy_parts import ShellPart, latest, parts_of
from process.summaries.copy_sizes import sizes_of
from process.summaries.evidence import quantity
from records.figures import Figure
from records.line import measured_on
from records.models import Item, Measurement

What = Measurement.What
SKINS = {"silver": 10.49, "gold": 19.3}  # g/cm³; OpenStax College Physics 2e, table 11.1
NEAR_PCT = (97.0, 103.0)
TOO_ALIKE = "Silvered, and nearly as heavy as its model: weight no longer tells them apart. Add a mark on the field."


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
    warnings: list[str] = field(default_factory=list)


def summarise(making_up: MakingUp, finishes: list[FinishStep], inspection: Inspection | None) -> CopySummary:
    """Reads the rows that are handed in, the shells, and the measurements of copy and model."""
    parts = parts_of(making_up)
    model = next((part.model for part in parts if part.model), None)
    measured = measured_on(making_up.copy, *([model] if model else []))
    own = [row for row in measured if row.item_id == making_up.copy_id]
    rows = [row for row in measured if row.item_id != making_up.copy_id]
    name, depth = skin_of(finishes), _depth(finishes)
    skin = skin_mass(Skin(name, SKINS[name], depth), parts) if name and depth is not None else None
    fill = fill_of(making_up, parts, rows)
    weighed = quantity(inspection, "mass_g") if inspection else latest(own, What.MASS, "mass_g")
    mass = masses_of(making_up, parts, [fill, skin], weighed, latest(rows, What.MASS, "mass_g"))
    across = quantity(inspection, "diameter_mm") if inspection else None
    size = sizes_of(making_up, parts, depth, own, rows, across)
    ratio = next((each.value for each in mass if each.label == "Against the model"), None)
    alike = name == "silver" and ratio is not None and NEAR_PCT[0] <= ratio <= NEAR_PCT[1]
    return CopySummary(making_up, parts, model, fill, skin, mass, size, [TOO_ALIKE] if alike else [])


def _depth(finishes: list[FinishStep]):
    """The thickness of the metal skin, all coats together."""
    depths = [quantity(step, "thickness_um") for step in finishes if step.thickness_um]
    return sum(depths[1:], depths[0]).to("mm") if depths else None


def skin_of(finishes: list[FinishStep]) -> str:
    """The precious metal on the surface, if any."""
    words = [step.finish.label.lower() for step in finishes]
    if any(word.startswith("silver") for word in words):
        return "silver"
    return "gold" if any(word.startswith(("gilt", "gild")) for word in words) else ""
