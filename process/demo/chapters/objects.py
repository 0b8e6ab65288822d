"""The objects at the start: identity, measurements, photographs, provenance, and what they descend from."""

from process.demo.acting import step, without
from process.demo.rows import Table, build, save
from process.demo.studio import Studio
from records.lineage import refuse_impossible
from records.models import DescentLink, Examination, Item, Measurement, ProvenanceEvent

NESTED = ("measurement", "photo", "provenance", "descent", "examination")


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("item", []):
        with step(table):
            item = save(Item, without(table, *NESTED))
            _describe(item, table)
            for link in table.get("descent", []):
                _descend(item, link)
        photograph(item, table, studio)
        for table_of_signs in table.get("examination", []):
            with step(table_of_signs, table_of_signs["examiner"]):
                save(Examination, without(table_of_signs), item=item)


def _describe(item: Item, table: Table) -> None:
    """Measurements and provenance of a thing."""
    for measurement in table.get("measurement", []):
        save(Measurement, measurement, item=item)
    for event in table.get("provenance", []):
        save(ProvenanceEvent, event, item=item)


def photograph(item: Item, table: Table, studio: Studio) -> None:
    """Photographs of a thing, each by its photographer at its own instant."""
    for photo in table.get("photo", []):
        with step({"when": photo.get("taken_at", photo.get("when"))} | photo, photo["taken_by"]):
            studio.keep(photo, item=item)


def _descend(item: Item, link: Table) -> None:
    row = build(DescentLink, link, target=item)
    refuse_impossible(row)
    row.save()
