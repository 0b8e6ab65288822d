"""Runs: plan, rail, sheet, weighing, thicknesses, and how each ended."""

from typing import Any

from django.utils import timezone

from process.demo.acting import acting, step, when, without
from process.demo.chapters.objects import photograph
from process.demo.chapters.scans import send
from process.demo.chapters.traces import bring_in
from process.demo.rows import Table, build, instant, save, values_of
from process.demo.studio import Studio
from process.models import AreaPart, Cathode, Event, RampStep, Reading, Run, Shell, ThicknessPoint
from process.services import rail
from process.services import runs as services
from process.services.areas import keep_part
from process.summaries.areas import kept_area

NESTED = ("cathode", "step", "line", "trace", "shell", "photo", "outcome", "outcome_words", "judged", "afterwards")


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("run", []):
        by = table["operator"]
        with step(table, by):
            run = save(Run, without(table, *NESTED))
            for cathode in table["cathode"]:
                _hang(run, cathode)
            for order, ramp in enumerate(table.get("step", []), start=1):
                save(RampStep, ramp, run=run, order_count=order)
        for line in table.get("line", []):
            with step(line, line.get("person", by)):
                _write(run, line, table)
        for trace in table.get("trace", []):
            bring_in(run, trace, by)
        for shell in table.get("shell", []):
            _weigh(run, shell, by, studio)
        if "outcome" in table:
            with acting(instant(table["judged"]), by):
                services.judge_run(run=run, outcome=table["outcome"], words=table["outcome_words"])
        _photograph(run, table, studio)


def _hang(run: Run, table: Table) -> None:
    """A cathode, and the parts that its area is the sum of."""
    cathode = save(Cathode, without(table, "area"), run=run)
    for area in table.get("area", []):
        if "scan" in area:
            send(cathode, area)
            continue
        part = build(AreaPart, area, unset=("area_dm2",), cathode=cathode)
        part.area_dm2 = kept_area(part)
        keep_part(part=part)


def _write(run: Run, line: Table, table: Table) -> None:
    """One line of the sheet; the first is the entry, and only it stands before the gates."""
    columns = {"person": table["operator"]} | without(line, "cathode")
    values = values_of(Event if "kind" in line else Reading, columns)
    kind, afterwards = values.pop("kind", ""), table.get("afterwards", True)
    if kind == Event.Kind.ENTRY:
        services.start_run(run=run, afterwards=afterwards, **values)
    elif kind == Event.Kind.HUNG_IN:
        rail.hang_in(run=run, cathode=build(Cathode, line["cathode"], run=run), afterwards=afterwards, **values)
    elif kind == Event.Kind.TAKEN_OUT:
        rail.take_out(run=run, cathode=run.cathodes.get(label=line["cathode"]), **values)
    elif kind:
        services.add_event(run=run, kind=kind, **values)
    else:
        services.add_reading(run=run, **values)


def _weigh(run: Run, table: Table, by: str, studio: Studio) -> None:
    points: list[list[Any]] = table.get("points", [])
    with step(table, by) as party:
        columns = without(table, "number", "cathode", "points", "method", "outline", "photo")
        shell = build(Shell, columns, unset=("item", "cathode"))
        services.weigh(cathode=run.cathodes.get(label=table["cathode"]), number=table["number"], shell=shell)
    photograph(shell.item, table, studio)
    with step(table, by) as party:
        for place, thickness, *spot in points:
            point = {
                "place": place,
                "thickness_mm": thickness,
                "method": table["method"],
                **_placed(table, shell, spot),
            }
            save(ThicknessPoint, point, shell=shell, measured_by=party, measured_on=timezone.localdate(when(table)))


def _placed(table: Table, shell: Shell, spot: list[float]) -> dict[str, Any]:
    """On the photograph of the shell, or on the outline that the table names."""
    if not spot:
        return {}
    on = {"outline": table["outline"]} if "outline" in table else {"photo": table["photo"][0]["name"]}
    return {**on, "x_pct": spot[0], "y_pct": spot[1]}


def _photograph(run: Run, table: Table, studio: Studio) -> None:
    for photo in table.get("photo", []):
        with step(photo, photo["taken_by"]):
            run.photos.add(studio.keep(photo))
