from django.core.exceptions import ValidationError

from records import clock
from records.forms.base import RecordForm
from records.models import RiskAssessment
from records.numbers import SERIES, next_number


class RiskForm(RecordForm):
    class Meta:
        model = RiskAssessment
        fields = ["number", "assessed_on", "assessor", "commission", "surface", "deterioration", "test_patch",
                  "probability_count", "consequence_count", "decision", "reason", "conditions"]  # fmt: skip
        groups = [
            ("Who and when", ["number", "assessed_on", "assessor", "commission"]),
            (
                "What the surface is",
                ["surface", "deterioration", "test_patch", "probability_count", "consequence_count"],
            ),
            ("Decision", ["decision", "reason", "conditions"]),
        ]
        help_texts = {
            "deterioration": "Chloride or lead corrosion, flaking, powder, lifting gilding. “Yes” speaks against it.",
            "test_patch": "Place, material, time, result; needed on porous, gilt, painted or archaeological surfaces.",
            "decision": "Think first of the ways that do not touch the original: an existing mould or copy, a scan.",
        }

    def __init__(self, *args, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        if not self.instance.pk:
            self.offer("number", next_number(RiskAssessment, SERIES["risk"]))
            self.offer("assessed_on", clock.today())

    def _one_to_five(self, name: str) -> int | None:
        value = self.cleaned_data[name]
        if value is not None and not 1 <= value <= 5:
            raise ValidationError("Choose from 1 (least) to 5 (most).")
        return value

    def clean_probability_count(self) -> int | None:
        return self._one_to_five("probability_count")

    def clean_consequence_count(self) -> int | None:
        return self._one_to_five("consequence_count")
