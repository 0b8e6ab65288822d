"""The assessment of a surface before it is moulded."""

from typing import Any

from django import forms

from records import clock
from records.compatibility import SENSITIVITIES, faults
from records.forms.base import RecordForm
from records.models import RiskAssessment, Term
from records.numbers import SERIES, next_number

WEAKNESS = ("porosity_count", "undercut_count", "weakness_count", "repairs_count")
HARM = ("probability_count", "consequence_count", "probability_after_count", "consequence_after_count")


class RiskForm(RecordForm):
    """What blocks contact needs a decision without contact, or a reason why all the same."""

    sensitivities = forms.MultipleChoiceField(
        label="Suffers from", choices=[(each, each) for each in SENSITIVITIES], required=False,
        widget=forms.CheckboxSelectMultiple,
    )  # fmt: skip

    class Meta:
        model = RiskAssessment
        fields = ["number", "assessed_on", "assessor", "commission", "surface", "surfaces", "deterioration",
                  "mould_material", "barrier", "test_patch", "patch_result", "patch_on", "decision", "reason",
                  "all_the_same", "conditions", *WEAKNESS, "sensitivities", *HARM]  # fmt: skip
        groups = [
            ("Who and when", ["number", "assessed_on", "assessor", "commission"]),
            ("What the surface is", ["surface", "surfaces", "deterioration"]),
            ("What is proposed", ["mould_material", "barrier", "test_patch", "patch_result", "patch_on"]),
            ("Decision", ["decision", "reason", "all_the_same", "conditions"]),
            ("How weak is it, and what does it suffer from?", [*WEAKNESS, "sensitivities"]),
            ("How likely is harm, and how grave?", list(HARM)),
        ]
        help_texts = {
            "surfaces": "Each layer that may be touched; the weakest rules.",
            "deterioration": "Chloride or lead corrosion, flaking, powder, lifting gilding. “Yes” refuses contact.",
            "test_patch": "Needed on porous, gilt, painted or archaeological surfaces.",
            "decision": "Think first of the ways that do not touch the original: an existing mould or copy, a scan.",
            "all_the_same": "Only where something refuses contact, and it is decided all the same.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self._offer_surfaces()
        if not self.instance.pk:
            self.offer("number", next_number(RiskAssessment, SERIES["risk"]))
            self.offer("assessed_on", clock.today())

    def _offer_surfaces(self) -> None:
        """Those of the list, and those that stand here from before."""
        labels = list(Term.objects.filter(scheme="surface", is_retired=False).values_list("label", flat=True))
        labels += [each for each in self.instance.surfaces if each not in labels]
        self.fields["surfaces"] = forms.MultipleChoiceField(
            label="Kinds of surface", choices=[(each, each) for each in labels], required=False,
            widget=forms.CheckboxSelectMultiple, help_text=self.Meta.help_texts["surfaces"],
        )  # fmt: skip

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        tested, assessed = cleaned.get("patch_on"), cleaned.get("assessed_on")
        if tested and assessed and tested > assessed:
            self.add_error("patch_on", "The patch was tested after it was assessed: correct one of the two days.")
        if cleaned.get("patch_result") and not cleaned.get("test_patch"):
            self.add_error("test_patch", "Say where and with what the patch was tested.")
        return cleaned

    def _post_clean(self) -> None:
        super()._post_clean()
        if not self.errors and (against := faults(self.instance)):
            self.add_error("decision", f"{' '.join(against)} Refuse it, go another way, or say why all the same.")
