"""What a mould's page shows of its shrinking."""

from django.http import HttpRequest
from django.utils.safestring import mark_safe

from process.models import MouldGauge
from process.panels.moulds import mould_of
from process.summaries.gauges import gauge_chart, gauging_of
from records import access
from records.extensions import Panel, Struck, item_panels, strikables
from records.models import Item
from records.pdf.charts.as_svg import step_svg

NARROW = 380.0


def gauge_panel(request: HttpRequest, item: Item) -> Panel | None:
    mould = mould_of(item)
    if mould is None:
        return None
    gauging = gauging_of(mould, mould.gauges.select_related("gauged_by"))
    may_write = access.may(request.user, "write", MouldGauge)
    if not gauging.lines and not may_write:
        return None
    context = {"item": item, "gauging": gauging, "may_write": may_write}
    if chart := gauge_chart(mould, gauging.lines):  # escaped by the drawing itself
        context["chart"] = mark_safe(step_svg(chart, "gauges"))
        context["narrow"] = mark_safe(step_svg(chart, "gauges-narrow", NARROW))
    return Panel("Measured again", "process/_gauge_panel.html", context, order=43, anchor="gauges")


item_panels.append(gauge_panel)
strikables["gauge"] = Struck(
    rows=lambda: MouldGauge.every.select_related("mould__item", "struck_by"),
    words=lambda row: str(row),
    back=lambda row: row.get_absolute_url(),
)
