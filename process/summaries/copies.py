"""A copy's figures: what it should weigh and measure by its parts and its moulds, and what it does."""

from dataclasses import dataclass, field

from process.models import FinishStep, Inspection, MakingUp
from process.summaries.copy_fills import Fillings, fillings_or_none
from process.summaries.copy_masses import fill_of, masses_of
from process.summaries.copy_parts import ShellPart, changes_of, latest, parts_of
from process.summaries.copy_sizes import sizes_of
from process.summaries.copy_skin import skin
from process.summaries.drying import bare_drying_of
from process.summaries.evidence import quantity
from records.figures import Figure
from records.line import measured_on
from records.models import Item, Measurement

What = Measurement.What
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
    surface: Figure | None = None
    fillings: Fillings | None = None
    warnings: list[str] = field(default_factory=list)


def summarise(making_up: MakingUp, finishes: list[FinishStep], inspection: Inspection | None) -> CopySummary:
    """Reads the rows that are handed in, the shells, and the measurements of copy and model."""
    parts = parts_of(making_up)
    model = next((part.model for part in parts if part.model), None)
    measured = measured_on(making_up.copy, *([model] if model else []))
    for row in measured:
        row.item = making_up.copy if row.item_id == making_up.copy_id else model  # nobody asks the database again
    own = [row for row in measured if row.item_id == making_up.copy_id]
    rows = [row for row in measured if row.item_id != making_up.copy_id]
    found = skin(finishes, making_up, parts, rows)
    fill = fill_of(making_up, parts, rows)
    weighed = quantity(inspection, "mass_g") if inspection else latest(own, What.MASS, "mass_g")
    mass = masses_of(making_up, parts, [fill, found.mass], weighed, latest(rows, What.MASS, "mass_g"))
    across = quantity(inspection, "diameter_mm") if inspection else None
    size = sizes_of(making_up, parts, found.depth, own, rows, across)
    ratio = next((each.value for each in mass if each.label == "Mass against the model"), None)
    alike = found.name == "silver" and ratio is not None and NEAR_PCT[0] <= ratio <= NEAR_PCT[1]
    warnings = ([TOO_ALIKE] if alike else []) + drying_words(making_up, parts)
    hollow = making_up.core_id is None and making_up.technique != MakingUp.Technique.MATRIX
    fillings = fillings_or_none(parts, changes_of(parts, making_up), rows) if hollow else None
    return CopySummary(
        making_up, parts, model, fill, found.mass, mass, size, found.surface, fillings=fillings, warnings=warnings
    )


def drying_words(making_up: MakingUp, parts: tuple[ShellPart, ...]) -> list[str]:
    """What the weighings of its core leave to worry about, for as long as the copy exists."""
    if not making_up.core_id:
        return []
    dryings = [bare_drying_of(part.shell) for part in parts if part.cathode.core_id]
    return [f"{each.word[0].upper()}{each.word[1:]}. {each.sentence}" for each in dryings if each.code != "constant"]
