"""A logger’s trace comes in by the services that the pages use, with the decisions of the person who took them."""

from pathlib import Path
from uuid import NAMESPACE_URL, uuid5

from django.core.files import File

from process.demo.acting import step
from process.demo.rows import Table
from process.models import Run
from process.services import traces as services
from process.tracing import Mapping

FOLDER = Path(__file__).parents[1] / "traces"


def bring_in(run: Run, table: Table, by: str) -> None:
    """Confirmed as found; each finding decided by its kind; accepted with the reason."""
    with step(table, by) as person, (FOLDER / table["file"]).open("rb") as file:
        token = uuid5(NAMESPACE_URL, f"{run.number}/{table['name']}")
        trace = services.receive(run=run, file=File(file), name=table["name"], token=token, brought_by=person)
        services.map_trace(trace=trace, mapping=Mapping.from_json(trace.mapping))
        kinds = table["decisions"]
        decisions = {each["key"]: kinds[each["kind"]] for each in trace.findings if each["kind"] in kinds}
        services.decide(trace=trace, decisions=decisions)
        services.accept(trace=trace, reason=table["reason"], ruling="", person=person)
