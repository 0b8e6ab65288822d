"""The medal weighed in water, and a mould measured again."""

from process.demo.acting import step, without
from process.demo.rows import Table, find, save
from process.demo.studio import Studio
from process.models import HydrostaticWeighing, Mould, MouldGauge
from records.models import Item


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("in_water", []):
        with step(table) as party:
            save(HydrostaticWeighing, without(table, "of"), item=find(Item, table["of"]), weighed_by=party)
    for table in part.get("mould_length", []):
        with step(table) as party:
            save(MouldGauge, without(table, "of"), mould=find(Mould, table["of"]), gauged_by=party)
