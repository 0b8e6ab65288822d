"""One run of a copy on paper: bath, plan, charge with its evidence, balance, walls, interruptions, chart."""

from process.models import Shell, Trace
from process.reports.cores import drying
from process.reports.judgements import interruptions
from process.reports.making import Making
from process.reports.segments import segments
from process.summaries.baths import AnalysisSummary
from process.summaries.cathodes import CathodeSummary
from process.summaries.charts import run_chart
from process.summaries.runs import RunSummary
from process.summaries.thickness import specification_of, wall_of
from process.summaries.traces import accepted
from process.summaries.words import run_sentence
from records.pdf import blocks as b
from records.pdf.tables import Row
from records.reports.figures import figure_cell, figure_fact, number_of, row_fact
from records.reports.parts import local_day, printed, sentences
from records.units import other_unit, show
from records.wording import phrases

SHELLS = (
    b.Column("Shell"), b.Column("On"), b.Column("Coat"), b.Column("Area", "dm²", "right"),
    b.Column("Gain", "g", "right"),
    b.Column("Mean wall", "mm", "right", calculated=True),
    b.Column("Thinnest", "mm, measured", "right", empty="not measured"),
)  # fmt: skip
POINTS = (
    b.Column("Shell"),
    b.Column("Where"),
    b.Column("Thickness", "mm", "right"),
    b.Column("Method"),
    b.Column("Measured"),
)


def run(m: Making, summary: RunSummary) -> list[b.Block]:
    chart = run_chart(summary)
    blocks: list[b.Block] = [
        b.Heading(f"Run {summary.run.number}"), b.Prose(sentences(run_sentence(summary), summary.run.outcome_words)),
        *bath(summary, m.analyses[summary.run.number]), b.Heading("Plan and result", 2), b.FactList(facts(summary)),
        b.Prose("\n\n".join(_judgement(summary))),
    ]  # fmt: skip
    return [
        *blocks,
        *segments(summary),
        *walls(m, summary),
        *drying(m, summary),
        *([b.ChartBlock(chart)] if chart else []),
        *interruptions(m, summary),
    ]


def _judgement(summary: RunSummary) -> list[str]:
    chosen = f"Charge chosen because: {summary.charge.reason}" if summary.charge.reason else ""
    efficiency = f"Efficiency. {summary.result.sentence}" if summary.result and summary.result.sentence else ""
    return [sentences(words) for words in (chosen, efficiency) if words]


def bath(summary: RunSummary, analysis: AnalysisSummary | None) -> list[b.Block]:
    """The bath by its last analysis before the start, and how warm it was."""
    row = summary.run.bath
    warmth = [line.row.temperature_degc for line in summary.sheet.lines if line.row.temperature_degc is not None]
    span = f"{min(warmth):.1f} to {max(warmth):.1f}" if warmth else ""
    known = [b.Fact("Bath", f"{row.number}, {row.name}"), row_fact("Volume", row, "volume_l")]
    if analysis:
        sampled = f"{analysis.analysis.number}, {local_day(analysis.analysis.sampled_at)}"
        known += [
            b.Fact("Last analysis before the start", sampled),
            *(figure_fact(each.figure, each.label.capitalize()) for each in analysis.found),
        ]
    else:
        known.append(b.Fact("Last analysis before the start", "none"))
    return [b.Heading("Bath", 2), b.FactList((*known, b.Fact("Temperature in the run", span, "°C")))]


def facts(summary: RunSummary) -> tuple[b.Fact, ...]:
    """Planned beside delivered; every derived figure carries its kind of evidence."""
    row, plan = summary.run, summary.plan
    density = row_fact("Current density, planned", row, "planned_current_density_a_dm2")
    echoed = other_unit(row.planned_current_density_a_dm2, "_a_dm2")
    found = [
        b.Fact(density.label, f"{density.value} {density.unit} ({echoed})", "", density.kind),
        row_fact("Target mean thickness", row, "planned_thickness_mm"),
        figure_fact(plan.charge if plan else None, "Charge, planned"),
        b.Fact("Ramp, planned", _ramp_words(summary)), b.Fact("Power unit", str(row.power_unit or "")),
        *_passed(summary),
        figure_fact(summary.result.gain if summary.result else None, "Gain on the balance"), _efficiency(summary),
    ]  # fmt: skip
    return tuple(fact for fact in found if fact.label)


def is_blank(summary: RunSummary) -> bool:
    """Nobody wrote down what passed: a sum over nothing is not a charge of 0 Ah."""
    return not summary.sheet.lines and summary.charge.meter is None and summary.charge.trace is None


def _passed(summary: RunSummary) -> list[b.Fact]:
    """The charge by each evidence, the time it took, and what it could deposit."""
    if is_blank(summary):
        return [b.Fact(label, "") for label in ("Charge passed", "Time elapsed", "Mass by Faraday’s law")]
    chosen = summary.charge.chosen
    return [
        figure_fact(chosen, f"{chosen.label}, chosen"), *_other_charges(summary), figure_fact(summary.elapsed),
        figure_fact(summary.energised), figure_fact(summary.theory, "Mass by Faraday’s law"),
    ]  # fmt: skip


