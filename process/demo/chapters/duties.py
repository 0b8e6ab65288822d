"""Dated duties beside those of a consent, how some of them were done, and what followed from incidents."""

from process.demo.acting import step, without
from process.demo.rows import Table, save
from process.demo.studio import Studio
from records.models import Duty, Incident
from records.services.incidents import keep_incident
from records.services.permissions import fulfil


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("duty", []):
        with step(table):
            save(Duty, without(table))
    for table in part.get("incident", []):
        with step(table):
            incident = Incident.objects.get(report__number=table["of"])
            for name, value in without(table, "of").items():
                setattr(incident, name, value)
            keep_incident(incident=incident)
    for table in part.get("duty_done", []):
        with step(table) as party:
            duty = Duty.objects.open().get(sentence__contains=table["of"])
            fulfil(duty=duty, party=party, words=table["words"])
