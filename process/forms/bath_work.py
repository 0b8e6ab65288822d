"""Work at the bath, anodes and their weighings."""

from typing import Any

from process.forms.asking import AsksUnusual
from process.forms.in_bath import since_made_up
from process.models import Anode, AnodeWeighing, BathService
from process.ranges import Opinion
from records import clock
from records.forms.base import RecordForm
from records.forms.tokens import SentOnce
from records.units import show

Kind = BathService.Kind
# What must be said with each kind of work, so that the balance can count it.
NEEDED = {
    Kind.TOP_UP: ("volume_l", "Say how much water went in."),
    Kind.DILUTION: ("volume_l", "Say how much bath was taken out; as much water goes in."),
    Kind.DRAG_OUT: ("volume_l", "Say how much bath was carried out; an estimate will do."),
    Kind.LEVEL: ("volume_l", "Say how much the bath holds at this level."),
    Kind.SLUDGE: ("mass_g", "Say what the dried sludge weighs."),
}


class ServiceForm(SentOnce, RecordForm):
    class Meta:
        model = BathService
        fields = ["kind", "done_at", "volume_l", "mass_g", "lot", "done_by", "note"]
        evidence_fields = ["volume_l", "mass_g"]
        groups = [("What was done", ["kind", "done_at", "done_by"]), ("How much", ["volume_l", "mass_g"]),
                  ("With what", ["lot", "note"])]  # fmt: skip

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance._state.adding:
            self.offer("done_at", clock.now())

    def clean_done_at(self):
        return since_made_up(self.instance.bath, self.cleaned_data["done_at"])

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        for name in ("volume_l", "mass_g"):
            if (value := cleaned.get(name)) is not None and value <= 0:
                self.add_error(name, "More than nothing was moved: enter the amount again, or leave it empty.")
        self._within_the_bath(cleaned)
        name, sentence = NEEDED.get(cleaned.get("kind"), ("", ""))
        if name and name not in self.errors and cleaned.get(name) is None:
            self.add_error(name, sentence)
        return cleaned

    def _within_the_bath(self, cleaned: dict[str, Any]) -> None:
        volume, whole = cleaned.get("volume_l"), self.instance.bath.volume_l
        if volume is not None and volume > 2 * whole:
            words = f"The bath holds {show(whole, '_l')} at its mark: look at the number and its unit again."
            self.add_error("volume_l", words)


class AnodeForm(AsksUnusual, RecordForm):
    class Meta:
        model = Anode
        fields = ["label", "metal", "area_dm2", "is_bagged", "hung_on", "removed_on", "note"]
        ranged: list[str] = []
        judged_as = {"area_dm2": "total_area_dm2"}
        help_texts = {"label": "As it is written on its hook, “A1”."}

    def _get_validation_exclusions(self) -> set[str]:
        """The bath stands on the row already: two anodes of one name in it are refused here."""
        return super()._get_validation_exclusions() - {"bath"}


class AnodeWeighingForm(SentOnce, AsksUnusual, RecordForm):
    """An anode only loses: one that got heavier is asked about before it is kept."""

    class Meta:
        model = AnodeWeighing
        fields = ["weighed_at", "mass_g", "weighed_by", "note"]
        evidence_fields = ["mass_g"]
        ranged: list[str] = []
        groups = [("The weighing", ["weighed_at", "mass_g", "weighed_by", "note"])]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance._state.adding:
            self.offer("weighed_at", clock.now())

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        if (mass := cleaned.get("mass_g")) is not None and mass <= 0:
            self.add_error("mass_g", "An anode weighs more than nothing: weigh it again.")
        return cleaned

    def opinions(self) -> dict[str, Opinion]:
        found = super().opinions()
        mass, at = self.cleaned_data.get("mass_g"), self.cleaned_data.get("weighed_at")
        if mass is None or at is None:
            return found
        others = self.instance.anode.weighings.exclude(pk=self.instance.pk)
        before = others.filter(weighed_at__lte=at).order_by("weighed_at").last()
        after = others.filter(weighed_at__gt=at).order_by("weighed_at").first()
        if before and mass > before.mass_g:
            found["mass_g"] = Opinion("unusual", _grew(before, mass, "before"))
        elif after and mass < after.mass_g:
            found["mass_g"] = Opinion("unusual", _grew(after, mass, "after"))
        return found


def _grew(other: AnodeWeighing, mass: float, when: str) -> str:
    heavier = show(abs(mass - other.mass_g), "_g")
    if when == "before":
        return (
            f"{show(mass, '_g')} is {heavier} more than at the weighing before ({show(other.mass_g, '_g')}). "
            "An anode in use only loses: was it wet, another one, or hung on the wrong pole?"
        )
    return (
        f"{show(mass, '_g')} is {heavier} less than at the weighing after it ({show(other.mass_g, '_g')}). "
        "An anode in use only loses: are the two exchanged?"
    )
