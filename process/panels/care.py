"""Care of a piece, from what is inside and on it, and how often that asks for a look."""

from django.http import HttpRequest

from records import access
from records.care import care_of, survey_of
from records.extensions import Panel, item_panels
from records.models import Item


def care_panel(request: HttpRequest, item: Item) -> Panel | None:
    if not item.is_copy or not (cares := care_of(item)):
        return None
    context = {"cares": cares, "survey": survey_of(item), "may_write": access.may(request.user, "write", "CareRule")}
    return Panel("Care", "process/_care.html", context, order=57, anchor="care")


item_panels.append(care_panel)
