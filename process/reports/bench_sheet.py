"""The bench sheet of a run: what hangs there, what is planned, and boxes for what is read."""

from typing import Any

from django.conf import settings
from django.utils import timezone

from process.models import Cathode, Run
from process.summaries.bench import PlannedReading, offset, readings_of
from process.summaries.planning import PlanSummary
from process.summaries.runs import RunSummary, summarise
from process.summaries.words import metal_word
from records import portraits
from records.extensions import PaperContext
from records.models import Item, Photo
from records.pdf import blocks as b
from records.pdf.document import build, page_count
from records.reports.attached import record
from records.reports.figures import figure_cell, figure_fact, in_words, row_fact
from records.reports.parts import cautions, head, local_day, printed
from records.units import figure, other_unit, show

KIND = "Bench sheet"
ACID = (
    "Acid and copper salts burn: gloves, eye protection, apron; rinse splashes at once. Acid into water, never water "
    "into acid. Extraction on; no waste into the drain. Local rules and licensed practice decide."
)
CURRENT = "Enter with the current on. Do not lift the piece out and let it dry: if the current was gone, write when."
BEFORE = (
    "Level at the mark; volume as recorded", "Bath temperature ______ °C", "Analysis in date and in limits",
    "Filter and agitation run", "Anode bags whole, contacts clean", "Polarity checked: piece to minus",
    "Power unit at zero, limit set", "Extraction on, eyewash free, somebody within call",
)  # fmt: skip
PLANNED = (("When", "", 31.0), ("Current", "A", 12.0), ("Charge", "Ah", 15.0), ("Mean", "mm", 13.0))
BOXES = (("Current", "A", 16.0), ("Cell", "V", 16.0), ("Bath", "°C", 16.0), ("Meter", "Ah", 18.0),
         ("Seen and done", "", 23.0), ("By", "", 11.0))  # fmt: skip
CLOSING = (("At the end", "", 46.0),)
CLOSING_BOXES = (("Stopped at", "date, time", 30.0), ("Meter", "Ah", 20.0), ("Reason", "", 34.0), ("Look", "", 29.0),
                 ("By", "", 12.0))  # fmt: skip
AFTERWARDS = "Photograph the filled sheet and add it to the run, as “bench sheet”: it is kept as evidence."
MOST_NAMED = 4  # pieces in the title; all of them stand in the table
RIG = (b.Column("Cathode"), b.Column("Of"), b.Column("Coat"), b.Column("Area", "dm²", "right"),
       b.Column("", "in²", "right"), b.Column("Tare", "g", "right"), b.Column("Rig"))  # fmt: skip
RAMP = (b.Column("Step"), b.Column("Density", "A/dm²", "right"), b.Column("", "A/ft²", "right"),
        b.Column("Current", "A", "right"), b.Column("For", "h", "right"), b.Column("Charge", "Ah", "right"),
        b.Column("Mean after it", "mm", "right", calculated=True))  # fmt: skip


def blocks(summary: RunSummary, row_height: float = b.ROW) -> list[b.Block]:
    run, plan = summary.run, summary.plan
    cathodes = list(run.cathodes.all())
    start = summary.sheet.started_at or run.planned_start_at
    planned, interval = readings_of(run, plan, start)
    note = "Charge and mean are calculated. Write what you read, not what is planned; strike out, never rub out."
    every = f"Readings, every {show(interval, '_h')}; times by the museum’s clock with the offset from UTC"
    return [
        b.BenchHead(_portrait(cathodes), facts(run, plan), f"{settings.BASE_URL}{run.get_absolute_url()}", run.number),
        *cautions([f"{run.bath.cautions or ACID} {CURRENT}"]),
        b.FigureTable(RIG, tuple(map(_cathode, cathodes)), caption="On the rail"),
        b.FigureTable(RAMP, tuple(_stage(each) for each in plan.stages), caption="The ramp"),
        b.Heading("Before it goes in", 2), b.TickList(BEFORE),
        b.BoxTable(PLANNED, BOXES, tuple(map(_row, planned)), every, note, row_height),
        b.BoxTable(CLOSING, CLOSING_BOXES, (("Stop by charge,\nnot by the clock",),), note=AFTERWARDS),
    ]  # fmt: skip


