"""Parts of a cathode's area: kept one by one, and summed into the cathode in the same step."""

from django.core.exceptions import ValidationError
from django.db import transaction

from process.models import AreaPart, Cathode
from process.services.scan_files import forget
from process.summaries.areas import sum_of
from process.summaries.figures import apart
from records import units


def keep_part(*, part: AreaPart) -> AreaPart:
    with transaction.atomic():
        part.save()
        sum_up(cathode=part.cathode)
    return part


def remove_part(*, part: AreaPart) -> None:
    """The last part leaves the sum that it made: the cathode is never without an area."""
    with transaction.atomic():
        cathode = part.cathode
        part.delete()
        if stored := part.scan_facts.get("path"):
            forget(stored)
        sum_up(cathode=cathode)


def sum_up(*, cathode: Cathode) -> None:
    """Face and whole area from the parts, marked as calculated, with their ±."""
    total = sum_of(cathode, AreaPart.objects.filter(cathode=cathode))
    if total.whole is None:
        return
    for field, found in (("face_area_dm2", total.face), ("total_area_dm2", total.whole)):
        value, spread = apart(found.m_as("dm**2"))
        value = float(f"{value:.6g}")
        if field == "face_area_dm2" and not any(line.part.part == AreaPart.Part.FACE for line in total.lines):
            continue
        spread = float(f"{spread:.2g}") if spread else None
        typed = units.Parsed(value, "dm²", value, spread, units.plain(value), "calculated", total.words)
        setattr(cathode, field, value)
        cathode.as_typed = {**cathode.as_typed, field: typed.as_typed()}
    if cathode.face_area_dm2 > cathode.total_area_dm2:
        raise ValidationError("The parts come to less than the face: add the face as a part too.")
    cathode._change_reason = "Area reckoned from its parts"
    cathode.save()
