"""Editions: which copy of how many authorised, how many were made and how many are gone, counted from the making."""

from collections.abc import Collection
from dataclasses import dataclass

from django.db.models import BigIntegerField, F, OuterRef, QuerySet, Subquery, Value
from django.db.models.functions import Coalesce

from process.models import MakingUp, Shell
from records.lost import LOST
from records.models import Consent, Item
from records.models.json_rows import JsonRows
from records.riding import riding

_OF_SHELLS = Shell.objects.filter(making_up=OuterRef("pk"), cathode__mould__isnull=False)
_FIRST = _OF_SHELLS.order_by("cathode__mould__model").values("cathode__mould__model")[:1]
_MODEL = Coalesce(Subquery(_FIRST), F("core__pull__mould__model"), output_field=BigIntegerField())
SIBLING = ("copy_id", "copy__status", "made_up_on")


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
    """For each copy made here that counts; one question to the database at any number."""
    asked = set(keys)
    models = Subquery(MakingUp.objects.filter(pk__in=asked).annotate(model_id=_MODEL).values("model_id"))
    rows = _counted().filter(model_id__in=models).annotate(allowed=_allowed()).order_by("made_up_on", "pk")
    made: dict[int, list[tuple[int, str]]] = {}
    allowed: dict[int, list[int | None] | None] = {}
    for model, key, status, numbers in rows.values_list("model_id", "pk", "copy__status", "allowed"):
        made.setdefault(model, []).append((key, status))
        allowed[model] = numbers
    return {
        key: _edition(key, copies, allowed[model])
        for model, copies in made.items()
        for key, _ in copies
        if key in asked
    }


def with_edition(rows: QuerySet[MakingUp]) -> QuerySet[MakingUp]:
    """The making-ups with what `edition_among` needs, for a page about one copy."""
    siblings = riding(_counted().filter(model_id=OuterRef("model_id")), SIBLING)
    return rows.annotate(model_id=_MODEL).annotate(siblings=siblings, allowed=_allowed())


def edition_among(making: MakingUp) -> Edition | None:
    """Of a row from `with_edition`; None of a copy that does not count."""
    rows = sorted(making.siblings or [], key=lambda row: (row["made_up_on"], row["copy_id"]))
    copies = [(row["copy_id"], row["copy__status"]) for row in rows]
    return _edition(making.pk, copies, making.allowed) if making.pk in dict(copies) else None


def _edition(key: int, copies: list[tuple[int, str]], allowed: list[int | None] | None) -> Edition:
    """The sum of what the consents allow; nothing where one of them sets no number."""
    place = [each for each, _ in copies].index(key) + 1
    gone = sum(status in LOST for _, status in copies)
    total = None if not allowed or None in allowed else sum(each or 0 for each in allowed)
    return Edition(place, len(copies), gone, total)


def _counted() -> QuerySet[MakingUp]:
    return MakingUp.objects.exclude(copy__status=Item.Status.EVIDENCE).annotate(model_id=_MODEL)


def _allowed() -> Subquery:
    """The number in each consent that names the model."""
    named = Consent.items.through.objects.filter(item=OuterRef("model_id")).order_by()
    numbers = named.annotate(one=Value(1)).values("one").annotate(numbers=JsonRows("consent__copies_max_count"))
    return Subquery(numbers.values("numbers"))
