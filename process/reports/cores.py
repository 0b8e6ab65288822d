"""A core on paper: cast, waterproofed, weighed while it dried, and how it was closed."""

from process.models import Core, CoreClosing
from process.reports.making import Making
from process.summaries import cores
from process.summaries.drying import Drying
from process.summaries.drying_chart import drying_chart
from process.summaries.runs import RunSummary
from records.pdf import blocks as b
from records.reports.figures import figure_cell, figure_fact, row_fact
from records.reports.parts import local_day, sentences

CURVE = (
    b.Column("Weighed"),
    b.Column("Mass", "g", "right"),
    b.Column("Gain", "g", "right", calculated=True),
    b.Column("Of the calculated metal", "%", "right", calculated=True),
    b.Column("How it dried"),
)


def core(m: Making) -> list[b.Block]:
    """The core before the bath; nothing for a hollow copy."""
    row = m.making_up.core
    if row is None:
        return []
    summary = cores.summarise(row)
    facts = tuple(fact for fact in _facts(row, summary) if fact.value)
    return [b.Heading("Core"), b.FactList(facts), *(b.Prose(words) for words in summary.warnings)]


def _facts(row: Core, summary: cores.CoreSummary) -> tuple[b.Fact, ...]:
    return (
        b.Fact("Core", row.item.number), b.Fact("Cast", local_day(row.cast_on)), b.Fact("Material", row.material),
        row_fact("Water to plaster, by mass", row, "water_plaster_pct"),
        b.Fact("Armature", ", ".join(filter(None, [row.armature, row.armature_place]))),
        row_fact("Linear change on setting", row, "linear_change_pct"), row_fact("Dry mass", row, "dry_mass_g"),
        b.Fact("Waterproofed with", row.sealing),
        row_fact("Temperature of it", row, "sealing_temperature_degc"), row_fact("Time in it", row, "sealing_h"),
        row_fact("Mass after waterproofing", row, "sealed_mass_g"),
        figure_fact(summary.taken_up, "Taken up in waterproofing"), figure_fact(summary.leak, "Leak test"),
        row_fact("Wires", row, "wires_g"), *(figure_fact(figure) for figure in summary.ready),
        b.Fact("The metal stops", row.metal_stops), b.Fact("Vents and drains", row.vents),
    )  # fmt: skip


def drying(m: Making, summary: RunSummary) -> list[b.Block]:
    """The curve of each skinned core of this copy, and how it was closed."""
    own = {shell.pk for shell in m.shells}
    found: list[b.Block] = []
    for each in summary.dryings:
        if each.shell.pk in own:
            found += _curve(each)
    return found


def _curve(each: Drying) -> list[b.Block]:
    chart = drying_chart(each)
    rows = tuple(
        (
            local_day(point.weighing.at), f"{point.weighing.mass_g:.1f}", figure_cell(point.gain),
            figure_cell(point.efficiency), point.weighing.conditions,
        )
        for point in each.points
    )  # fmt: skip
    left = ()
    if each.residue is not None:
        left = (b.FactList((figure_fact(each.residue, "Residue inside"),), leads=True), b.Prose(each.residue.note))
    return [
        b.Heading("Drying, and closing the core", 2), b.Prose(f"{each.word.capitalize()}. {each.sentence}"),
        *([b.ChartBlock(chart)] if chart else []), b.FigureTable(CURVE, rows, caption=f"{each.shell} weighed"),
        *left, *(block for closing in each.closings if closing.is_signed for block in _closing(closing)),
    ]  # fmt: skip


def _closing(row: CoreClosing) -> list[b.Block]:
    acid = row_fact("pH of the last rinse", row, "rinse_ph")
    facts = (
        b.Fact("Decision", row.get_decision_display()), b.Fact("On", local_day(row.decided_on)),
        b.Fact("Rinsed with", row.rinsing), b.Fact(acid.label, acid.value), b.Fact("Neutralised", row.neutralising),
        b.Fact("Pinholes", "" if row.pinholes_count is None else str(row.pinholes_count)),
        b.Fact("Looked for with", row.pinhole_test), b.Fact("Closed with", row.sealed_with),
        b.Fact("Closed on", local_day(row.sealed_on)), b.Fact("Vent left", row.vent),
        b.Fact("Signed", f"{row.signed_by}, {row.signed_role}, {local_day(row.signed_at)}"),
    )  # fmt: skip
    kept = tuple(fact for fact in facts if fact.value)
    return [b.FactList(kept, leads=bool(row.note)), b.Prose(sentences(row.note))]
