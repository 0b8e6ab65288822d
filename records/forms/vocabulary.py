from records.forms.base import RecordForm
from records.models import Term


class TermForm(RecordForm):
    class Meta:
        model = Term
        fields = ["scheme", "group", "label", "definition", "default_stability", "pattern", "caution",
                  "source", "identifiers", "is_retired"]  # fmt: skip
        groups = [
            ("The word", ["scheme", "group", "label", "definition"]),
            (
                "For findings and cautions",
                ["default_stability", "pattern", "caution", "source", "identifiers", "is_retired"],
            ),
        ]
