"""The day of a survey that a person set, taken back."""

from django.db import transaction

from records.models import SurveyDate


def withdraw_date(*, row: SurveyDate, reason: str) -> None:
    """From now on the museum's table counts; the history keeps the day, both reasons and who said them."""
    with transaction.atomic():
        held = SurveyDate.objects.select_for_update(of=("self",)).get(pk=row.pk)
        held._change_reason = reason
        held.delete()
