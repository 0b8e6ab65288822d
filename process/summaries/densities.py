"""Densities found by weighing in water, each with its ±, and what they can and cannot tell."""

from collections.abc import Iterable
from dataclasses import dataclass

from pint import Quantity

from process.chemistry.density import AIR_DENSITY, hydrostatic_density
from process.chemistry.errors import ChemistryError
from process.chemistry.water import air_density, water_density
from process.models import HydrostaticWeighing
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from records.figures import Figure
from records.units import ureg

LIMITS = (
    "A density that differs from that of the metal named supports “copy” or “another alloy”; a density that agrees "
    "does not prove an original: copper shells on old backing metal (93 lead, 4 antimony, 3 tin) come within 0.4 % of "
    "fine silver. Pores and bubbles lower the figure. Seam, mark, weight and surface must be looked at too."
)


@dataclass(frozen=True)
class Density:
    row: HydrostaticWeighing
    figure: Figure
    air: str


def densities_of(rows: Iterable[HydrostaticWeighing]) -> list[Density]:
    return [density_of(row) for row in rows]


def density_of(row: HydrostaticWeighing) -> Density:
    """With water of its own temperature, and the air's buoyancy; usual room air where the air was not read."""
    air, words = _air(row)
    try:
        water = water_density(quantity(row, "water_temperature_degc"))
    except ChemistryError as error:
        return Density(row, Figure("density in water", None, "_g_cm3", note=f"Not computed: {error}."), words)
    found = figure(
        "density by weighing in water", "_g_cm3", hydrostatic_density,
        evidence={"in_air": "measured", "in_water": "measured", "water": "calculated", "air": "calculated"},
        in_air=quantity(row, "in_air_g"), in_water=quantity(row, "in_water_g"), water=water, air=air,
    )  # fmt: skip
    return Density(row, found, words)


def _air(row: HydrostaticWeighing) -> tuple[Quantity, str]:
    names = ("air_temperature_degc", "air_pressure_hpa", "air_humidity_pct")
    given = [quantity(row, name) for name in names]
    if any(each is None for each in given):
        return AIR_DENSITY, "usual room air"
    warm, pressure, damp = given
    return air_density(warm, pressure, damp.to(ureg.Unit(""))), "air as read"
