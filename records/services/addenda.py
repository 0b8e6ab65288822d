"""An addendum to a condition report: written and signed in one step, never changed afterwards."""

from collections.abc import Iterable

from django.core.exceptions import ValidationError
from django.db import transaction

from records import clock
from records.models import Addendum, ConditionReport, Party, Photo

UNSIGNED = "This report is not signed yet: complete the report itself instead."


def add_to_report(*, report: ConditionReport, words: str, photos: Iterable[Photo], party: Party, role: str) -> Addendum:
    """Only a signed report needs one; an unsigned one is completed."""
    with transaction.atomic():
        if not ConditionReport.objects.select_for_update().get(pk=report.pk).is_signed:
            raise ValidationError(UNSIGNED)
        added = Addendum.objects.create(
            report=report, words=words, signed_by=party, signed_role=role, signed_at=clock.now()
        )
        added.photos.set(photos)
    return added
