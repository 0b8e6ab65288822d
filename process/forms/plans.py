"""The whole plan of a run on one page: what is wanted, the ramp, evenness, power and anodes, cost."""

from typing import Any

from process.forms.asking import IT_IS_SO, AsksUnusual
from process.forms.ramps import ramp_rows
from process.models import PowerUnit, RampStep, Range, Run
from process.ranges import Opinion, judge_by, range_of
from process.services.plans import keep_ramp
from records.forms.base import RecordForm
from records.forms.quantities import QuantityField

POSITIVE = (
    "planned_current_density_a_dm2", "planned_thickness_mm", "reading_interval_h", "planned_minimum_mm", "nearest_mm",
    "farthest_mm", "planned_voltage_v", "anode_mass_g", "anode_area_dm2", "ready_in_h",
)  # fmt: skip
ASKED = ("ready_in_h",)


class PlanForm(AsksUnusual, RecordForm):
    """`ramp` holds the steps; the form is valid when they are. `ready_in_h` only asks, and is not kept."""

    ready_in_h = QuantityField(
        "_h", required=False, label="Must it be ready in",
        help_text="Which density that takes is answered above; it is a question, not a part of the plan.",
    )  # fmt: skip

    class Meta:
        model = Run
        fields = [
            "planned_thickness_mm", "planned_current_density_a_dm2", "planned_efficiency_pct", "planned_start_at",
            "reading_interval_h", "planned_minimum_mm", "distribution_source", "distribution_factor", "nearest_mm",
            "farthest_mm", "power_unit", "planned_voltage_v", "anode_mass_g", "anode_area_dm2", "attended_h",
            "outside_money",
        ]  # fmt: skip
        future_fields = ["planned_start_at"]
        ranged = [
            "planned_current_density_a_dm2", "planned_thickness_mm", "planned_efficiency_pct", "reading_interval_h",
            "planned_voltage_v",
        ]  # fmt: skip
        judged_as = {"planned_minimum_mm": "planned_thickness_mm", "anode_area_dm2": "total_area_dm2"}
        groups = [
            ("What is wanted", ["planned_thickness_mm", "planned_current_density_a_dm2", "planned_efficiency_pct",
                                "planned_start_at", "reading_interval_h", "ready_in_h"]),
            ("How thin may it be in the hollows?", ["planned_minimum_mm", "distribution_source", "distribution_factor",
                                                    "nearest_mm", "farthest_mm"]),
            ("Which power unit, which anodes?", ["power_unit", "planned_voltage_v", "anode_mass_g", "anode_area_dm2"]),
            ("What does it cost?", ["attended_h", "outside_money"]),
        ]  # fmt: skip
        help_texts = {
            "planned_thickness_mm": "The mean over everything that hangs in the bath; hollows stay thinner.",
            "planned_current_density_a_dm2": "Of the build, unless the last step of the ramp says otherwise.",
            "planned_minimum_mm": "Empty: what the commission specifies.",
            "distribution_factor": "Empty: 0.3 to 0.6, the rule of thumb. Not needed where a throw test is used.",
            "nearest_mm": "From the anode to the nearest and the farthest place of the face: for the throw test.",
            "outside_money": "A licensed plater, a foundry; in the currency of the price list.",
        }

    def __init__(self, data: Any = None, *args: Any, **kwargs: Any) -> None:
        super().__init__(data, *args, **kwargs)
        self.ramp = ramp_rows(self.instance, data)
        chosen = PowerUnit.objects.filter(pk=self.instance.power_unit_id)
        self.fields["power_unit"].queryset = PowerUnit.objects.filter(retired_on__isnull=True) | chosen

    def range_step(self) -> str:
        return self.instance.agitation

    def opinions(self) -> dict[str, Opinion]:
        """A step is asked about like the density of the whole, unless it is usual for a strike."""
        found = super().opinions()
        if not self.ramp.is_valid():
            return found
        usual = [range_of("current_density_a_dm2", step) for step in (self.range_step(), Range.Step.STRIKE)]
        for number, typed in self.ramp.densities():
            known = {"number": typed.number, "unit": typed.unit}
            said = [judge_by(row, "current_density_a_dm2", typed.canonical, **known) for row in usual]
            if not any(opinion.is_usual for opinion in said):
                found[f"Step {number} of the ramp"] = said[0]
        return found

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        for name in POSITIVE:
            if cleaned.get(name) == 0:
                self.add_error(name, "Write more than zero, or leave it empty if it is not needed.")
        near, far = cleaned.get("nearest_mm"), cleaned.get("farthest_mm")
        if near is not None and far is not None and far < near:
            self.add_error("farthest_mm", "The farthest place cannot be nearer to the anode than the nearest.")
        if not self.ramp.is_valid():
            self.add_error(None, "A step of the ramp cannot be read: see below what is wrong with it.")
        return cleaned

    def _keep_what_was_typed(self) -> None:
        super()._keep_what_was_typed()
        for name in ASKED:
            self.instance.as_typed.pop(name, None)

    @property
    def is_reckonable(self) -> bool:
        """Whether what was typed can be computed with, be it unusual or not."""
        return not set(self.errors) - {IT_IS_SO}

    def steps(self) -> list[RampStep]:
        return self.ramp.rows(self.instance)

    def save(self, commit: bool = True) -> Run:
        run = super().save(commit)
        keep_ramp(run=run, steps=self.steps())
        return run
