"""The mass of a copy by its parts: shells, filling or core, a skin of silver or gold."""

from pint import Quantity

from process.chemistry.density import copy_mass, mass_of, mass_ratio, volume_of
from process.chemistry.dimensions import fill_volume
from process.models import MakingUp
from process.summaries.copy_parts import ShellPart, changes_of, latest
from process.summaries.evidence import quantity
from process.summaries.figures import apart, figure, quantity_of
from records.figures import Figure
from records.models import Measurement

What = Measurement.What


def fill_of(making_up: MakingUp, parts: tuple[ShellPart, ...], model: list[Measurement]) -> Figure | None:
    """The room that the shells leave inside the model's volume, times the density of what fills it; else as weighed.

    The room comes first: a copy lighter than it says holds a void, which the weighed fill alone would never show.
    """
    by_room = _fill_by_room(making_up, parts, model)
    if by_room is not None or making_up.fill_mass_g is None:
        return by_room
    return Figure("Fill", making_up.fill_mass_g, "_g", "measured", making_up.plus_minus("fill_mass_g"))


def _fill_by_room(making_up: MakingUp, parts: tuple[ShellPart, ...], model: list[Measurement]) -> Figure | None:
    density = quantity(making_up, "fill_density_g_cm3")
    mass, own = latest(model, What.MASS, "mass_g"), latest(model, What.DENSITY, "density_g_cm3")
    if making_up.core_id or not parts or any(each is None for each in (density, mass, own)) or not _all_known(parts):
        return None
    shells = [volume_of(part.trimmed, part.metal.density) for part in parts]
    room = fill_volume(volume_of(mass, own), changes_of(parts, making_up), sum(shells[1:], shells[0]))
    if apart(room.m)[0] <= 0:
        return None
    known = {"density": making_up.evidence("fill_density_g_cm3")}
    return figure("Fill", "_g", mass_of, evidence=known, volume=room, density=density)


def _all_known(parts: tuple[ShellPart, ...]) -> bool:
    return all(part.trimmed is not None and part.metal is not None for part in parts)


def masses_of(
    making_up: MakingUp, parts: tuple[ShellPart, ...], inner: list[Figure | None],
    measured: Quantity | None, model: Quantity | None,
) -> tuple[Figure, ...]:  # fmt: skip
    """Predicted where every part is known; measured; and against the model."""
    found = [predicted] if (predicted := _predicted(making_up, parts, inner)) else []
    if measured is None:
        return tuple(found)
    grams, spread = apart(measured.m_as("g"))
    note = (
        f"{grams - predicted.value:+.2f} g against the prediction".replace("-", "\u2212")
        if predicted and predicted.value
        else ""
    )
    found.append(Figure("Mass measured", grams, "_g", "measured", spread, note))
    if model is not None:
        both = {"copy": "measured", "model": "measured"}
        found.append(figure("Mass against the model", "_pct", mass_ratio, evidence=both, copy=measured, model=model))
    return tuple(found)


def _predicted(making_up: MakingUp, parts: tuple[ShellPart, ...], inner: list[Figure | None]) -> Figure | None:
    """None while a shell is not trimmed, or what is inside was neither weighed nor can be computed."""
    core = _core_mass(making_up)
    fill = inner[0]
    hollow = making_up.fill is not None and making_up.fill.label == "none"
    if not parts or any(part.trimmed is None for part in parts) or not (fill or hollow or core is not None):
        return None
    masses = [part.trimmed for part in parts] + ([core] if core is not None else [])
    masses += [quantity_of(each) for each in inner if each and each.value is not None]
    return figure("Mass predicted", "_g", copy_mass, parts=masses)


def _core_mass(making_up: MakingUp) -> Quantity | None:
    if making_up.core is None:
        return None
    names = ("ready_mass_g", "sealed_mass_g", "dry_mass_g")
    return next((mass for name in names if (mass := quantity(making_up.core, name)) is not None), None)
