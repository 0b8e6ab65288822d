"""How a copy was made: its shells and their walls, what is inside, how it was joined and finished, how it came out."""

from typing import Any

from django.db.models import OuterRef, Prefetch, prefetch_related_objects
from django.http import HttpRequest
from django.utils.safestring import mark_safe

from process.models import FinishStep, Inspection, MakingUp
from process.panels.shells import drawn
from process.summaries.copies import CopySummary, summarise
from process.summaries.copy_skin import depth_of, skin_of
from process.summaries.drift import drift_chart, drift_of
from process.summaries.editions import edition_among, with_edition
from process.summaries.figures import apart
from process.summaries.thickness import wall_of
from records import access, extensions
from records.extensions import CopyTraits, Panel
from records.models import Item
from records.pdf.charts.as_svg import step_svg
from records.riding import read_rows, riding

NARROW = 380.0  # layout units of a chart on a phone
STEP = (
    "id", "words", "thickness_um", "done_on", "as_typed", "finish__label", "finish__caution", "done_by__name",
)  # fmt: skip
INSPECTIONS = Inspection.objects.select_related("inspector", "signed_by", "concession__given_by")
_STEPS = FinishStep.objects.filter(copy=OuterRef("copy"))
_MADE = MakingUp.objects.select_related("fill", "core__item", "made_up_by", "commission")
MADE = with_edition(_MADE).annotate(step_rows=riding(_STEPS, STEP))


def making_of(item: Item) -> MakingUp | None:
    """The making-up of a copy with its rows, asked of the database once for each page."""
    if not hasattr(item, "_making"):
        making = MADE.filter(pk=item.pk).first() if item.made_here else None
        if making:
            making.copy = item  # and the other way round, so that nobody asks again
            making.steps = read_rows(FinishStep, making.step_rows, copy=item)
            making.steps.sort(key=lambda step: (step.done_on, step.pk))
            prefetch_related_objects([item], Prefetch("inspections", INSPECTIONS))
            making.inspected = list(item.inspections.all())
        item._making = making
    return item._making


def summary_of(item: Item, making: MakingUp) -> CopySummary:
    if not hasattr(making, "summary"):
        making.summary = summarise(making, making.steps, next(iter(making.inspected), None))
    return making.summary


def making_panel(request: HttpRequest, item: Item) -> Panel | None:
    making = making_of(item)
    if making is None:
        return None
    summary, edition = summary_of(item, making), edition_among(making)
    context = {
        "item": item, "making": making, "summary": summary, "steps": making.steps, "maps": _maps(summary),
        "edition": edition.words if edition else "", "was_cut": any(part.shell.was_cut for part in summary.parts),
        "may_write": access.may(request.user, "write", MakingUp),
    }  # fmt: skip
    context |= _drift(item, summary_of(item, making))
    return Panel("How it was made", "process/_copy_making.html", context, order=40, anchor="making")


def _maps(summary: CopySummary) -> list[dict[str, Any]]:
    """Where the walls of its shells were measured, one map for each picture."""
    walls = (wall_of(part.shell, part.shell.thickness_points.all(), part.face, None) for part in summary.parts)
    return [drawn(one) for wall in walls for one in wall.maps]


def _drift(item: Item, summary: CopySummary) -> dict[str, Any]:
    """Where two pieces of the line were measured: drawn wide and narrow, escaped by the drawing itself."""
    steps = drift_of(item, summary.size)
    if not steps:
        return {}
    chart = drift_chart(steps)
    if chart is None:
        return {"drift": steps}
    wide, narrow = step_svg(chart, "drift"), step_svg(chart, "drift-narrow", NARROW)
    return {"drift": steps, "drift_chart": mark_safe(wide), "drift_narrow": mark_safe(narrow)}


def traits(item: Item) -> CopyTraits | None:
    """What a label and the rules of marking ask of a copy made here."""
    making = making_of(item)
    if making is None:
        return None
    technique = {MakingUp.Technique.CORE: "core", MakingUp.Technique.MATRIX: "matrix"}.get(making.technique, "hollow")
    last = next(iter(making.inspected), None)
    return CopyTraits(
        technique, making.technique == MakingUp.Technique.UNIFACE, skin_of(making.steps),
        last.diameter_mm if last else None, last.finished_thickness_mm if last else None, _coating_um(making),
    )  # fmt: skip


def _coating_um(making: MakingUp) -> float | None:
    depth = depth_of(making.steps) if skin_of(making.steps) else None
    return None if depth is None else apart(depth.m_as("um"))[0]


extensions.item_panels.append(making_panel)
extensions.copy_traits.append(traits)
