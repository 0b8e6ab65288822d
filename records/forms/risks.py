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
