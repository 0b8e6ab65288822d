"""The bath: limits, analyses, additions."""

from process.demo.acting import step, without
from process.demo.rows import Table, save
from process.demo.studio import Studio
from process.models import Bath, BathAddition, BathAnalysis, BathLimit


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("bath", []):
        with step(table):
            bath = save(Bath, without(table, "limit"))
            for limit in table["limit"]:
                save(BathLimit, limit, bath=bath)
    for table in part.get("analysis", []):
        with step(table) as party:
            save(BathAnalysis, without(table), analyst=party)
    for table in part.get("addition", []):
        with step(table) as party:
            save(BathAddition, without(table), added_by=party)
