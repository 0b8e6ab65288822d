"""One weighing of a series: as few fields as the moment at the balance needs."""

from datetime import datetime
from typing import Any

from django import forms

from process.forms.asking import AsksUnusual
from process.forms.people import person_field
from process.models import Shell, Weighing
from process.ranges import Opinion
from process.summaries.hanging import refuse_before_it_came_out
from records import clock
from records.forms.base import RecordForm
from records.forms.tokens import SentOnce
from records.models import Item
from records.units import show

STEP_SHARE = 0.02  # of the mass: more from one weighing to the next is asked about
REASON = "What stood there before stays in the history."


def kind_for(item: Item) -> str:
    """What a weighing of this piece belongs to."""
    if item.kind == Item.Kind.CORE:
        return Weighing.Kind.CORE
    on_core = Shell.objects.filter(pk=item.pk, cathode__core__isnull=False).exists()
    return Weighing.Kind.SKIN if on_core else Weighing.Kind.OTHER


class WeighingForm(AsksUnusual, SentOnce, RecordForm):
    token_scope = ("item",)

    class Meta:
        model = Weighing
        fields = ["at", "mass_g", "person", "balance", "conditions"]
        ranged: list[str] = []
        groups = [("On the balance", ["at", "mass_g", "person"]), ("How it dried", ["balance", "conditions"])]
        help_texts = {
            "mass_g": "As the balance shows it, with its wires as before the bath; write ± after it if you know it.",
            "balance": "The same one each time, if you can: “balance 2, to 0.1 g”.",
            "conditions": "“open shelf, 21 °C, 45 %”, “drying cupboard, 40 °C”.",
        }

    def __init__(self, *args: Any, user: Any = None, last: Weighing | None = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        person_field(self, "person", user)
        if self.instance._state.adding:
            self.initial["at"] = clock.now().replace(second=0, microsecond=0)
            self.offer("balance", last.balance if last else "")
            self.offer("conditions", last.conditions if last else "")
        else:
            self.fields["reason"] = forms.CharField(label="Why it is corrected", max_length=300, help_text=REASON)

    def opinions(self) -> dict[str, Opinion]:
        """A drying piece does not leap: a slip of a digit is asked about while the piece still lies there."""
        mass, at = self.cleaned_data.get("mass_g"), self.cleaned_data.get("at")
        beside = self._beside(at) if mass is not None and at is not None else None
        if beside is None or abs(mass / beside.mass_g - 1) <= STEP_SHARE:
            return {}
        other, side = show(beside.mass_g, "_g", digits=1), "before" if beside.at <= at else "after"
        words = f"{show(mass, '_g', digits=1)} lies far from the {other} {side} it."
        return {"mass_g": Opinion("unusual", words)}

    def _beside(self, at: datetime) -> Weighing | None:
        """The weighing before it in the series, else the one after it."""
        series = self.instance.item.weighings.filter(kind=self.instance.kind).exclude(pk=self.instance.pk)
        return series.filter(at__lte=at).order_by("at").last() or series.filter(at__gt=at).order_by("at").first()

    def clean_at(self) -> datetime:
        """What was still in the bath was not weighed."""
        at, grown = self.cleaned_data["at"], getattr(self.instance.item, "shell", None)
        return refuse_before_it_came_out(grown.cathode, at) if grown else at

    def clean_mass_g(self) -> float | None:
        mass = self.cleaned_data["mass_g"]
        parsed = getattr(mass, "canonical", mass)
        if parsed is not None and parsed <= 0:
            raise forms.ValidationError("A piece weighs more than nothing: weigh again.")
        return mass
