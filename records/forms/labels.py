"""The form of a label's wording: kind first, then the date of the copy."""

from typing import Any

from django import forms

from records.forms.base import RecordForm
from records.forms.pictures import offer_pictures
from records.models import LabelWording, Photo
from records.wording import CopyFacts, fitting_kinds, load_kinds

AS_USUAL = ("size", "light", "distance_mm")  # where nothing is chosen
# What was approved: the words. Their size, and who may see them, may change without a new approval.
READ = {
    "kind_of_copy", "copy_date", "after", "body", "credit", "second_language", "second_heading", "second_text",
}  # fmt: skip
UNSIGNED = {"signed_by": None, "signed_role": "", "signed_at": None}


class LabelForm(RecordForm):
    """A wording that the checks refuse is kept as a draft; changing an approved one takes the approval away."""

    kind_of_copy = forms.ChoiceField(
        label="Kind of copy", help_text="The first words of every label; those that fit the record come first."
    )

    class Meta:
        model = LabelWording
        fields = [
            "kind_of_copy", "copy_date", "after", "body", "credit", "with_edition", "size", "distance_mm", "light",
            "second_language", "second_heading", "second_text", "is_public", "shown_photo",
        ]  # fmt: skip
        groups = [("The heading", ["kind_of_copy", "copy_date"]),
                  ("The text", ["after", "body", "credit", "with_edition"]),
                  ("How will it be read?", ["size", "distance_mm", "light"]),
                  ("Is there a second language?", ["second_language", "second_heading", "second_text"]),
                  ("What do strangers see?", ["is_public", "shown_photo"])]  # fmt: skip
        widgets = {"after": forms.Textarea({"rows": 2}), "body": forms.Textarea({"rows": 6}),
                   "second_text": forms.Textarea({"rows": 5})}  # fmt: skip
        help_texts = {
            "copy_date": "When the copy was made, never the date of what it repeats.",
            "after": "What it repeats, by whom and when: “after a cast bronze medal of 1624 by …”.",
            "distance_mm": "From the eye to the label; letters grow with it (AS 1319 chart: 4 mm of x-height a metre).",
            "with_edition": "“Copy 1 of 3 authorised, 2 made”, counted anew at each printing; beside the number.",
            "second_language": "Left empty, the label is in one language.",
            "second_heading": "Kind of copy, then its own date: “Galvanoplastische Kopie, 2026”.",
            "is_public": "Without it they learn the number and that it is a copy, nothing more.",
            "body": "Materials, how it was made, where the original is. Line breaks stand as typed; 50 words are read.",
        }

    def __init__(self, *args: Any, facts: CopyFacts, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["kind_of_copy"].choices = _choices(facts, self.instance.kind_of_copy)
        self.fields["after"].required = True
        for name in AS_USUAL:
            self.fields[name].required = False
        shown, photos = self.instance.shown_photo_id, Photo.objects.filter(item=self.instance.item)
        offer_pictures(self.fields["shown_photo"], photos, [shown])
        self.fields["shown_photo"].empty_label = "none"

    def clean_after(self) -> str:
        return " ".join(self.cleaned_data["after"].split())

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        for name in AS_USUAL:
            cleaned[name] = cleaned.get(name) or getattr(self.instance, name)
        second = [cleaned.get(name) for name in ("second_language", "second_heading", "second_text")]
        if any(second) and not all(second[:2]):
            self.add_error("second_heading", "Name the second language and write its heading, or leave all empty.")
        return cleaned

    def save(self, commit: bool = True) -> LabelWording:
        if READ.intersection(self.changed_data) and self.instance.is_signed:
            for name, nothing in UNSIGNED.items():
                setattr(self.instance, name, nothing)
            self.instance._change_reason = "The wording was changed: it has to be approved again."
        return super().save(commit)


def _choices(facts: CopyFacts, stored: str) -> list[tuple[str, Any]]:
    fitting = [kind.words for kind in fitting_kinds(facts)]
    others = [kind.words for kind in load_kinds() if kind.words not in fitting]
    if stored and stored not in [*fitting, *others]:
        others.append(stored)
    groups = [("true of this piece", fitting), ("of another kind", others)]
    return [("", "choose"), *((title, [(words, words) for words in kinds]) for title, kinds in groups if kinds)]
