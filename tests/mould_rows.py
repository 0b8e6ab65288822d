"""One row of each kind that hangs on a mould."""

from datetime import date
from typing import Any

from process.models import Mould, MouldGauge, MouldPart, MouldWear
from records.models import Party


def mould_rows(mould: Mould, person: Party, day: date) -> dict[str, Any]:
    return {
        "gauge": MouldGauge.objects.create(
            mould=mould, gauged_on=day, feature="breadth", nominal_mm=168.0, measured_mm=167.83, gauged_by=person
        ),
        "mould_part": MouldPart.objects.create(mould=mould, mark="A", what="face"),
        "mould_wear": MouldWear.objects.create(
            mould=mould, feature="rim tear", length_mm=4, bearing="outside", seen_on=day, seen_by=person
        ),
    }
