"""What the making tells of a piece, by which it may be told from its like: its inspection, its inside, its joining."""

from collections.abc import Iterator

from process.models import HydrostaticWeighing, Inspection, MakingUp
from process.summaries.densities import density_of
from records import units
from records.clock import day_words
from records.extensions import PieceTrait, piece_traits
from records.models import Item

INSPECTED = {"mass": "mass_g", "diameter": "diameter_mm", "thickness": "finished_thickness_mm"}


def traits_of(item: Item) -> Iterator[PieceTrait]:
    yield from _densities(item)
    if item.made_here:
        yield from _inspected(item)
        yield from _made(item)


def _densities(item: Item) -> Iterator[PieceTrait]:
    """The latest weighing in water; it says itself how sure it is."""
    row = HydrostaticWeighing.objects.filter(item=item).first()
    found = density_of(row).figure if row else None
    if found and found.value is not None:
        yield PieceTrait("density", "weighed in water", found.value, found.plus_minus, 2)


def _inspected(item: Item) -> Iterator[PieceTrait]:
    last = Inspection.objects.filter(copy=item).first()
    if last is None:
        return
    when = f"inspected {day_words(last.inspected_on)}"
    for key, field in INSPECTED.items():
        if (value := getattr(last, field)) is not None:
            typed = last.as_typed.get(field) or {}
            digits = units.decimals_written(typed, units.suffix_of(field) or "")
            yield PieceTrait(key, when, value, last.plus_minus(field), digits)


def _made(item: Item) -> Iterator[PieceTrait]:
    making = MakingUp.objects.filter(pk=item.pk).select_related("fill", "core__item").first()
    if making is None:
        return
    inside = making.fill_words or str(making.fill or "") or str(making.core.item if making.core else "")
    yield PieceTrait("composition", f"inside: {inside}; {making.get_lead_inside_display()}" if inside else "")
    yield PieceTrait("edge", " ".join(filter(None, [making.get_join_display(), making.join_words])))
    if making.die_axis_deg is not None:
        yield PieceTrait("die_axis", "as joined", making.die_axis_deg, making.plus_minus("die_axis_deg"), 0)


piece_traits.append(traits_of)
