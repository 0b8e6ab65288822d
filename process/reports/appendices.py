"""Behind the report: how each figure follows, what was written at the bench, and the words explained."""

import re
from collections.abc import Iterator

from django.utils import timezone

from process.chemistry.terms import pretty
from process.chemistry.worked import Entry, Working
from process.reports.making import Making
from process.summaries import cores
from process.summaries.runs import RunSummary
from process.summaries.sheet import Line
from process.summaries.struck import lines_with_struck
from records.figures import Figure
from records.pdf import blocks as b
from records.pdf.tables import Row
from records.reports.figures import number_of
from records.units import figure as written
from records.wording.phrases import joined

SHEET = (
    b.Column("Local time"), b.Column("Current", "A", "right"), b.Column("Voltage", "V", "right"),
    b.Column("Bath", "°C", "right"),
    b.Column("Meter", "Ah", "right"), b.Column("Passed", "Ah", "right", calculated=True),
    b.Column("What happened", empty=""), b.Column("By", empty=""),
)  # fmt: skip
TERMS = (
    ("ampere-hour", "The charge that one ampere carries in one hour; it decides how much metal can be deposited."),
    ("bath", "The solution in which metal passes from the anode to the mould."),
    (
        "calculated, measured",
        "A calculated figure follows from others by a formula and is hatched here; a measured one was read off.",
    ),
    ("cathode", "What hangs in the bath to receive metal: a mould or a core that was made to conduct."),
    (
        "concession",
        "A named person’s permission to go on without the usual evidence, with a reason and limits of use.",
    ),
    ("core", "A positive body that stays inside the piece under a skin of metal."),
    ("current density", "Current for each square decimetre of surface; too much makes the metal rough and dark."),
    ("efficiency", "Mass gained on the balance, in per cent of the mass that the charge could deposit."),
    ("electrotype", "A piece whose visible form was grown by electricity, atom by atom, in or on a mould."),
    ("generation", "How many positive copies stand between the original and this piece, itself included."),
    ("mean wall", "The average thickness over a whole surface; a hollow place may hold a third of it."),
    ("mould", "A negative taken from the piece that is copied."),
    ("pull", "One use of a mould to make one deposit or cast."),
    ("shell", "The metal taken off the mould, before it is backed and joined."),
)

INTRO = (
    "Each calculated figure of this report: formula, numbers put in and where they come from, sources. A ± is one "
    "standard uncertainty; it holds what the numbers with a ± bring in, for of the others nobody stated one."
)


def workings(m: Making) -> list[b.Block]:
    """Each formula once, with a row for each figure that follows by it; each constant once."""
    found = list(dict.fromkeys(_workings(m)))
    if not found:
        return []
    formulas: dict[str, list[tuple[str, Working]]] = {}
    for title, each in found:
        formulas.setdefault(each.equation, []).append((title, each))
    tables = [_formula(rows) for rows in formulas.values()]
    return [b.Appendix("A", "How the figures follow", INTRO), *tables, _constants([each for _, each in found])]


def _formula(rows: list[tuple[str, Working]]) -> b.FigureTable:
    first = rows[0][1]
    where = "; ".join(f"{symbol} is {' or '.join(meant)}" for symbol, meant in _meanings(rows).items())
    columns = (b.Column("Figure"), b.Column("Numbers put in, and what follows"))
    lines = tuple((title, _typeset(each.substitution), _known_as(each)) for title, each in rows)
    if any(known for *_, known in lines):
        columns = (*columns, b.Column("Known as", empty=""))
    else:
        lines = tuple(line[:2] for line in lines)
    note = f"Here {where}. Source: {first.source}" if where else f"Source: {first.source}"
    return b.FigureTable(columns, lines, caption=f"{first.title.rstrip('.')}: {first.equation}", note=note)


def _meanings(rows: list[tuple[str, Working]]) -> dict[str, list[str]]:
    """What each letter stands for in the rows of a table: one formula serves several metals, a face and a whole."""
    found: dict[str, list[str]] = {}
    for _, each in rows:
        for term in (*each.inputs, *each.constants):
            meant = found.setdefault(term.symbol, [])
            meant += [_of(term)] if _of(term) not in meant else []
    return found


def _typeset(substitution: str) -> str:
    """A typographer's minus before a number."""
    return re.sub(r"(?<![\w.])-(?=\d)", "\u2212", substitution)


