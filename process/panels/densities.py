"""What a thing's page shows of its density."""

from django.http import HttpRequest

from process.models import HydrostaticWeighing
from process.panels.copies import making_of
from process.summaries.densities import LIMITS, densities_of
from records import access
from records.extensions import Panel, Struck, item_panels, strikables
from records.line import measured_on
from records.models import Item

# A bare shell tells its density by nothing that its balance does not tell better.
METAL_KINDS = {Item.Kind.ORIGINAL, Item.Kind.HISTORIC_COPY, Item.Kind.COPY, Item.Kind.MATRIX}


def density_panel(request: HttpRequest, item: Item) -> Panel | None:
    making = making_of(item)
    if item.kind not in METAL_KINDS or (making and making.core_id):
        return None
    rows = list(item.hydrostatic_weighings.select_related("weighed_by"))
    may_write = access.may(request.user, "write", HydrostaticWeighing)
    if not rows and not may_write:
        return None
    entered = any(row.density_g_cm3 is not None for row in measured_on(item))
    context = {
        "item": item, "densities": densities_of(rows), "limits": LIMITS, "may_write": may_write,
        "is_known": bool(rows) or entered,
    }  # fmt: skip
    return Panel("Density", "process/_density_panel.html", context, order=42, anchor="density")


item_panels.append(density_panel)
strikables["hydrostatic"] = Struck(
    rows=lambda: HydrostaticWeighing.every.select_related("item", "struck_by"),
    words=lambda row: str(row),
    back=lambda row: row.get_absolute_url(),
)
