"""On a thing's page: that it was given up or may be, and what became of it."""

from django.http import HttpRequest

from records import access
from records.extensions import Panel, item_panels
from records.hands import hands_of
from records.models import Disposal, Item
from records.services.disposals import GIVEN_UP
from records.services.handovers import GONE


def disposal_panel(request: HttpRequest, item: Item) -> Panel | None:
    if item.kind not in GIVEN_UP:
        return None
    row = hands_of(item).disposal
    may = access.may(request.user, "write", Disposal)
    if row is None and (not may or item.status in GONE):
        return None
    context = {
        "item": item, "row": row, "may_write": may, "may_do": access.may(request.user, "carry out disposal"),
        "may_issue": access.may(request.user, "issue paper"),
    }  # fmt: skip
    return Panel("Its end", "records/_item_disposal.html", context, order=95, anchor="disposal")


item_panels.append(disposal_panel)
