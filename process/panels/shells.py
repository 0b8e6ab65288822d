"""What a shell's page shows of the making: its run, the balance, and its wall, measured apart from calculated."""

from typing import Any

from django.http import HttpRequest
from django.utils.safestring import mark_safe

from process.models import MakingUp, Run, Shell, ThicknessPoint
from process.summaries.cathodes import CathodeSummary
from process.summaries.next_step import making_up_step
from process.summaries.runs import RunSummary, summarise
from process.summaries.thickness import PointMap, Wall, concession_of, specification_of, wall_of
from records import access
from records.extensions import Panel, item_panels
from records.models import Item
from records.pdf.spot_map import svg
from records.pdf.spot_map.as_svg import NARROW


def shell_of(item: Item) -> tuple[Shell, RunSummary] | tuple[None, None]:
    """The shell with the summary of its run, asked of the database once for each page."""
    if not hasattr(item, "_shell"):
        rows = Shell.objects.select_related("item", "cathode__run", "making_up__copy")
        shell = rows.filter(pk=item.pk).first() if item.kind == Item.Kind.SHELL else None
        summary = summarise(Run.objects.with_sheet().get(pk=shell.cathode.run_id)) if shell else None
        item._shell = (shell, summary)
    return item._shell


def shell_panel(request: HttpRequest, item: Item) -> Panel | None:
    shell, summary = shell_of(item)
    if shell is None:
        return None
    each = next((each for each in summary.cathodes if each.cathode.pk == shell.cathode_id), None)
    points = list(ThicknessPoint.every.filter(shell=shell).select_related("measured_by", "photo", "struck_by"))
    wall = _wall(shell, [point for point in points if not point.is_struck], each)
    context = {"shell": shell, "each": each, "summary": summary, "wall": wall, "points": points,
               "maps": [drawn(one) for one in wall.maps],
               "may_write": access.may(request.user, "write", Shell)}  # fmt: skip
    onward = making_up_step(summary) if shell.is_free and access.may(request.user, "write", MakingUp) else None
    step = (onward.text, onward.url) if onward else None
    return Panel("The shell", "process/_shell_panel.html", context, 40, "shell", step)


def _wall(shell: Shell, points: list[ThicknessPoint], each: CathodeSummary | None) -> Wall:
    specified = specification_of(shell)
    conceded = concession_of(shell) if points and specified else ""
    mean = (each.face or each.thickness) if each else None
    return wall_of(shell, points, mean, specified.thickness_min_mm if specified else None, conceded)


def drawn(one: PointMap) -> dict[str, Any]:
    """One drawing for a wide page, one for a phone; escaped by svg() itself."""
    name = f"map-{one.key}"
    wide, narrow = svg(one.shown, name), svg(one.shown, f"{name}-narrow", NARROW)
    return {"wide": mark_safe(wide), "narrow": mark_safe(narrow), "photo": one.photo}


item_panels.append(shell_panel)
