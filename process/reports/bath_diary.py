"""The diary of a bath on paper: its ledger, balance, what was made between the analyses, and every entry."""

from typing import Any

from django.utils.timezone import localtime

from process.models import Bath
from process.summaries.bath_charts import bath_chart
from process.summaries.bath_diary import KINDS, Entry, diary_of
from process.summaries.bath_page import BathReading, read_bath
from records import clock
from records.extensions import PaperContext
from records.pdf import blocks as b
from records.pdf.document import build
from records.reports.attached import record
from records.reports.figures import figure_cell
from records.reports.parts import head, local_day
from records.units import figure as written
from records.wording.binding import NO_BREAK

KIND = "Bath diary"
SINCE = (b.Column("Counted"), b.Column("On"), b.Column("Charge", "Ah", "right"), b.Column("Per litre", "Ah/L", "right"))
COMPARED = (b.Column("Constituent"), b.Column("Predicted", "g/L", "right"), b.Column("Found", "g/L", "right"),
            b.Column("Judged"))  # fmt: skip
BETWEEN = (b.Column("Between"), b.Column("Run"), b.Column("Charge", "Ah", "right"), b.Column("Ledger", "Ah", "right"),
           b.Column("Copies"))  # fmt: skip
ENTRIES = (b.Column("Time"), b.Column("What"), b.Column("Words"), b.Column("Person"), b.Column("Lot"))
SHORT_NAME = 24  # stands on one line: a diary has many lines
CAUTION = "Acid and copper salts burn and poison water life; acid runs slowly into the bath, never water into acid."


def blocks(reading: BathReading, entries: list[Entry]) -> list[b.Block]:
    chart = bath_chart(reading.bath, reading.analyses, reading.ledger, reading.services, reading.additions)
    return [
        b.Caution(f"{CAUTION} Local rules and licensed practice decide."),
        b.Heading("Ampere-hour ledger"), b.FigureTable(SINCE, tuple(_since_row(each) for each in reading.since)),
        b.Heading("Made between the analyses"),
        b.FigureTable(BETWEEN, tuple(_between_rows(reading)), empty="No run has started in this bath."),
        *([b.Heading("Composition and charge"), b.ChartBlock(chart)] if chart else []), *_balance(reading),
        b.Heading("Entries, the latest first"),
        b.FigureTable(ENTRIES, tuple(map(_entry_row, entries)), empty="Nothing is entered yet."),
    ]  # fmt: skip


def _number(value: float | None, suffix: str) -> str:
    return "" if value is None else written(value, suffix)[0]


def _since_row(each) -> tuple:
    on = local_day(each.at) or ("" if each.charge_ah is not None else "not recorded")
    return each.label, on, _number(each.charge_ah, "_ah"), _number(each.per_litre_ah_l, "_ah_l")


def _balance(reading: BathReading) -> list[b.Block]:
    balance = reading.last_balance
    if balance is None:
        return []
    rows = tuple(
        (each.label, figure_cell(each.predicted), figure_cell(each.measured), f"{each.word}. {each.sentence}")
        for each in balance.compared
    )
    title = f"Predicted against measured, {balance.first.analysis.number} to {balance.last.analysis.number}"
    return [b.Heading(title), b.FigureTable(COMPARED, rows)]


def _between_rows(reading: BathReading):
    for stretch in reversed(reading.stretches):
        ends = (
            f"{stretch.first.number if stretch.first else 'start'} – {stretch.last.number if stretch.last else 'now'}"
        )
        for each in stretch.runs:
            copies = ", ".join(copy.number for copy in each.copies) or "none"
            line = each.line
            yield ends, each.run.number, _number(line.charge_ah, "_ah"), _number(line.total_ah, "_ah"), copies


def _entry_row(entry: Entry) -> tuple:
    words = f"{entry.words} ({entry.struck_words})" if entry.is_struck else entry.words
    at = localtime(entry.at)
    person = entry.person.replace(" ", NO_BREAK) if len(entry.person) <= SHORT_NAME else entry.person
    return f"{at.day} {at:%b %Y %H:%M}".replace(" ", NO_BREAK), entry.title, words, person, entry.lot


def make(bath: Bath, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    reading = read_bath(bath, clock.today())
    entries = diary_of(bath, reading.ledger, KINDS)
    rows = {"bath": [bath], "limits": list(bath.limits.all())}
    for kind, title in KINDS.items():
        rows[title] = [entry.row for entry in entries if entry.kind == kind]
    data = record(KIND, bath.number, context, rows)
    paper = head(KIND, bath.number, f"Bath {bath.number}: {bath.name}", reading.standing.sentence, context)
    return build(paper, blocks(reading, entries), data, context.issued_at), data
