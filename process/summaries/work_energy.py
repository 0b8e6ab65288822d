"""Energy that a run took at its cell, from the voltages on its sheet."""

from itertools import pairwise

from process.chemistry.gas import energy_used
from process.summaries.figures import figure
from process.summaries.runs import RunSummary
from records.figures import Figure
from records.units import ureg


def energy_of(summary: RunSummary) -> Figure | None:
    """By the mean voltage, each reading held for the charge until the next; None where no voltage was read."""
    mean = mean_voltage(summary)
    if mean is None or summary.charge.quantity is None:
        return None
    found = figure(
        "Energy at the cell", "_kwh", energy_used, voltage=ureg.Quantity(mean, "V"), charge=summary.charge.quantity
    )
    return found if found.value is not None else None


def mean_voltage(summary: RunSummary) -> float | None:
    """Weighted by charge, since energy is voltage times charge."""
    weighed, total, voltage = 0.0, 0.0, None
    for line, after in pairwise(summary.sheet.lines):
        voltage = line.row.voltage_v if line.row.voltage_v is not None else voltage
        if voltage is not None:
            weighed += voltage * (after.charge_ah - line.charge_ah)
            total += after.charge_ah - line.charge_ah
    return weighed / total if total else None