def _of(term: Entry) -> str:
    unit = pretty(term.unit)
    return f"{term.label}, {unit}" if unit else term.label


def _known_as(found: Working) -> str:
    """Which of the numbers put in were measured, and which follow from others."""
    kinds: dict[str, list[str]] = {}
    for term in found.inputs:
        if term.evidence:
            kinds.setdefault(term.evidence, []).append(term.symbol)
    return "; ".join(f"{', '.join(dict.fromkeys(symbols))} {kind}" for kind, symbols in kinds.items())


def _constants(found: list[Working]) -> b.FigureTable:
    columns = (b.Column("Constant"), b.Column("What it is"), b.Column("Value", align="right"), b.Column("Source"))
    entries = dict.fromkeys(
        (term.symbol, term.label, term.text, term.source) for each in found for term in each.constants
    )
    return b.FigureTable(columns, tuple(entries), caption="Constants")


def _workings(m: Making) -> Iterator[tuple[str, Working]]:
    for title, figure in named_figures(m):
        if figure is not None and figure.working is not None:
            yield title, figure.working


def named_figures(m: Making) -> Iterator[tuple[str, Figure | None]]:
    """Every derived figure of the report with a title that says of what."""
    for each in m.runs:
        number = each.run.number
        analysis = m.analyses[number]
        for found in analysis.found if analysis else ():
            yield f"{found.label.capitalize()} by {analysis.analysis.number}", found.figure
        for figure in (*(each.plan.figures if each.plan else ()), *each.charge.known, each.theory,
                       each.result.efficiency if each.result else None):  # fmt: skip
            yield (f"{figure.label}, run {number}" if figure else "", figure)
        for drying in each.dryings:
            for figure in (drying.last.efficiency if drying.last else None, drying.residue):
                yield (f"{figure.label}, {drying.shell}" if figure else "", figure)
        for part in m.own(each):
            for figure in (part.share, part.thickness, part.face, part.edge):
                yield (f"{figure.label}, {part.shell}" if figure else "", figure)
            for gap in each.interruptions:
                for found in gap.boundaries:
                    if found.wall.label == part.cathode.label:
                        yield f"{found.depth.label}, {gap.duration} without current", found.depth
                        yield f"The same, scaled to the trimmed face of {part.shell}", found.at_face
    if m.making_up.core:
        known = cores.summarise(m.making_up.core)
        for figure in (known.taken_up, known.leak, *known.ready):
            yield (f"{figure.label}, {m.making_up.core}" if figure else "", figure)
    for figure in (m.figures.fill, m.figures.surface, m.figures.skin, *m.figures.mass, *m.figures.size):
        yield (f"{figure.label}, {m.copy.number}" if figure else "", figure)


def readings(m: Making) -> list[b.Block]:
    if not m.runs:
        return []
    intro = (
        "What was written at the bench, by the museum’s clock with its distance from UTC; the charge follows from it."
    )
    return [b.Appendix("B", "Readings", intro), *(_sheet(each) for each in m.runs)]


def _sheet(summary: RunSummary) -> b.FigureTable:
    rows = tuple(_line(line) for line in lines_with_struck(summary.run, summary.sheet))
    return b.FigureTable(SHEET, rows, caption=f"Sheet of run {summary.run.number}", empty="The sheet is empty.")


def _line(line: Line) -> Row:
    row, local = line.row, timezone.localtime(line.row.at)
    what = row.get_kind_display() if line.is_event else "drifted from what was set" if line.drifted else ""
    struck = f"struck out: {row.struck_reason}" if row.is_struck else ""
    said = joined([what, *line.words, row.note, struck])
    by = (row.person.initials or row.person.name) if row.person else ""
    numbers = (number_of(row, field)[0] for field in ("current_a", "voltage_v", "temperature_degc"))
    meter = "" if line.is_event else number_of(row, "meter_ah")[0]
    return (
        f"{local.day} {local:%b %H:%M} {local:%z}"[:-2].replace(" ", "\u00a0"),
        *numbers,
        meter,
        "" if row.is_struck else written(line.charge_ah, "_ah")[0],
        said,
        by,
    )


def definitions() -> list[b.Block]:
    intro = "For readers from outside the workshop."
    return [
        b.Appendix("C", "The words explained", intro),
        b.FigureTable((b.Column("Word"), b.Column("Meaning")), TERMS),
    ]
