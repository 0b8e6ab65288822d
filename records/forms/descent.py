"""One step of descent: what this thing was taken from, and how."""

from typing import Any

from records import lineage
from records.forms.base import RecordForm
from records.forms.lookup import LookupField
from records.forms.measurements import not_ahead
from records.models import DescentLink, Item


class DescentForm(RecordForm):
    source = LookupField(
        "things", label="Number of what it was taken from", required=False, max_length=40,
        help_text="Leave it empty if nobody knows, and say below what is known.",
    )  # fmt: skip

    class Meta:
        model = DescentLink
        fields = ["source", "transfer", "side", "source_words", "happened_on", "note"]
        groups = [
            ("", ["source", "transfer", "source_words"]),
            ("Which side, and when?", ["side", "happened_on", "note"]),
        ]  # fmt: skip
        labels = {"transfer": "How", "source_words": "What is known of an unknown model", "happened_on": "On"}
        help_texts = {
            "source_words": "“The medal of 1702, untraced since 1811”. The line then begins with a question mark.",
            "side": "obverse, reverse, front, back or whole",
        }

    def clean_happened_on(self):
        return not_ahead(self.cleaned_data["happened_on"])

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        source, words = cleaned.get("source"), cleaned.get("source_words")
        if "source" in self.errors or "transfer" in self.errors:
            return cleaned
        if not source and not words:
            self.add_error(
                "source", "Write the number of what it was taken from; if nobody knows, say below what is known."
            )
        elif source and words:
            self.add_error("source_words", "The model has a number above: leave this empty, or take the number out.")
        elif source and source.pk == self.instance.target_id:
            self.add_error("source", "A piece cannot descend from itself: write the number of what it was taken from.")
        elif self._is_there(source, cleaned):
            self.add_error("source", "This step is recorded already: look at the line of descent on the piece's page.")
        return cleaned

    def _is_there(self, source: Item | None, cleaned: dict[str, Any]) -> bool:
        """The same step again; the database itself cannot see two unknown models as alike."""
        names = ("transfer", "side", "source_words")
        alike = DescentLink.objects.filter(target_id=self.instance.target_id, source=source)
        return alike.filter(**{name: cleaned.get(name) or "" for name in names}).exclude(pk=self.instance.pk).exists()

    def save(self, commit: bool = True) -> DescentLink:
        """Refused where the chain would close on itself or a copy be older than its model."""
        lineage.refuse_impossible(self.instance)
        return super().save(commit)
