"""The form of a label's wording: kind first, then the date of the copy."""

from typing import Any

from django import forms

from records.forms.base import RecordForm
from records.models import LabelWording
from records.wording import CopyFacts, fitting_kinds, load_kinds

UNSIGNED = {"signed_by": None, "signed_role": "", "signed_at": None}


class LabelForm(RecordForm):
    """A wording that the checks refuse is kept as a draft; changing an approved one takes the approval away."""

    kind_of_copy = forms.ChoiceField(
        label="Kind of copy", help_text="The first words of every label; those that fit the record come first."
    )

    class Meta:
        model = LabelWording
        fields = ["kind_of_copy", "copy_date", "after", "body", "credit"]
        groups = [("The heading", ["kind_of_copy", "copy_date"]), ("The text", ["after", "body", "credit"])]
        widgets = {"after": forms.Textarea({"rows": 2}), "body": forms.Textarea({"rows": 6})}
        help_texts = {
            "copy_date": "When the copy was made, never the date of what it repeats.",
            "after": "What it repeats, by whom and when: “after a cast bronze medal of 1624 by …”.",
            "body": "Materials, how it was made, where the original is. Line breaks stand as typed; 50 words are read.",
        }

    def __init__(self, *args: Any, facts: CopyFacts, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["kind_of_copy"].choices = _choices(facts, self.instance.kind_of_copy)
        self.fields["after"].required = True

    def clean_after(self) -> str:
        return " ".join(self.cleaned_data["after"].split())

    def save(self, commit: bool = True) -> LabelWording:
        if set(self.changed_data) - {"version"} and self.instance.is_signed:
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
