"""Two pieces set side by side: what is recorded of both, and by what they are told apart."""

from dataclasses import dataclass

from records import extensions, units
from records.extensions import PieceTrait
from records.family import Family, Member, family_of
from records.limits import limited_among
from records.lineage import Descent, descents_of
from records.models import Item, Mark, Measurement
from records.telling import FEATURES, Comparison, Value, compare, compare_words, told_apart

COMPARED = {
    Item.Kind.ORIGINAL, Item.Kind.HISTORIC_COPY, Item.Kind.CAST, Item.Kind.COPY, Item.Kind.SHELL, Item.Kind.MATRIX,
}  # fmt: skip
UNITS = {"mass": "g", "density": "g/cm³", "die_axis": "°"}
SUFFIXES = {"mass": "_g", "density": "_g_cm3", "die_axis": "_deg"}  # the others are lengths
WORDED = ("composition", "edge", "sound")
_RANKS = {"measured": 0, "quoted": 1}  # measured before quoted before the rest; then the latest


@dataclass(frozen=True)
class Sheet:
    first: Item
    second: Item
    lines: list[Comparison]
    descents: list[Descent]  # of both

    @property
    def title(self) -> str:
        return f"{self.first.number} or {self.second.number}?"

    @property
    def is_one_line(self) -> bool:
        """Whether one descends from the other, or both from one piece."""
        first, second = ({each.item.pk, *(thing.pk for thing in each.forebears)} for each in self.descents)
        return bool(first & second)

    @property
    def limited(self) -> list[Item]:
        """Those of the two for which the page must say how they may be used."""
        flagged = limited_among([self.first.number, self.second.number])
        return [item for item in (self.first, self.second) if item.number in flagged]

    @property
    def sentence(self) -> str:
        return told_apart(self.lines)


def others_of(item: Item, family: Family | None = None) -> list[Member]:
    """The pieces of its family that might be taken for it, or it for them."""
    family = family or family_of(item)
    members = {member.item.pk: member for member in (*family.roots, *family.copies)}
    return [member for key, member in members.items() if key != item.pk and member.item.kind in COMPARED]


def sheet_of(first: Item, second: Item) -> Sheet:
    found = _known(first, second)
    lines = [_line(key, found[first.pk], found[second.pk]) for key in FEATURES]
    worth = [line for line in lines if line.first or line.second or line.feature.key in {"mark", "mass", "edge"}]
    return Sheet(first, second, worth, descents_of(first, second))


@dataclass(frozen=True)
class Known:
    """One piece: its figures and its words, by the feature's key."""

    values: dict[str, Value]
    shown: dict[str, str]


def _line(key: str, first: Known, second: Known) -> Comparison:
    shown = first.shown.get(key, ""), second.shown.get(key, "")
    if key == "mark":
        return _marks(*shown)
    if key in WORDED:
        return compare_words(key, *shown)
    unit = UNITS.get(key, "mm")
    return compare(key, first.values.get(key), second.values.get(key), shown, unit)


def _marks(first: str, second: str) -> Comparison:
    """A mark that says copy, recorded on one of the two only, tells them apart."""
    if bool(first) != bool(second):
        return Comparison(FEATURES["mark"], first, second, "apart", "Only one of them carries a mark that says copy.")
    why = "Read both where they stand." if first else "No such mark is recorded on either."
    return Comparison(FEATURES["mark"], first, second, "not known", why)


def _known(*items: Item) -> dict[int, Known]:
    """By key of the piece; each table is asked for all of them at once."""
    found = {item.pk: Known({}, {"composition": item.materials, "edge": item.features}) for item in items}
    for mark in Mark.objects.filter(item__in=items, purpose=Mark.Purpose.COPY):
        shown, words = found[mark.item_id].shown, ", ".join(filter(None, [str(mark), mark.position]))
        shown["mark"] = "; ".join(filter(None, [shown.get("mark", ""), words]))
    for row in sorted(Measurement.objects.filter(item__in=items), key=_worth):
        _take(found[row.item_id], row)
    for source in extensions.piece_traits:
        for key, traits in source(items).items():
            for trait in traits:
                _add(found[key], trait)
    return found


def _worth(row: Measurement) -> tuple[int, str, int]:
    """The best known and latest of a dimension comes last, and stays."""
    return -_RANKS.get(row.evidence(row.value_field), 2), str(row.measured_on or ""), row.pk


def _take(found: Known, row: Measurement) -> None:
    field = row.value_field
    suffix, spread = SUFFIXES.get(row.what, "_mm"), row.plus_minus(field)
    digits = units.decimals_written(row.as_typed.get(field) or {}, suffix)
    words = [units.show(row.value, suffix, digits=digits, plus_minus=spread), row.point, _unless_measured(row, field)]
    found.values[row.what] = Value(row.value, spread, digits or 0, row.evidence(field))
    found.shown[row.what] = ", ".join(filter(None, words))


def _unless_measured(row: Measurement, field: str) -> str:
    kind = row.evidence(field)
    return "" if kind == "measured" else kind


def _add(found: Known, trait: PieceTrait) -> None:
    """What another app knows: figures take the place of those written by hand, words stand before them."""
    if trait.value is None:
        found.shown[trait.key] = "; ".join(filter(None, [trait.words, found.shown.get(trait.key, "")]))
        return
    suffix = SUFFIXES.get(trait.key, "_mm")
    figure = units.show(trait.value, suffix, digits=trait.decimals, plus_minus=trait.plus_minus)
    found.values[trait.key] = Value(trait.value, trait.plus_minus, trait.decimals or 0)
    found.shown[trait.key] = ", ".join(filter(None, [figure, trait.words]))
