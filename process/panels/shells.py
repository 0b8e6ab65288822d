"""What a shell's page shows of the making: its run, the balance, and its wall, measured apart from calculated."""

from typing import Any

from django.http import HttpRequest
from django.utils.safestring import mark_safe

from process.models import MakingUp, Run, Shell, ThicknessPoint
from process.summaries.cathodes import CathodeSummary
from process.summaries.next_step import making_up_step
from process.summaries.runs import RunSummary, summarise
from process.summaries.struck import take_weighings, weighings_riding
from process.summaries.thickness import PointMap, Wall, specification_of, wall_of
from process.summaries.wall_limits import limits_of
from records import access
from records.extensions import Panel, item_panels
from records.models import Item
from records.pdf.spot_map import svg
from records.pdf.spot_map.as_svg import NARROW


def shell_of(item: Item) -> tuple[Shell, RunSummary] | tuple[None, None]:
    """The shell with its points and the summary of its run, asked of the database once for each page."""
    if not hasattr(item, "_shell"):
        item._shell = _read(item) if item.kind == Item.Kind.SHELL else (None, None)
    return item._shell


def _read(item: Item) -> tuple[Shell, RunSummary] | tuple[None, None]:
    rows = Run.objects.with_sheet(points=False, walls=True).annotate(weighing_rows=weighings_riding(item.pk))
    run = rows.filter(cathodes__shell=item.pk).first()
    if run is None:
        return None, None
    grown = [cathode.shell for cathode in run.cathodes.all() if hasattr(cathode, "shell")]
    shell = next(each for each in grown if each.pk == item.pk)
    shell.struck_weighings = take_weighings(shell.item, run.weighing_rows)
    points = ThicknessPoint.every.filter(shell=shell).select_related("measured_by", "photo", "struck_by")
    shell.every_point = list(points)
    standing = shell.thickness_points.all()
    standing._result_cache = [point for point in shell.every_point if not point.is_struck]
    shell._prefetched_objects_cache = {"thickness_points": standing}
    return shell, summarise(run)


def shell_panel(request: HttpRequest, item: Item) -> Panel | None:
    shell, summary = shell_of(item)
    if shell is None:
        return None
    each = next((each for each in summary.cathodes if each.cathode.pk == shell.cathode_id), None)
    wall = _wall(shell, each)
    limits = tuple(limit for limit in limits_of(summary) if limit.shell == shell)
    context = {"shell": shell, "each": each, "summary": summary, "wall": wall, "points": shell.every_point,
               "maps": [drawn(one) for one in wall.maps], "limits": limits,
               "struck": shell.struck_weighings, "may_write": access.may(request.user, "write", Shell)}  # fmt: skip
    onward = making_up_step(summary) if shell.is_free and access.may(request.user, "write", MakingUp) else None
    step = (onward.text, onward.url) if onward else None
    return Panel("The shell", "process/_shell_panel.html", context, 40, "shell", step)


def _wall(shell: Shell, each: CathodeSummary | None) -> Wall:
    specified = specification_of(shell)
    mean = (each.face or each.thickness) if each else None
    return wall_of(shell, shell.thickness_points.all(), mean, specified.thickness_min_mm if specified else None)


def drawn(one: PointMap) -> dict[str, Any]:
    """One drawing for a wide page, one for a phone; escaped by svg() itself."""
    name = f"map-{one.key}"
    wide, narrow = svg(one.shown, name), svg(one.shown, f"{name}-narrow", NARROW)
    return {"wide": mark_safe(wide), "narrow": mark_safe(narrow), "photo": one.photo}


item_panels.append(shell_panel)
