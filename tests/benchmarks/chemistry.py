"""What a quantity with its unit costs against bare floats, for the formulas that a run page uses most."""

from collections.abc import Iterator

import numpy as np

from process.chemistry.deposit import mean_thickness
from process.chemistry.faraday import deposited_mass
from process.chemistry.metals import ion
from process.chemistry.series import sheet_charge
from records.units import ureg
from tests.benchmarks.clock import median_ms

CALLS, LONG = 1000, 100_000
COPPER = ion("Cu2+")


def _mass_in_floats(charge_ah: float) -> float:
    return charge_ah * 3600 * 63.546 / (2 * 96485.33212)


def _thickness_in_floats(mass_g: float, area_cm2: float) -> float:
    return mass_g / (8.92 * area_cm2) * 10


def lines(times: int) -> Iterator[str]:
    charge, mass, area = ureg.Quantity(36.85, "A*h"), ureg.Quantity(22.05, "g"), ureg.Quantity(40.2, "cm**2")
    pairs = {
        "deposited_mass": (lambda: deposited_mass(COPPER, charge), lambda: _mass_in_floats(36.85)),
        "mean_thickness": (lambda: mean_thickness(COPPER, mass, area), lambda: _thickness_in_floats(22.05, 40.2)),
    }
    yield f"{'formula':<20}{'µs':>9}{'floats µs':>12}{'ratio':>9}"
    for name, (formula, floats) in pairs.items():
        one, other = (_microseconds(call, times) for call in (formula, floats))
        yield f"{name:<20}{one:>9.1f}{other:>12.3f}{one / other:>9.0f}"
    instants, currents = np.arange(LONG) * 60.0, np.full(LONG, 1.2)
    ms = median_ms(lambda: sheet_charge(instants.tolist(), currents.tolist()), max(3, times // 5))
    yield f"sheet_charge of {LONG} lines: {ms:.0f} ms"


def _microseconds(call, times: int) -> float:
    def many() -> None:
        for _ in range(CALLS):
            call()

    return median_ms(many, max(3, times // 5)) * 1000 / CALLS
