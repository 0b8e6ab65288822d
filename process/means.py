"""A calculated mean of a wall never becomes a measured one, whichever page it is typed on."""

import re

from process.models import Shell
from records import extensions
from records.models import Measurement

NO_PLACE = re.compile(
    r"\b(mean|average|averaged|calculated|computed|overall|whole|everywhere|typical)\b", re.IGNORECASE
)
AS_MEASURED = {"", "measured"}
POINT_BY_POINT = (
    "The wall of a shell is measured point by point, and its mean follows from its mass: enter it on the page of the "
    "shell, under “Enter a measured thickness”."
)
SAY_SO = (
    "“{}” is no place that an instrument was put to: name the place, or say under “How is this number known?” that it "
    "is calculated, estimated or quoted."
)


def doubt_of(typed: Measurement, kind: str) -> str:
    """Why this thickness may not stand as measured; "" where it may."""
    if typed.what != Measurement.What.THICKNESS or kind not in AS_MEASURED:
        return ""
    if typed.item.kind == typed.item.Kind.SHELL:
        return POINT_BY_POINT
    grown = typed.item.kind == typed.item.Kind.COPY and Shell.objects.filter(making_up__copy=typed.item).exists()
    return SAY_SO.format(typed.point) if grown and NO_PLACE.search(typed.point) else ""


extensions.measurement_doubts.append(doubt_of)
