"""What a skinned core's page, its core's page and its copy's page show of its drying."""

from typing import Any

from django.http import HttpRequest
from django.urls import reverse
from django.utils.safestring import mark_safe

from process.models import CoreClosing, Shell, Weighing
from process.panels.shells import shell_of
from process.summaries.drying import Drying, bare_drying_of
from process.summaries.drying_chart import drying_chart
from records import access
from records.extensions import Panel, item_panels
from records.models import Item
from records.pdf.charts import svg

NARROW = 380.0
TITLE = "Drying, and closing the core"


def drying_panel(request: HttpRequest, item: Item) -> Panel | None:
    if item.kind == Item.Kind.SHELL:
        shell, summary = shell_of(item)
        found = next((each for each in summary.dryings if shell and each.shell.pk == shell.pk), None) if shell else None
        return _panel(request, found, 41) if found else None
    if item.kind == Item.Kind.CORE:
        return _under_skin(request, item)
    return None


def _under_skin(request: HttpRequest, item: Item) -> Panel | None:
    """On the core's page: the skin that grew on it, if it is weighed."""
    rows = Shell.objects.select_related("item", "cathode__core__item", "making_up")
    shell = rows.filter(cathode__core=item.pk).first()
    return _panel(request, bare_drying_of(shell), 42) if shell else None


def _panel(request: HttpRequest, drying: Drying, order: int) -> Panel:
    user = request.user
    context = {
        "drying": drying, **charts(drying), "may_write": access.may(user, "write", Weighing),
        "may_sign": access.may(user, "close core"),
    }  # fmt: skip
    return Panel(TITLE, "process/_drying.html", context, order, "drying", _step(user, drying))


def _step(user: Any, drying: Drying) -> tuple[str, str] | None:
    """Weigh again until it is constant, then write how it is closed, then sign."""
    if not drying.is_open or not access.may(user, "write", CoreClosing):
        return None
    number = drying.shell.item.number
    waiting = next((each for each in drying.closings if not each.is_signed), None)
    if drying.may_close and waiting and access.may(user, "close core"):
        return "Sign its closing", reverse("closing_sign", args=[waiting.pk])
    if drying.may_close:
        return "Write how it is closed", reverse("closing_add", args=[number])
    return f"Weigh {number} again", reverse("weighing_add", args=[number])


def charts(drying: Drying) -> dict[str, Any]:
    """One drawing for a wide page, one for a phone."""
    chart = drying_chart(drying)
    if chart is None:
        return {}
    name = f"drying-{drying.shell.pk}"
    # Escaped by svg() itself.
    return {"chart": mark_safe(svg(chart, name)), "chart_narrow": mark_safe(svg(chart, f"{name}-narrow", NARROW))}


item_panels.append(drying_panel)
