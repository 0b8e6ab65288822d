"""Sizes along a whole family, measured against foretold: three questions to the database, however many pieces."""

from collections import defaultdict
from collections.abc import Iterable, Iterator

from django.db.models import OuterRef, Prefetch, Subquery, Sum
from pint import Quantity

from process.chemistry.dimensions import deviation, predicted_dimension
from process.chemistry.errors import ChemistryError
from process.models import FinishStep, Inspection, MakingUp, Shell
from process.summaries.copy_parts import ShellPart, bare_part_of, changes_of, unknown_changes
from process.summaries.copy_sizes import ACROSS, MEASURED, length_of, outside_of
from process.summaries.drift import SIZED
from process.summaries.evidence import quantity
from process.summaries.figures import apart
from process.summaries.skins import with_charge
from records.extensions import SizeStep
from records.models import Item, Measurement
from records.units import ureg

PARTS = Shell.objects.select_related(
    "item", "cathode__run", "cathode__mould__model", "cathode__core__pull__mould__model"
)
_LAST = Inspection.objects.filter(copy=OuterRef("pk"))
_COATS = FinishStep.objects.filter(copy=OuterRef("pk"), thickness_um__gt=0).order_by().values("copy")


def sizes_along(things: dict[str, Item], paths: dict[str, tuple]) -> Iterator[SizeStep]:
    """Every measured piece that has a measured forebear; the first of these is what it is compared with."""
    sized = {number: thing for number, thing in things.items() if thing.kind in SIZED}
    makings = _makings(sized.values())
    found = {number: size for number, size in _measured(sized, makings).items() if size is not None}
    for number, size in found.items():
        first = next((key for key in paths[number] if key in found), number)
        if first != number:
            foretold = _foretold(makings.get(sized[number].pk), sized, found)
            yield _step(sized[number], size, first, found[first], foretold)


def _step(item: Item, size: Quantity, first: str, reference: Quantity, foretold: Quantity | None) -> SizeStep:
    measured, spread = apart(deviation(size, reference).m_as("pct"))
    expected = None if foretold is None else apart(deviation(foretold, reference).m_as("pct"))[0]
    return SizeStep(item, apart(size.m_as("mm"))[0], first, measured, spread, expected)


def _makings(things: Iterable[Item]) -> dict[int, MakingUp]:
    """How the copies were made up, with their shells, the depth of their coats and what was measured on inspection."""
    keys = [thing.pk for thing in things if thing.made_here]
    rows = MakingUp.objects.filter(pk__in=keys).select_related("core").annotate(
        coats_um=Subquery(_COATS.annotate(depth=Sum("thickness_um")).values("depth")),
        across_mm=Subquery(_LAST.values("diameter_mm")[:1]), across_typed=Subquery(_LAST.values("as_typed")[:1]),
    )  # fmt: skip
    return {row.pk: row for row in rows.prefetch_related(Prefetch("shells", with_charge(PARTS)))}


def _measured(things: dict[str, Item], makings: dict[int, MakingUp]) -> dict[str, Quantity | None]:
    """Across each piece, at 20 °C where its temperature is known; for a copy as it was inspected."""
    by_key = {thing.pk: thing for thing in things.values()}
    rows: dict[int, list[Measurement]] = defaultdict(list)
    for row in Measurement.objects.filter(item__in=by_key, what__in=ACROSS):
        row.item = by_key[row.item_id]
        rows[row.item_id].append(row)
    return {number: _across(rows[thing.pk], makings.get(thing.pk)) for number, thing in things.items()}


def _across(rows: list[Measurement], making: MakingUp | None) -> Quantity | None:
    if making and making.across_mm is not None:
        return quantity(Inspection(diameter_mm=making.across_mm, as_typed=making.across_typed or {}), "diameter_mm")
    found = (length_of(rows, what) for what in ACROSS)
    return next((each.quantity for each in found if each.quantity is not None and each.kind == MEASURED), None)


def _foretold(making: MakingUp | None, things: dict[str, Item], found: dict[str, Quantity]) -> Quantity | None:
    """From the measured size of its model, by the changes of its moulds, and what lies outside the copied face."""
    if making is None:
        return None
    parts = tuple(bare_part_of(shell) for shell in making.shells.all())
    model = _model_of(parts)
    if model not in found or unknown_changes(parts, making):
        return None
    coats = ureg.Quantity(making.coats_um, "um").to("mm") if making.coats_um else None
    try:
        outside = outside_of(making, parts, coats)
        return predicted_dimension(found[model], changes_of(parts, making), outside)
    except ChemistryError:
        return None


def _model_of(parts: tuple[ShellPart, ...]) -> str:
    return next((part.model.number for part in parts if part.model), "")
