"""A concession: which checks of which gate it passes, for what, and until when."""

from typing import Any

from django import forms
from django.core.exceptions import ValidationError

from records import clock, gates
from records.forms.dates import DayField
from records.forms.lookup import LookupField, LookupListField
from records.models import Gate, Item

SEVERAL_GATES = (
    "These checks stand at different gates: choose those of one gate, and write another concession for the rest."
)


def check_choices(only: str = "") -> list[tuple[str, list[tuple[str, str]]]]:
    """The checks that exist, under their gates; of one gate alone where it is known which."""
    shown = [gate for gate in Gate if only not in Gate.values or gate == only]
    return [(gate.label, [(f"{gate}:{name}", name) for name in gates.names_of(gate)]) for gate in shown]


class ConcessionForm(forms.Form):
    """Who gives it, and in which role, comes from the sign-in; the gate from the checks."""

    check_names = forms.MultipleChoiceField(
        label="Lets pass", widget=forms.CheckboxSelectMultiple,
        help_text="Only what is named here is passed; everything else at the gate still needs its evidence.",
        error_messages={"required": "Name at least one check: a concession never opens a gate as a whole."},
    )  # fmt: skip
    items = LookupListField(
        "in-hand", label="Concerns", help_text="Numbers of the pieces, a comma or a new line between."
    )
    valid_to = DayField(
        allow_future=True, label="Holds to", required=False,
        help_text="The last day on which a step may rest on it; empty: without an end. It holds from today.",
    )  # fmt: skip
    commission = LookupField("commissions", required=False, help_text="By its number.")
    reason = forms.CharField(
        widget=forms.Textarea({"rows": 4}),
        help_text="Why work goes on without the evidence.",
    )  # fmt: skip
    limits_of_use = forms.CharField(
        widget=forms.Textarea({"rows": 3}), required=False,
        help_text="“Display only, no handling”: goes with the piece and all that is made of it, on every page and "
        "paper, also when the concession has ended.",
    )  # fmt: skip

    def __init__(
        self, *args: Any, numbers: list[str], gate: str = "", names: list[str] | None = None, **kwargs: Any
    ) -> None:
        super().__init__(*args, **kwargs)
        chosen = Item.objects.filter(number__in=numbers)
        self.initial.setdefault("items", chosen)
        self.fields["check_names"].choices = check_choices(only=gate)
        self.initial.setdefault("check_names", [f"{gate}:{name}" for name in names or ()])

    def clean_check_names(self) -> list[str]:
        """The names alone; their gate stands beside them."""
        pairs = [value.split(":", 1) for value in self.cleaned_data["check_names"]]
        if len({gate for gate, _ in pairs}) > 1:
            raise ValidationError(SEVERAL_GATES)
        self.cleaned_data["gate"] = pairs[0][0]
        return [name for _, name in pairs]

    def clean_valid_to(self):
        day = self.cleaned_data["valid_to"]
        if day and day < clock.today():
            raise ValidationError("This day is past: a concession given today lets nothing pass before today.")
        return day
