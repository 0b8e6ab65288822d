from typing import Any

from records.forms.base import RecordForm
from records.models import Term
from records.purposes import KEPT_WORDS


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
        if self.instance.scheme == Term.Scheme.PURPOSE and self.instance.label in KEPT_WORDS:
            self.fields["label"].disabled = True
            self.fields["label"].help_text = "Consents are asked by this word wherever a copy is held or given so."

    def clean_pattern(self) -> str:
        """Only findings are drawn: any other word stays a plain outline without being asked."""
        return self.cleaned_data["pattern"] or Term.Pattern.PLAIN
