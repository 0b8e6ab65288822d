"""One row of the table of care."""

from typing import Any

from process.models import CareRule
from records.forms.base import RecordForm


class CareRuleForm(RecordForm):
    class Meta:
        model = CareRule
        bounds = {"survey_months_count": (1, 240)}
        fields = ["sentence", "tag_words", "humidity_from_pct", "humidity_to_pct", "survey_months_count", "source"]
        help_texts = {
            "tag_words": "A few words: a tag is small.",
            "survey_months_count": "Empty: the composition alone asks for no look of its own.",
            "source": "Where it is written; “common practice” where that is all.",
        }

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        low, high = cleaned.get("humidity_from_pct"), cleaned.get("humidity_to_pct")
        if low is not None and high is not None and low > high:
            self.add_error("humidity_to_pct", "It ends below where it begins: correct one of the two.")
        return cleaned
