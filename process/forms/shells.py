"""What came off: weighing a shell, and measuring its wall."""

from datetime import date, datetime
from typing import Any

from django import forms

from process.forms.asking import AsksUnusual
from process.models import Run, Shell
from process.ranges import Opinion
from process.summaries.hanging import refuse_before_it_came_out
from process.summaries.runs import summarise
from records import clock
from records.forms.base import RecordForm
from records.models import Item
from records.numbers import SERIES, next_number
from records.units import show

# What may be found more than the whole charge of the run deposits, before it is asked about: errors of balance and
# charge; on a core, what it drank besides. Rule of this register.
MORE_THAN_CHARGE, MORE_ON_A_CORE = 1.05, 1.2


class ShellForm(AsksUnusual, RecordForm):
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
        ranged: list[str] = []
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

    def clean_weighed_at(self) -> datetime | None:
        return refuse_before_it_came_out(self.instance.cathode, self.cleaned_data["weighed_at"])

    def clean_separated_on(self) -> date | None:
        return refuse_before_it_came_out(self.instance.cathode, self.cleaned_data["separated_on"])

    def opinions(self) -> dict[str, Opinion]:
        """More than the charge can have brought: a slip of the point, another unit, or wires without their tare."""
        found, gross, cathode = super().opinions(), self.cleaned_data.get("gross_mass_g"), self.instance.cathode
        gain = (gross or 0.0) - (cathode.tare_g or 0.0)
        theory = summarise(Run.objects.with_sheet().get(pk=cathode.run_id)).theory if gain > 0 else None
        most = (theory.value or 0.0) * (MORE_ON_A_CORE if cathode.core_id else MORE_THAN_CHARGE) if theory else 0.0
        if most and gain > most:
            words = (
                f"a gain of {show(gain, '_g')} is {gain / theory.value:.3g} times the {show(theory.value, '_g')} that "
                "the charge of this run can deposit on all that hung there. Look at the number, its unit and the tare."
            )
            found["gross_mass_g"] = Opinion("unusual", words)
        return found


class WeighForm(ShellForm):
    """A shell gets its number when it first lies on the balance."""

    number = forms.CharField(label="Number of the shell", max_length=40)
    mould_wear = forms.CharField(
        label="New wear of the mould",
        required=False,
        max_length=300,
        help_text="Tears, torn detail, metal left in it: it is added to what the mould’s page says.",
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
