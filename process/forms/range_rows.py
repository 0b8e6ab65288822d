from itertools import pairwise

from process.models import Range
from records.forms.base import RecordForm
from records.forms.bounds import FactorField
from records.units import reach_of

ORDER = ["possible_low", "usual_low", "usual_high", "possible_high"]


class RangeForm(RecordForm):
    class Meta:
        model = Range
        fields = ["usual_low", "usual_high", "possible_low", "possible_high", "source"]
        labels = {
            "usual_low": "Usual from",
            "usual_high": "Usual to",
            "possible_low": "Not possible below",
            "possible_high": "Not possible above",
        }
        help_texts = {"source": "Where the figures come from; “workshop practice” is an answer, too."}

    def __init__(self, *args, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        for name in ORDER:
            words = f"{self.instance.unit}. Empty: no bound on this side."
            self.fields[name] = FactorField(
                reach_of(self.instance.field), required=False, label=self.fields[name].label, help_text=words
            )

    def clean(self) -> dict:
        cleaned = super().clean()
        given = [(name, cleaned[name]) for name in ORDER if cleaned.get(name) is not None]
        for (_, lower), (name, upper) in pairwise(given):
            if upper < lower:
                self.add_error(name, "The bounds cross: what is usual must lie inside what is possible.")
                break
        return cleaned
