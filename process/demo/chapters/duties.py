"""Dated duties beside those that follow from a consent, and how some of them were done."""

from process.demo.acting import step, without
from process.demo.rows import Table, save
from process.demo.studio import Studio
from records.models import Duty
from records.services.permissions import fulfil


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("duty", []):
        with step(table):
            save(Duty, without(table))
    for table in part.get("duty_done", []):
        with step(table) as party:
            duty = Duty.objects.open().get(sentence__contains=table["of"])
            fulfil(duty=duty, party=party, words=table["words"])
