"""Editions: which copy of how many authorised, how many were made and how many are gone, counted from the making."""

from collections.abc import Collection
from dataclasses import dataclass

from django.db.models import Min, Subquery
from django.db.models.functions import Coalesce

from process.models import MakingUp
from records.lost import LOST
from records.models import Consent, Item

_MOULD = Coalesce(Min("shells__cathode__mould__model"), Min("core__pull__mould__model"))


@dataclass(frozen=True)
class Edition:
    """The place of a copy among those of its model; `authorised` is None where not each consent says a number."""

    place: int
    made: int
    gone: int
    authorised: int | None

    @property
    def words(self) -> str:
        """
        >>> Edition(1, 2, 1, 3).words
        'copy 1 of 3 authorised, 2 made, 1 lost or destroyed'
        """
        gone = f", {self.gone} lost or destroyed" if self.gone else ""
        if self.authorised is None:
            return f"copy {self.place} of {self.made} made{gone}; no number authorised"
        if self.place > self.authorised:
            return f"copy {self.place}; {self.authorised} authorised, {self.made} made{gone}"
        return f"copy {self.place} of {self.authorised} authorised, {self.made} made{gone}"


def editions_of(keys: Collection[int]) -> dict[int, Edition]:
    """For each copy made here that counts; two questions to the database at any number."""
    asked = set(keys)
    rows = MakingUp.objects.exclude(copy__status=Item.Status.EVIDENCE).annotate(model_id=_MOULD)
    models = Subquery(MakingUp.objects.filter(pk__in=asked).annotate(model_id=_MOULD).values("model_id"))
    of_models = rows.filter(model_id__in=models).order_by("made_up_on", "pk")
    made: dict[int, list[tuple[int, str]]] = {}
    for model, key, status in of_models.values_list("model_id", "pk", "copy__status"):
        made.setdefault(model, []).append((key, status))
    authorised = _authorised(set(made))
    return {
        key: Edition(place, len(copies), sum(status in LOST for _, status in copies), authorised.get(model))
        for model, copies in made.items()
        for place, (key, _) in enumerate(copies, start=1)
        if key in asked
    }


def _authorised(models: set[int]) -> dict[int, int]:
    """The sum of what the consents allow; nothing where one of them sets no number."""
    found: dict[int, list[int | None]] = {}
    for model, most in Consent.objects.filter(items__in=models).values_list("items", "copies_max_count"):
        found.setdefault(model, []).append(most)
    return {model: sum(each) for model, each in found.items() if model in models and None not in each}
