"""One step of descent: what this thing was taken from, and how."""

from typing import Any

from records import lineage
from records.forms.base import RecordForm
from records.forms.lookup import LookupField
from records.forms.measurements import not_ahead
from records.models import DescentLink, Item

QUOTED = ("source_across_mm", "source_quoted_from")


class DescentForm(RecordForm):
    source = LookupField(
        "things", label="Number of what it was taken from", required=False, max_length=40,
        help_text="Leave it empty if nobody knows, and say below what is known.",
    )  # fmt: skip

    class Meta:
        model = DescentLink
        fields = ["source", "transfer", "side", "source_words", *QUOTED, "happened_on", "note"]
        groups = [
            ("", ["source", "transfer", "source_words"]),
            ("Does an old source say how large the unknown model was?", list(QUOTED)),
            ("Which side, and when?", ["side", "happened_on", "note"]),
        ]  # fmt: skip
        labels = {"transfer": "How", "source_words": "What is known of an unknown model", "happened_on": "On"}
        help_texts = {
            "source_words": "“The medal of 1702, untraced since 1811”. The line then begins with a question mark.",
            "source_across_mm": "Compared with what was measured later, and never taken as measured itself.",
            "source_quoted_from": "“Sale catalogue of 1811”",
            "side": "obverse, reverse, front, back or whole",
        }

    def clean_happened_on(self):
        return not_ahead(self.cleaned_data["happened_on"])

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        source, words = cleaned.get("source"), cleaned.get("source_words")
        self._look_at_what_is_quoted(cleaned)
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
            self.add_error("source", "This step is recorded already: look at the line of descent on the piece’s page.")
        return cleaned

    def _look_at_what_is_quoted(self, cleaned: dict[str, Any]) -> None:
        """A size of a model that has a number stands among its own measurements."""
        size, named = (cleaned.get(name) for name in QUOTED)
        if size is not None and size <= 0:
            self.add_error(QUOTED[0], "A size is more than nought: look at the number again.")
        if cleaned.get("source") and (size is not None or named):
            self.add_error(QUOTED[0], "The model has a number above: enter its size among its own measurements.")
        elif size is not None and not named:
            self.add_error(QUOTED[1], "Say who wrote it and where: a size without its source cannot be weighed.")
        elif named and size is None and QUOTED[0] not in self.errors:
            self.add_error(QUOTED[0], "Give the size that stands there, or take its source out.")

    def _keep_what_was_typed(self) -> None:
        """What somebody else once wrote is quoted, whatever a form may say."""
        super()._keep_what_was_typed()
        if typed := self.instance.as_typed.get(QUOTED[0]):
            self.instance.as_typed[QUOTED[0]] = {**typed, "kind": "quoted"}

    def _is_there(self, source: Item | None, cleaned: dict[str, Any]) -> bool:
        """The same step again; the database itself cannot see two unknown models as alike."""
        names = ("transfer", "side", "source_words")
        alike = DescentLink.objects.filter(target_id=self.instance.target_id, source=source)
        return alike.filter(**{name: cleaned.get(name) or "" for name in names}).exclude(pk=self.instance.pk).exists()

    def save(self, commit: bool = True) -> DescentLink:
        """Refused where the chain would close on itself or a copy be older than its model."""
        lineage.refuse_impossible(self.instance)
        return super().save(commit)
