from records.forms.base import RecordForm
from records.models import Compatibility


class CompatibilityForm(RecordForm):
    class Meta:
        model = Compatibility
        fields = ["surface", "material", "verdict", "words", "source", "is_retired"]
        groups = [
            ("The pair", ["surface", "material"]),
            ("What it bears", ["verdict", "words"]),
            ("Where it comes from", ["source", "is_retired"]),
        ]
        help_texts = {"source": "A paper, a test of your own with its day, or “from memory”."}
