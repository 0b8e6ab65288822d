from typing import Any

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

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["pattern"].required = False

    def clean_pattern(self) -> str:
        """Only findings are drawn: any other word stays a plain outline without being asked."""
        return self.cleaned_data["pattern"] or Term.Pattern.PLAIN
