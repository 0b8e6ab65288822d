"""Figures of the copies' later lives, as the scenario states them (SCENARIO 13 and 14): asked once the demo is told."""

from datetime import date

import pytest

from process.models import WorkHours
from process.summaries.commission_costs import costs_of_commission
from process.summaries.copy_costs import costs_of_copy
from records.models import Commission, Handover, Item

# SCENARIO 14: hours by kind, copper in grams (rounded there), energy at the cells.
HOURS = {
    "R.2026.1": {"moulding": 3.0, "bath": 2.0, "making_up": 4.5, "finish": 1.5, "papers": 2.0},
    "R.2026.2": {"moulding": 3.5, "bath": 3.0, "making_up": 4.0, "papers": 3.0},
    "R.2026.3": {"moulding": 2.5, "bath": 1.5, "making_up": 3.5, "finish": 1.0, "papers": 1.5},
    "R.2026.4": {"bath": 1.5, "making_up": 4.0, "finish": 0.5, "papers": 1.0},
    "R.2026.5": {"moulding": 6.0, "core": 4.0, "bath": 3.0, "making_up": 5.0, "finish": 2.0, "papers": 3.0},
}
COPPER_G = {"R.2026.1": 43, "R.2026.2": 10, "R.2026.3": 25, "R.2026.4": 59, "R.2026.5": 192}
ENERGY_KWH = {"R.2026.1": 0.03, "R.2026.2": 0.01, "R.2026.5": 0.23}


def hours_copper_and_energy() -> None:
    for number, hours in HOURS.items():
        costs = costs_of_copy(Item.objects.get(number=number))
        assert {row.kind: row.work_h for row in costs.hours} == hours, number
        assert costs.mass_g == pytest.approx(COPPER_G[number], abs=0.6), number
        if number in ENERGY_KWH:
            assert costs.energy_kwh == pytest.approx(ENERGY_KWH[number], abs=0.011), number


def what_failed_is_counted() -> None:
    """1.0 h at the bath, 0.5 h of writing, 7 g of copper."""
    found = costs_of_commission(Commission.objects.get(number="RQ-2026-001"))
    assert (found.rest.hours_h, round(found.rest.mass_g)) == (1.5, 7)
    assert found.rework_h == 1.5 == sum(row.work_h for row in WorkHours.objects.filter(is_rework=True))


def the_plater_and_the_exchange() -> None:
    """0.19 g of silver between out and back; R.2026.3 left on 4 May, acknowledged as a copy of a copy."""
    plated = Handover.objects.get(item__number="R.2026.2")
    assert plated.mass_back_g - plated.mass_out_g == pytest.approx(0.19)
    given = Handover.objects.get(item__number="R.2026.3")
    assert given.out_on == given.acknowledged_on == date(2026, 5, 4)
    assert given.described_as == "Electrotype copy of a copy, 2026" and given.item.status == "left"


CHECKS = (hours_copper_and_energy, what_failed_is_counted, the_plater_and_the_exchange)
