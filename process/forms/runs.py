"""The plan of a run, its start, and how it ended."""

from typing import Any

from django import forms

from process.chemistry.metals import IONS
from process.forms.asking import AsksUnusual
from process.forms.metals import metal_field
from process.forms.people import person_field
from process.models import Run
from records.forms.base import RecordForm
from records.numbers import SERIES, next_number


class RunForm(AsksUnusual, RecordForm):
    """A plan; what it comes to in current, charge and hours is computed once a cathode is there."""

    class Meta:
        model = Run
        fields = [
            "number",
            "bath",
            "planned_current_density_a_dm2",
            "planned_thickness_mm",
            "planned_start_at",
            "reading_interval_h",
            "agitation",
            "ion",
            "deposit_density_g_cm3",
            "planned_efficiency_pct",
            "commission",
            "operator",
            "note",
            "charge_from",
            "charge_reason",
        ]
        future_fields = ["planned_start_at"]
        evidence_fields = ["deposit_density_g_cm3"]
        ranged = [
            "planned_current_density_a_dm2", "planned_thickness_mm", "planned_efficiency_pct", "deposit_density_g_cm3",
            "reading_interval_h",
        ]  # fmt: skip
        groups = [
            (
                "What is planned",
                ["number", "bath", "planned_current_density_a_dm2", "planned_thickness_mm", "agitation"],
            ),
            ("When, and how often it is read", ["planned_start_at", "reading_interval_h", "operator"]),
            ("Which charge counts", ["charge_from", "charge_reason"]),
            ("The deposit", ["ion", "planned_efficiency_pct", "deposit_density_g_cm3"]),
            ("What it belongs to", ["commission", "note"]),
        ]
        widgets = {"note": forms.Textarea({"rows": 3})}
        help_texts = {
            "planned_current_density_a_dm2": "A/ft² and A/dm² differ by the factor 9.3: look at the unit twice.",
            "planned_thickness_mm": "The mean over everything that hangs in the bath; hollows stay thinner.",
            "deposit_density_g_cm3": "Left empty: the handbook’s figure for the metal.",
            "charge_reason": "Why this evidence was chosen: “switching times are known”.",
        }

    def __init__(self, *args: Any, user: Any = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        person_field(self, "operator", user)
        self.fields["ion"] = metal_field()
        self.fields["deposit_density_g_cm3"].required = False
        if self.instance._state.adding:
            self.initial["number"] = next_number(Run, SERIES["run"])
            self.initial["deposit_density_g_cm3"] = None
            self.fields["deposit_density_g_cm3"].initial = None
            del self.fields["charge_from"], self.fields["charge_reason"]

    def range_step(self) -> str:
        return self.cleaned_data.get("agitation") or "any"

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        if (
            cleaned.get("deposit_density_g_cm3") is None
            and cleaned.get("ion")
            and "deposit_density_g_cm3" not in self.errors
        ):
            cleaned["deposit_density_g_cm3"] = IONS[cleaned["ion"]].density.m_as("g/cm**3")
        for name in ("planned_current_density_a_dm2", "planned_thickness_mm", "reading_interval_h"):
            if cleaned.get(name) is not None and cleaned[name] <= 0 and name not in self.errors:
                self.add_error(name, "Write more than zero: a run of nothing never ends.")
        refuse_unreasoned(self, self.instance)
        return cleaned


def refuse_unreasoned(form: forms.BaseForm, run: Run) -> None:
    """Another evidence than the sheet is believed for a reason; a trace is believed once it is accepted."""
    chosen = form.cleaned_data.get("charge_from")
    if chosen in {Run.ChargeFrom.METER, Run.ChargeFrom.TRACE} and not form.cleaned_data.get("charge_reason"):
        form.errors.pop("charge_reason", None)  # the one sentence that says why it is needed
        name = "meter" if chosen == Run.ChargeFrom.METER else "trace"
        form.add_error(
            "charge_reason", f"Say why the {name} is believed rather than the sheet: every figure follows from it."
        )
    if chosen == Run.ChargeFrom.TRACE and not run.traces.accepted().exists():
        form.add_error("charge_from", "No trace of this run is accepted: accept one first, then choose it.")


class ChargeForm(RecordForm):
    """Which of the three figures counts, and why."""

    class Meta:
        model = Run
        fields = ["charge_from", "charge_reason"]
        help_texts = {"charge_reason": "“Switching times are known”, “the sheet has a hole of a night”."}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["charge_from"].widget = forms.RadioSelect(choices=Run.ChargeFrom.choices)
        self.fields["charge_reason"].required = True

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        refuse_unreasoned(self, self.instance)
        return cleaned

    def save(self, commit: bool = True) -> Run:
        self.instance._change_reason = self.cleaned_data["charge_reason"]
        return super().save(commit)


class JudgeForm(forms.Form):
    """How a run ended, and what was learned."""

    outcome = forms.ChoiceField(
        label="It ended", choices=Run.Outcome.choices, widget=forms.RadioSelect,
        help_text="A failed run keeps its shells as scrap and evidence; the pull of the mould stays used.",
    )  # fmt: skip
    outcome_words = forms.CharField(
        label="What happened, and what was learned", required=False, widget=forms.Textarea({"rows": 5}), max_length=4000
    )
