"""What came off: weighing a shell, and measuring its wall."""

from typing import Any

from django import forms

from process.models import Run, Shell
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
            "ease_grade",
            "aid",
            "ease",
            "wires_cut",
            "edge_profile",
            "inspection",
            "coupon",
            "fate",
        ]
        evidence_fields = ["gross_mass_g", "trimmed_mass_g"]
        groups = [
            ("On the balance", ["number", "gross_mass_g", "trimmed_mass_g", "weighed_at"]),
            ("Coming off", ["separated_on", "ease_grade", "aid", "ease", "wires_cut", "mould_wear"]),
            ("First look, and after trimming", ["inspection", "edge_profile", "coupon", "fate"]),
        ]
        labels = {"trimmed_mass_g": "Mass after trimming"}
        help_texts = {
            "gross_mass_g": "Rinsed and dry, with flange, wires and thieves; their tare is taken off for you.",
            "trimmed_mass_g": "Left empty until it is trimmed.",
        }
        widgets = {"inspection": forms.Textarea({"rows": 3})}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance.cathode.core_id and not self.instance._state.adding:
            for name in ("gross_mass_g", "weighed_at"):  # the series of weighings says them
                del self.fields[name]
        if self.instance.fate == Shell.Fate.USED or self.instance._state.adding:
            del self.fields["fate"]
        else:
            self.fields["fate"].choices = [c for c in Shell.Fate.choices if c[0] != Shell.Fate.USED]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        gross, trimmed = cleaned.get("gross_mass_g"), cleaned.get("trimmed_mass_g")
        tare = self.instance.cathode.tare_g or 0.0
        if gross is not None and gross <= tare:
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
    mould_wear = forms.CharField(
        label="New wear of the mould",
        required=False,
        max_length=300,
        help_text="Tears, torn detail, metal left in it: it is added to what the mould's page says.",
    )
    field_order = ["number"]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.offer("number", next_number(Item, SERIES["shell"]))
        self.offer("weighed_at", clock.now().replace(second=0, microsecond=0))
        self.offer("separated_on", clock.today())
        if self.instance.cathode.mould_id is None:
            del self.fields["mould_wear"]

    def clean_number(self) -> str:
        number = self.cleaned_data["number"]
        if Item.objects.filter(number__iexact=number).exists():
            free = next_number(Item, SERIES["shell"])
            raise forms.ValidationError(f"“{number}” is taken: {free} is the next free number of a shell.")
        return number