def facts(run: Run, plan: PlanSummary) -> tuple[b.Fact, ...]:
    density = show(run.planned_current_density_a_dm2, "_a_dm2")
    unit = (
        f"{run.power_unit}; after a failure it {run.power_unit.get_after_failure_display()}" if run.power_unit else ""
    )
    ends = timezone.localtime(plan.finish_at) if plan.finish_at else None
    finish = f"{local_day(ends)}, {ends:%H:%M} {offset(ends)}" if ends else "no start is planned yet"
    return (
        b.Fact("Bath", f"{run.bath.number}, {run.bath.name}"), b.Fact("Metal", metal_word(run.ion)),
        b.Fact("Build at", f"{density} ({other_unit(run.planned_current_density_a_dm2, '_a_dm2')})"),
        row_fact("Target mean", run, "planned_thickness_mm"), figure_fact(plan.area),
        b.Fact("Current at the end", show(plan.current.value, "_a")),
        figure_fact(plan.charge, "Stop at"), figure_fact(plan.time),
        b.Fact("Expected finish", finish),
        b.Fact("Power unit", unit),
    )  # fmt: skip


def _portrait(cathodes: list[Cathode]) -> b.Photo | None:
    """What is copied: the model’s own face."""
    for cathode in cathodes:
        mould = cathode.mould or (cathode.core.pull.mould if cathode.core else None)
        thing = mould.model if mould else None
        if thing is not None:
            found = portraits.with_portraits(Item.objects.filter(pk=thing.pk)).get().portrait_id
            if found:
                return printed(Photo.objects.get(pk=found))
    return None


def _cathode(cathode: Cathode) -> tuple[str, ...]:
    source = cathode.mould or cathode.core
    coat = ", ".join(
        filter(None, [cathode.coat.label if cathode.coat else "", in_words(cathode, "coat_resistance_ohm")])
    )
    area = cathode.total_area_dm2
    return (
        cathode.label, source.item.number if source else "", coat, figure(area, "_dm2")[0],
        figure(area, "_dm2", "in²")[0], figure(cathode.tare_g, "_g")[0], cathode.rig,
    )  # fmt: skip


def _stage(stage: Any) -> tuple[Any, ...]:
    density = stage.density.value
    return (
        (stage.words or "step").capitalize(), figure(density, "_a_dm2")[0], figure(density, "_a_dm2", "A/ft²")[0],
        figure(stage.current.value, "_a")[0], figure(stage.time.value, "_h")[0], figure(stage.charge.value, "_ah")[0],
        figure_cell(stage.after),
    )  # fmt: skip


def _row(reading: PlannedReading) -> tuple[str, ...]:
    if reading.at:
        local = timezone.localtime(reading.at)
        when = f"{local.day} {local:%b %H:%M} {offset(local)}"
    else:
        when = f"+{reading.hours_h:.1f} h"
    current = f"{reading.current_a:.2f}" if reading.current_a else "0"
    return f"{when}\n{reading.words}", current, f"{reading.charge_ah:.2f}", f"{reading.thickness_mm:.3f}"


def make(run: Run, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    summary = summarise(Run.objects.with_sheet().get(pk=run.pk))
    found, plan = summary.run, summary.plan
    rows = {"run": [found], "bath": [found.bath], "cathodes": found.cathodes.all(), "ramp": found.ramp_steps.all()}
    data = record(KIND, found.number, context, rows, plan.figures)
    start = timezone.localtime(found.planned_start_at) if found.planned_start_at else None
    begins = f"planned for {local_day(start)}, {start:%H:%M}" if start else "not dated yet"
    words = f"{metal_word(found.ion).capitalize()} in bath {found.bath.number}, {begins}."
    paper = head(KIND, found.number, _title(found), words, context)
    # Lower rows where they save a page: a closing line on a sheet of its own is lost at the bench.
    sheets = [build(paper, blocks(summary, height), data, context.issued_at) for height in (b.ROW, b.LEAST_ROW)]
    return min(sheets, key=page_count), data


def _title(run: Run) -> str:
    labels = [cathode.label for cathode in run.cathodes.all()]
    return f"{run.number}: {', '.join(labels) if len(labels) <= MOST_NAMED else f'{len(labels)} pieces'}"
