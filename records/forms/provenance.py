"""One event of a thing's life outside the workshop."""

from records.forms.base import RecordForm
from records.models import ProvenanceEvent


class ProvenanceForm(RecordForm):
    class Meta:
        model = ProvenanceEvent
        fields = ["date_words", "what", "party", "source"]
        labels = {"what": "What happened", "party": "Who had it or passed it on", "source": "Where this is written"}
        help_texts = {
            "date_words": "“1889”, “about 1868”, “before 1811”, “undated”",
            "what": "“Bought from the sitter’s family”, “lent to the school”.",
        }