def _ramp_words(summary: RunSummary) -> str:
    """“0.24 A for 2.0 h, 0.64 A for 2.0 h, then 1.21 A”."""
    stages = summary.plan.stages if summary.plan else ()
    if len(stages) < 2:
        return "none: the full current from the start" if stages else ""
    steps = [f"{show(each.current.value, '_a')} for {show(each.time.value, '_h')}" for each in stages[:-1]]
    return f"{', '.join(steps)}, then {show(stages[-1].current.value, '_a')}"


def _other_charges(summary: RunSummary) -> list[b.Fact]:
    """The evidence that was not chosen, each in percent of the chosen one, and the files of the logger."""
    charge = summary.charge
    others = [each for each in charge.beside if not each.is_chosen and each.figure is not None]
    found = [
        figure_fact(each.figure, f"{each.figure.label}, {each.apart_words} against the chosen")
        if each.apart_words
        else figure_fact(each.figure)
        for each in others
    ]
    if charge.meter is None:
        found.append(b.Fact("Charge by the meter", ""))
    return [*found, *(b.Fact("Logger’s file", _file_words(trace)) for trace in accepted(summary.run))]


def _file_words(trace: Trace) -> str:
    """Enough to find the very file again, and why it is believed."""
    because = f"; believed because: {trace.reason}" if trace.reason else ""
    return f"{trace.original_name}, {trace.sample_count:,} samples, SHA-256 {trace.sha256}{because}"


def _efficiency(summary: RunSummary) -> b.Fact:
    if summary.result is None:
        return b.Fact("Efficiency", "")
    fact = figure_fact(summary.result.efficiency)
    return b.Fact(
        f"Efficiency, {summary.result.band}" if summary.result.band else fact.label, fact.value, fact.unit, fact.kind
    )


def walls(m: Making, summary: RunSummary) -> list[b.Block]:
    """Calculated means beside the measured minimum, then every measured point; never one as the other."""
    own = m.own(summary)
    points = [(each, point) for each in own for point in each.shell.thickness_points.all()]
    others = [each for each in summary.cathodes if each not in own]
    note = f"In the same run, not in this copy: {', '.join(each.cathode.label for each in others)}." if others else ""
    blocks: list[b.Block] = [
        b.FigureTable(SHELLS, tuple(map(_shell_row, own)), caption="Shells of this copy", note=note)
    ]
    blocks += [b.Prose(_wall_words(each)) for each in own if each.thickness.value is not None]
    blocks += [b.Prose(words) for each in own if (words := _separation(each.shell))]
    if points:
        rows = tuple(
            (
                str(each.shell),
                point.place,
                number_of(point, "thickness_mm")[0],
                point.get_method_display(),
                local_day(point.measured_on),
            )
            for each, point in points
        )
        blocks.append(b.FigureTable(POINTS, rows, caption="Thickness measured", empty=""))
    return [*blocks, *(block for each in own for block in _maps(each))]


def _maps(each: CathodeSummary) -> list[b.Block]:
    """The wall against its specification, and its points on their pictures."""
    points = list(each.shell.thickness_points.select_related("photo"))
    specified = specification_of(each.shell)
    mean = each.face or each.thickness
    wall = wall_of(each.shell, points, mean, specified.thickness_min_mm if specified else None)
    words = f"{each.shell}: {sentences(wall.sentence, wall.scatter_words)}" if points else ""
    if not wall.maps:
        return [b.Prose(words)] if words else []
    drawn = [(one.shown, printed(one.photo) if one.photo else None) for one in wall.maps]
    return [b.SpotMapBlock(shown, photo, "" if index else words) for index, (shown, photo) in enumerate(drawn)]


def _separation(shell: Shell) -> str:
    """How it came off, what was seen first, and what the coupon told."""
    parts = (
        ("Came off", sentences(shell.get_ease_grade_display().partition(": ")[2], shell.ease).rstrip(".")),
        ("Edge", shell.get_edge_profile_display()),
        ("First look", shell.inspection),
        ("Coupon", shell.coupon),
    )
    said = sentences(*(f"{title}: {words}" for title, words in parts if words))
    return f"{shell}. {said}" if said else ""


def _shell_row(each: CathodeSummary) -> Row:
    cathode = each.cathode
    resistance = " ".join(number_of(cathode, "coat_resistance_ohm"))
    coat = ", ".join(filter(None, [cathode.coat.label if cathode.coat else "", resistance]))
    measured = each.minimum if each.minimum and each.minimum.kind == "measured" else None
    return (
        f"{each.shell}, {cathode.get_side_display() or cathode.label}", each.source.number if each.source else "", coat,
        number_of(cathode, "total_area_dm2")[0], figure_cell(each.gain), figure_cell(each.thickness),
        figure_cell(measured),
    )  # fmt: skip


def _wall_words(each: CathodeSummary) -> str:
    points = list(each.shell.thickness_points.all())
    methods = phrases.listed(list(dict.fromkeys(point.get_method_display() for point in points)))
    words = phrases.wall_thickness(
        each.thickness.value, each.share.value or 0.0, [p.thickness_mm for p in points], methods,
        weighed=each.thickness.kind != "estimated",
    )  # fmt: skip
    return f"{each.shell}: {words}"
