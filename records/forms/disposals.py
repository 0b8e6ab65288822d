"""The end of a piece: the decision, and what was done."""

from typing import Any

from django import forms

from records import clock
from records.forms.base import RecordForm
from records.models import Disposal, Photo


class DecisionForm(RecordForm):
    class Meta:
        model = Disposal
        fields = ["number", "reason", "way", "decided_on", "decided_by", "authority", "checked"]
        groups = [("", fields)]
        widgets = {"reason": forms.Textarea({"rows": 3})}
        help_texts = {
            "authority": "Whose decision it is by the rules of the house: the minutes, the letter.",
            "checked": "What its mark says, which papers went out with it, what the owner of its original allowed.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["checked"].required = True
        if self.instance._state.adding:
            self.offer("decided_on", clock.today())


class CarriedOutForm(RecordForm):
    class Meta:
        model = Disposal
        fields = ["done_on", "done_by", "witness", "method", "kept", "photo"]
        short_lists = ["photo"]
        groups = [("", fields)]
        widgets = {"kept": forms.Textarea({"rows": 3})}
        help_texts = {
            "method": "Cut through the face, crushed, dissolved: so that nobody takes what is left for a copy.",
            "kept": "With masses: “5.1 g of copper to the anode bag of B-01; coupon kept as evidence”.",
            "photo": "Of what is left. Send it on the page of the thing first.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for name in ("done_on", "done_by", "method", "photo"):
            self.fields[name].required = True
        self.fields["photo"].queryset = Photo.objects.filter(item=self.instance.item_id).order_by("-pk")
        if self.instance.done_on is None:
            self.offer("done_on", clock.today())

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if cleaned.get("witness") and cleaned["witness"] == cleaned.get("done_by"):
            self.add_error("witness", "A witness is somebody else than who did it.")
        photo, done = cleaned.get("photo"), cleaned.get("done_on")
        if photo and done and photo.taken_at and photo.taken_at.date() < self.instance.decided_on:
            self.add_error("photo", "This picture is older than the decision: take one of what is left.")
        return cleaned
