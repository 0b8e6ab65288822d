"""The bath: limits, anodes and their weighings, analyses, additions, other work."""

from process.demo.acting import step, without
from process.demo.rows import Table, save
from process.demo.studio import Studio
from process.models import Anode, AnodeWeighing, Bath, BathAddition, BathAnalysis, BathLimit, BathService


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("bath", []):
        with step(table):
            bath = save(Bath, without(table, "limit", "anode"))
            for limit in table["limit"]:
                save(BathLimit, limit, bath=bath)
            for anode in table.get("anode", []):
                save(Anode, anode, bath=bath)
    for table in part.get("analysis", []):
        with step(table) as party:
            save(BathAnalysis, without(table), analyst=party)
    for table in part.get("addition", []):
        with step(table) as party:
            save(BathAddition, without(table), added_by=party)
    for table in part.get("bath_work", []):
        with step(table) as party:
            save(BathService, without(table), done_by=party)
    for table in part.get("anode_weighing", []):
        with step(table) as party:
            anode = Anode.objects.get(bath__number=table["bath"], label=table["anode"])
            save(AnodeWeighing, without(table, "bath", "anode"), anode=anode, weighed_by=party)
