"""What a change after handling sets going: an incident with a number, and telling the owner."""

from datetime import timedelta

from django.core.exceptions import ValidationError
from django.db import transaction

from records import clock
from records.models import ConditionReport, Duty, Incident
from records.mouldings import moulding_of
from records.numbers import SERIES, with_next_number
from records.roles import CONSERVATOR, REGISTRAR

SECOND_LOOK_DAYS = 30  # oil of a mould shows late (common practice)


def open_incident(report: ConditionReport) -> Incident:
    """Called where a report that states a change is signed: the owner is to be told within days."""
    duty = Duty.objects.create(
        sentence=f"Tell the owner of {report.item.number} what changed ({report.number})",
        due_on=clock.today(), role=REGISTRAR, item=report.item, commission=report.commission,
    )  # fmt: skip
    return with_next_number(
        Incident, SERIES["incident"], lambda number: Incident.objects.create(number=number, report=report, duty=duty)
    )


def plan_second_look(report: ConditionReport) -> Duty:
    """A month after the moulding one looks again, whatever the first look said."""
    moulding = moulding_of(report)
    since = moulding.happened_on if moulding else report.examined_on
    return Duty.objects.create(
        sentence=f"Look at {report.item.number} a second time after moulding ({report.number})",
        due_on=since + timedelta(days=SECOND_LOOK_DAYS),
        role=CONSERVATOR, item=report.item, commission=report.commission,
    )  # fmt: skip


def keep_incident(*, incident: Incident) -> Incident:
    """Once the owner was told, the duty to tell is done."""
    if incident.owner_told_on and not incident.owner_told_words:
        raise ValidationError("Say who was told, and how: the owner may ask for it years later.")
    with transaction.atomic():
        incident.save()
        duty = incident.duty
        if duty and incident.owner_told_on and duty.done_on is None:
            duty.done_on, duty.done_words = incident.owner_told_on, incident.owner_told_words
            duty.save()
    return incident
