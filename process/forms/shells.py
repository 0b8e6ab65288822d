"""What came off: weighing a shell, and measuring its wall."""

from typing import Any

from django import forms

from process.forms.asking import AsksUnusual
from process.forms.people import person_field
from process.models import Run, Shell, ThicknessPoint
from records import clock
from records.forms.base import RecordForm
from records.models import Item
from records.numbers import SERIES, next_number


class ShellForm(RecordForm):
    class Meta:
        model = Shell
        fields = [
            "gross_mass_g",
            "trimmed_mass_g",
            "weighed_at",
            "separated_on",
            "ease",
            "inspection",
            "coupon",
            "fate",
        ]
        evidence_fields = ["gross_mass_g", "trimmed_mass_g"]
        groups = [
            ("On the balance", ["number", "gross_mass_g", "trimmed_mass_g", "weighed_at"]),
            ("Coming off, first look", ["separated_on", "ease", "inspection", "coupon", "fate"]),
        ]
        labels = {"trimmed_mass_g": "Mass after trimming"}
        help_texts = {
            "gross_mass_g": "Rinsed and dry, with flange, wires and thieves; their tare is taken off for you.",
            "trimmed_mass_g": "Left empty until it is trimmed.",
        }
        widgets = {"inspection": forms.Textarea({"rows": 3})}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance.fate == Shell.Fate.USED or self.instance._state.adding:
            del self.fields["fate"]
        else:
            self.fields["fate"].choices = [c for c in Shell.Fate.choices if c[0] != Shell.Fate.USED]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        gross, trimmed = cleaned.get("gross_mass_g"), cleaned.get("trimmed_mass_g")
        if gross is not None and gross <= self.instance.cathode.tare_g:
            tare = self.instance.cathode.tare_g
            self.add_error(
                "gross_mass_g", f"It weighs no more than the tare of {tare:g} g: weigh again, or correct the tare."
            )
        if gross is not None and trimmed is not None and not 0 < trimmed <= gross:
            self.add_error(
                "trimmed_mass_g", "After trimming it weighs less than before, and more than nothing: look again."
            )
        failed = self.instance.cathode.run.outcome == Run.Outcome.FAILED
        if failed and cleaned.get("fate") == Shell.Fate.KEPT:
            self.add_error("fate", "It grew in a failed run, and a failed run makes no copy: it stays scrap.")
        return cleaned


class WeighForm(ShellForm):
    """A shell gets its number when it first lies on the balance."""

    number = forms.CharField(label="Number of the shell", max_length=40)
    field_order = ["number"]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.offer("number", next_number(Item, SERIES["shell"]))
        self.offer("weighed_at", clock.now().replace(second=0, microsecond=0))
        self.offer("separated_on", clock.today())

    def clean_number(self) -> str:
        number = " ".join(self.cleaned_data["number"].split())
        if set(number) & set("/\\?#%\0"):
            raise forms.ValidationError("A number stands in addresses: write a dash instead of / \\ ? # %.")
        if Item.objects.filter(number__iexact=number).exists():
            free = next_number(Item, SERIES["shell"])
            raise forms.ValidationError(f"“{number}” is taken: {free} is the next free number of a shell.")
        return number


class ThicknessForm(AsksUnusual, RecordForm):
    """A measured point; a calculated mean cannot be entered here."""

    class Meta:
        model = ThicknessPoint
        fields = ["place", "thickness_mm", "method", "measured_on", "measured_by"]
        ranged = ["thickness_mm"]
        evidence_fields: list[str] = []
        help_texts = {
            "thickness_mm": "As the instrument showed it. The mean that follows from the mass is shown by itself."
        }

    def __init__(self, *args: Any, user: Any = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        person_field(self, "measured_by", user)
        self.offer("measured_on", clock.today())

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        if (
            cleaned.get("thickness_mm") is not None
            and cleaned["thickness_mm"] <= 0
            and "thickness_mm" not in self.errors
        ):
            self.add_error(
                "thickness_mm", "A wall is thicker than nothing: measure again, or write a void under first look."
            )
        return cleaned
