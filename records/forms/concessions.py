from django import forms

from records.forms.lookup import LookupField, LookupListField
from records.models import Gate, Item


class ConcessionForm(forms.Form):
    """Who gives it, and in which role, comes from the sign-in."""

    gate = forms.ChoiceField(label="Lets pass the gate", choices=Gate)
    items = LookupListField(
        "in-hand", label="Concerns", help_text="Numbers of the pieces, a comma or a new line between."
    )
    commission = LookupField("commissions", required=False, help_text="By its number.")
    reason = forms.CharField(widget=forms.Textarea({"rows": 4}), help_text="Why work goes on without the evidence.")
    limits_of_use = forms.CharField(
        widget=forms.Textarea({"rows": 3}), required=False,
        help_text="“Display only, no handling”: stands on every paper of the piece, for ever.",
    )  # fmt: skip

    def __init__(self, *args, numbers: list[str], **kwargs) -> None:
        super().__init__(*args, **kwargs)
        chosen = Item.objects.filter(number__in=numbers)
        self.initial.setdefault("items", chosen)
