"""The skin of silver or gold on a copy: how deep it is, what it lies on, what it weighs."""

from dataclasses import dataclass

from pint import Quantity

from process.chemistry.dimensions import disc_surface
from process.chemistry.metals import ion
from process.chemistry.plan import target_mass
from process.models import FinishStep, MakingUp
from process.summaries.copy_parts import ShellPart, latest
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from records.figures import Figure
from records.models import Measurement

What = Measurement.What
IONS = {"silver": "Ag+", "gold": "Au+"}


@dataclass(frozen=True)
class Skin:
    """`depth` counts outside the face that was copied; `surface` is None where the edge is not known."""

    name: str = ""
    depth: Quantity | None = None
    surface: Figure | None = None
    mass: Figure | None = None


def skin(
    finishes: list[FinishStep], making_up: MakingUp, parts: tuple[ShellPart, ...], model: list[Measurement]
) -> Skin:
    """Its mass from the faces and, of a round piece, from the edge by the model's diameter and thickness."""
    name, depth = skin_of(finishes), depth_of(finishes)
    faces = [area for part in parts if (area := _face(part)) is not None]
    if not name or depth is None or not faces or len(faces) < len(parts):
        return Skin(name, depth)
    surface = _surface(making_up, faces, model)
    known = surface is not None and surface.working is not None
    area = surface.working.quantity if known else sum(faces[1:], faces[0])
    mass = figure(f"Skin of {name}", "_g", target_mass, ion=ion(IONS[name]), area=area, thickness=depth)
    note = "On the faces and the edge." if known else "On the faces; the edge is not counted."
    return Skin(name, depth, surface if known else None, _noted(mass, note))


def skin_of(finishes: list[FinishStep]) -> str:
    """The precious metal on the surface, if any."""
    words = [step.finish.label.lower() for step in finishes]
    if any(word.startswith("silver") for word in words):
        return "silver"
    return "gold" if any(word.startswith(("gilt", "gild")) for word in words) else ""


def depth_of(finishes: list[FinishStep]) -> Quantity | None:
    """The thickness of the metal skin, all coats together."""
    depths = [quantity(step, "thickness_um") for step in finishes if step.thickness_um]
    return sum(depths[1:], depths[0]).to("mm") if depths else None


def _face(part: ShellPart) -> Quantity | None:
    face = quantity(part.cathode, "face_area_dm2")
    return face if face is not None else quantity(part.cathode, "total_area_dm2")


def _surface(making_up: MakingUp, faces: list[Quantity], model: list[Measurement]) -> Figure | None:
    """Two shells joined show the whole edge; one face shows its own rim, a core was covered all over."""
    across, height = (latest(model, what, "length_mm") for what in (What.DIAMETER, What.THICKNESS))
    if making_up.technique != MakingUp.Technique.JOINED or across is None or height is None:
        return None
    measured = {"diameter": "measured", "height": "measured"}
    return figure(
        "Surface under the skin", "_dm2", disc_surface, evidence=measured,
        faces=faces, diameter=across, height=height,
    )  # fmt: skip


def _noted(found: Figure, note: str) -> Figure:
    return Figure(
        found.label, found.value, found.suffix, found.kind, found.plus_minus, found.note or note, None, found.working
    )
