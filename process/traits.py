"""What the making tells of a piece, by which it may be told from its like: its inspection, its inside, its joining."""

from collections.abc import Iterable, Iterator
from typing import Any

from django.db.models import QuerySet

from process.models import HydrostaticWeighing, Inspection, MakingUp
from process.summaries.densities import density_of
from records import units
from records.clock import day_words
from records.extensions import PieceTrait, piece_traits
from records.models import Item

INSPECTED = {"mass": "mass_g", "diameter": "diameter_mm", "thickness": "finished_thickness_mm"}


def traits_of(items: Iterable[Item]) -> dict[int, list[PieceTrait]]:
    """Of all at once, in three queries."""
    listed = list(items)
    made = [item.pk for item in listed if item.made_here]
    in_water = _first(HydrostaticWeighing.objects.filter(item__in=listed), "item_id")
    inspected = _first(Inspection.objects.filter(copy__in=made), "copy_id")
    joined = _first(MakingUp.objects.filter(pk__in=made).select_related("fill", "core__item"), "copy_id")
    return {
        key: [*_densities(in_water.get(key)), *_inspected(inspected.get(key)), *_made(joined.get(key))]
        for key in (item.pk for item in listed)
    }


def _first(rows: QuerySet, key: str) -> dict[int, Any]:
    """Of each thing the row that stands first: the latest."""
    found: dict[int, Any] = {}
    for row in rows:
        found.setdefault(getattr(row, key), row)
    return found


def _densities(row: HydrostaticWeighing | None) -> Iterator[PieceTrait]:
    """The latest weighing in water; it says itself how sure it is."""
    found = density_of(row).figure if row else None
    if found and found.value is not None:
        yield PieceTrait("density", "weighed in water", found.value, found.plus_minus, 2)


def _inspected(last: Inspection | None) -> Iterator[PieceTrait]:
    if last is None:
        return
    when = f"inspected {day_words(last.inspected_on)}"
    for key, field in INSPECTED.items():
        if (value := getattr(last, field)) is not None:
            typed = last.as_typed.get(field) or {}
            digits = units.decimals_written(typed, units.suffix_of(field) or "")
            yield PieceTrait(key, when, value, last.plus_minus(field), digits)


def _made(making: MakingUp | None) -> Iterator[PieceTrait]:
    if making is None:
        return
    inside = making.fill_words or str(making.fill or "") or str(making.core.item if making.core else "")
    yield PieceTrait("composition", f"inside: {inside}; {making.get_lead_inside_display()}" if inside else "")
    yield PieceTrait("edge", " ".join(filter(None, [making.get_join_display(), making.join_words])))
    if making.die_axis_deg is not None:
        yield PieceTrait("die_axis", "as joined", making.die_axis_deg, making.plus_minus("die_axis_deg"), 0)


piece_traits.append(traits_of)
