"""The form of a thing: what it is, the nine categories of Object ID, and where it is."""

from typing import Any

from django import forms

from records import clock, gates, lineage
from records.forms.base import RecordForm
from records.lost import LOST
from records.models import Gate, Item

# The others come into being with their mould, cast, deposit or making-up.
ENTERED_BY_HAND = (Item.Kind.ORIGINAL, Item.Kind.HISTORIC_COPY, Item.Kind.CAST, Item.Kind.MATRIX)
NOT_IN_USE = (Item.Status.WORKSHOP, Item.Status.EVIDENCE, *LOST)
# A number stands in addresses and file names.


class ItemForm(RecordForm):
    """For a thing that is there already; its kind is offered where it was entered by hand."""

    class Meta:
        model = Item
        fields = [
            "number", "kind", "title", "object_type", "materials", "date_words", "maker", "subject", "inscriptions",
            "features", "description", "origin", "related_material", "hallmarks", "money",
            "status", "owner", "place", "documented_on",
        ]  # fmt: skip
        groups = [
            ("What it is", ["number", "kind", "title", "object_type", "date_words", "maker"]),
            ("What it is made of and shows (Object ID)",
             ["materials", "subject", "inscriptions", "features", "description"]),
            ("Where it is", ["status", "owner", "place"]),
            ("What do rules on copying it ask?", ["hallmarks", "money"]),
            ("Where is it from, and where is it written about?", ["origin", "related_material", "documented_on"]),
        ]  # fmt: skip
        widgets = {
            "inscriptions": forms.Textarea({"rows": 3}), "features": forms.Textarea({"rows": 3}),
            "description": forms.Textarea({"rows": 3}), "related_material": forms.Textarea({"rows": 3}),
        }  # fmt: skip
        help_texts = {
            "number": "As it stands on the piece, its tag and its papers. It is never given again.",
            "title": "The name by which it goes: “Portrait medal of a tide-mill mistress”.",
            "object_type": "Broad, then narrow: “medal, portrait medal”.",
            "inscriptions": "As they read, line by line. Write “none” where there are none.",
            "hallmarks": "Of silver, gold and platinum: a copy must not carry them on.",
            "money": "For coins and banknotes: copies of current money may be forbidden whatever is stamped on them.",
            "features": "What tells it from its like: damage, repair, defects of making; or “none seen”.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        kind = self.instance.kind
        if not self.instance._state.adding and kind not in ENTERED_BY_HAND:
            del self.fields["kind"]
        else:
            self.fields["kind"].choices = [choice for choice in Item.Kind.choices if choice[0] in ENTERED_BY_HAND]
        if self.instance.made_here:
            self._keep_in_the_workshop()

    def _keep_in_the_workshop(self) -> None:
        """Only its acceptance takes a copy out of the workshop; one that was rejected stays evidence, or is gone."""
        copy, status = self.instance, self.fields["status"]
        if copy.status == Item.Status.WORKSHOP:
            del self.fields["status"]
        elif gates.unmet(Gate.ACCEPT, gates.Subject(copy, copy.number, (copy,)), clock.today()):
            status.choices = [choice for choice in status.choices if choice[0] in {copy.status, *NOT_IN_USE}]

    def save(self, commit: bool = True) -> Item:
        """Refused where the new date makes the thing older than its model, or younger than a copy of it."""
        if self.instance.pk and "date_words" in self.changed_data:
            lineage.refuse_impossible_date(self.instance)
        return super().save(commit)


class NewItemForm(ItemForm):
    """For entering what the museum holds or borrows."""

    class Meta(ItemForm.Meta):
        help_texts = ItemForm.Meta.help_texts | {
            "kind": "A historic copy is an electrotype or cast from before this register; say so even if unsure.",
        }
