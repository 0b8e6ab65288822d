"""What was done about an incident, and when the owner was told."""

from typing import Any

from records.forms.base import RecordForm
from records.forms.measurements import not_ahead
from records.models import Incident


class IncidentForm(RecordForm):
    class Meta:
        model = Incident
        fields = ["number", "treatment", "owner_told_on", "owner_told_words"]
        groups = [("", ["number", "treatment"]), ("Was the owner told?", ["owner_told_on", "owner_told_words"])]

    def clean_owner_told_on(self) -> Any:
        return not_ahead(self.cleaned_data["owner_told_on"])
