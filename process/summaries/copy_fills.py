"""What a hollow copy would weigh with each usual filling: a table to look at before one is poured."""

from collections.abc import Sequence
from dataclasses import dataclass

from pint import Quantity

from process.chemistry.density import fill_masses, mass_ratio, volume_of
from process.chemistry.dimensions import fill_volume
from process.chemistry.errors import ChemistryError
from process.models import MakingUp, Shell
from process.summaries.copy_parts import ShellPart, changes_of, latest, part_of
from process.summaries.figures import apart, figure
from records.figures import Figure
from records.models import Measurement
from records.units import ureg

What = Measurement.What
# Names and densities of fillings: common workshop practice, from memory; the last two columns say what to think of.
FILLINGS = (
    ("lead with antimony and tin", 10.6, "lead: toxic fume, and it corrodes in acid air"),
    ("bismuth and tin, low melting", 8.6, "brittle"),
    ("tin-rich alloy, lead-free", 7.30, "its heat may open layers"),
    ("epoxy with metal powder", 3.2, "cold; cannot be undone"),
    ("epoxy, plain", 1.15, "cold and light; cannot be undone"),
    ("left hollow", 0.0, "dents"),
)
ALIKE_PCT = (97.0, 103.0)


@dataclass(frozen=True)
class FillLine:
    name: str
    density_g_cm3: float
    mass_g: float
    ratio_pct: float
    caution: str

    @property
    def is_alike(self) -> bool:
        """As heavy as the model: then weight no longer tells them apart."""
        return ALIKE_PCT[0] <= self.ratio_pct <= ALIKE_PCT[1]


@dataclass(frozen=True)
class Fillings:
    room: Figure
    lines: tuple[FillLine, ...]


def fillings_of(
    parts: Sequence[ShellPart], changes: list[Quantity], model: list[Measurement]
) -> Fillings | None:  # fmt: skip
    """None where the model's volume, or a shell's mass, is not known; or where no room is left."""
    mass, density = latest(model, What.MASS, "mass_g"), latest(model, What.DENSITY, "density_g_cm3")
    known = all(part.trimmed is not None and part.metal is not None for part in parts)
    if not parts or mass is None or density is None or not known:
        return None
    shells = [volume_of(part.trimmed, part.metal.density) for part in parts]
    room = figure("Room inside", "_cm3", fill_volume, original=volume_of(mass, density), changes=changes,
                  shells=sum(shells[1:], shells[0]))  # fmt: skip
    if room.working is None or (room.value or 0) <= 0:
        return None
    grams = sum((part.trimmed for part in parts[1:]), parts[0].trimmed)
    return Fillings(room, _lines(room.working.quantity, grams, mass))


def _lines(room: Quantity, shells: Quantity, model: Quantity) -> tuple[FillLine, ...]:
    poured = [each for each in FILLINGS if each[1] > 0]
    masses = fill_masses(room, shells, [ureg.Quantity(each[1], "g/cm**3") for each in poured])
    masses = dict(zip([each[0] for each in poured], masses, strict=True))
    return tuple(
        FillLine(name, density, apart((m := masses.get(name, shells)).m_as("g"))[0],
                 apart(mass_ratio(m, model).m_as("pct"))[0], caution)
        for name, density, caution in FILLINGS
    )  # fmt: skip


def fillings_before(shells: Sequence[Shell]) -> Fillings | None:
    """For shells that are not made up yet, all of one model."""
    parts = tuple(part_of(shell) for shell in shells)
    models = {part.model.pk: part.model for part in parts if part.model}
    if len(models) != 1 or any(part.cathode.core_id for part in parts):
        return None
    measured = Measurement.objects.filter(item__in=models)
    return fillings_or_none(parts, changes_of(parts, MakingUp()), list(measured))


def fillings_or_none(parts: Sequence[ShellPart], changes: list[Quantity], model: list[Measurement]) -> Fillings | None:
    """On a page, a piece that cannot be reckoned shows no table."""
    try:
        return fillings_of(parts, changes, model)
    except ChemistryError:
        return None
