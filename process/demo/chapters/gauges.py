"""The medal weighed in water; moulds measured again, their parts and their wear."""

from process.demo.acting import step, without
from process.demo.rows import Table, find, save
from process.demo.studio import Studio
from process.models import HydrostaticWeighing, Mould, MouldGauge, MouldPart, MouldWear
from records.models import Item


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("in_water", []):
        with step(table) as party:
            save(HydrostaticWeighing, without(table, "of"), item=find(Item, table["of"]), weighed_by=party)
    for table in part.get("mould_length", []):
        with step(table) as party:
            save(MouldGauge, without(table, "of"), mould=find(Mould, table["of"]), gauged_by=party)
    for table in part.get("mould_part", []):
        with step(table):
            save(MouldPart, without(table, "of"), mould=find(Mould, table["of"]))
    for table in part.get("mould_wear", []):
        with step(table) as party:
            mould = find(Mould, table["of"])
            pull = mould.pulls.get(number_count=table["pull"])
            save(MouldWear, without(table, "of", "pull"), mould=mould, pull=pull, seen_by=party)
