"""The thinnest place that a plan promises: mean times a distribution factor that always says where it comes from."""

from dataclasses import dataclass

from pint import Quantity
from uncertainties import ufloat

from process.chemistry.deposit import MINIMUM_SHARES
from process.chemistry.errors import ChemistryError
from process.chemistry.supply import mean_for_minimum, minimum_anywhere
from process.chemistry.throwing import (
    distance_ratio,
    factor_of_two_places,
    field_number,
    haring_blum,
    heatley_number,
    metal_ratio,
    metal_ratio_expected,
)
from process.models import Cathode, FactorSource, Run, ThrowTest
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from records.figures import Figure
from records.models import Specification
from records.units import ureg


@dataclass(frozen=True)
class Evenness:
    """`wanted_mm` is the specified minimum, or what the plan itself asks; None where nobody asked for one."""

    factor: Figure
    minimum: Figure
    wanted_mm: float | None
    wanted_from: str
    mean_needed: Figure | None


@dataclass(frozen=True)
class Throw:
    """What a cell test says of its bath."""

    test: ThrowTest
    distances: Figure
    metal: Figure
    haring_blum: Figure
    field: Figure
    heatley: Figure


def throw_of(test: ThrowTest) -> Throw:
    distances = figure(
        "Distances, far over near",
        "_ratio",
        distance_ratio,
        far=quantity(test, "far_mm"),
        near=quantity(test, "near_mm"),
    )
    metal = figure(
        "Metal, near over far",
        "_ratio",
        metal_ratio,
        near_mass=quantity(test, "near_gain_g"),
        far_mass=quantity(test, "far_gain_g"),
    )
    known = {"distances": distances.working.quantity, "metal": metal.working.quantity}
    return Throw(
        test, distances, metal,
        figure("Haring–Blum", "_pct", haring_blum, **known), figure("Field’s number", "_pct", field_number, **known),
        figure("Heatley’s scale", "_pct", heatley_number, **known),
    )  # fmt: skip


def evenness_of(run: Run, cathodes: list[Cathode]) -> Evenness:
    factor, share = _factor(run)
    wanted, where = wanted_minimum(run, cathodes)
    if share is None:
        return Evenness(factor, Figure("Thinnest place", None, "_mm", note=factor.note), wanted, where, None)
    mean = quantity(run, "planned_thickness_mm")
    found = figure("Thinnest place", "_mm", minimum_anywhere, thickness=mean, distribution_factor=share)
    kind = "calculated" if run.distribution_source == FactorSource.MEASURED else "estimated"
    minimum = Figure(found.label, found.value, "_mm", kind, found.plus_minus, f"{factor.note}", wanted, found.working)
    needed = wanted and figure(
        "Mean that it takes", "_mm", mean_for_minimum,
        minimum=ureg.Quantity(wanted, "mm"), distribution_factor=share,
    )  # fmt: skip
    return Evenness(factor, minimum, wanted, where, needed or None)


def wanted_minimum(run: Run, cathodes: list[Cathode]) -> tuple[float | None, str]:
    """What the plan asks of the thinnest place, or the commission's specification for what hangs there."""
    if run.planned_minimum_mm:
        return run.planned_minimum_mm, "asked for in this plan"
    if run.commission_id is None:
        return None, ""
    models = {cathode.mould.model_id for cathode in cathodes if cathode.mould_id}
    found = list(Specification.objects.filter(commission=run.commission_id))
    chosen = [each for each in found if each.item_id in models] or found
    if not chosen:
        return None, ""
    return max(each.thickness_min_mm for each in chosen), f"specified in {run.commission.number}"


def _factor(run: Run) -> tuple[Figure, Quantity | None]:
    """Measured in the bath, stated by a person, or the range of the rule of thumb."""
    label = "Thinnest over mean"
    if run.distribution_source == FactorSource.MEASURED:
        return _measured(run, label)
    if run.distribution_factor:
        share = run.distribution_factor
        note = f"{run.get_distribution_source_display() or 'Stated in the plan'}.".capitalize()
        return Figure(label, share * 100, "_pct", "estimated", note=note), ureg.Quantity(share)
    low, high = MINIMUM_SHARES
    middle, half = (low + high) / 2, (high - low) / 2
    note = f"Rule of thumb, {low} to {high} of the mean; from memory, not measured."
    return Figure(label, middle * 100, "_pct", "estimated", half * 100, note), ureg.Quantity(ufloat(middle, half))


def _measured(run: Run, label: str) -> tuple[Figure, Quantity | None]:
    test = next(iter(run.bath.throw_tests.all()), None)
    if test is None:
        return Figure(
            label, None, "_pct", note=f"{run.bath.number} has no throw test yet: enter one at the bath."
        ), None
    near, far = quantity(run, "nearest_mm"), quantity(run, "farthest_mm")
    if near is None or far is None:
        return Figure(label, None, "_pct", note="Give the nearest and the farthest distance to the anode."), None
    try:
        ratio = metal_ratio_expected(distance_ratio(far, near), throw_of(test).field.working.quantity)
    except ChemistryError as error:
        return Figure(label, None, "_pct", note=f"Not computed: {error}."), None
    found = figure(label, "_pct", factor_of_two_places, metal=ratio)
    if found.working is None:
        return found, None
    note = f"From the throw test of {run.bath.number} on {test.tested_on:%-d %b %Y}; narrow hollows stay thinner."
    return Figure(
        label, found.value, "_pct", "calculated", found.plus_minus, note, None, found.working
    ), found.working.quantity
