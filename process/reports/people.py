"""Who did what, from the rows themselves."""

from datetime import date, datetime

from django.utils import timezone

from process.reports.making import Making
from process.summaries.runs import RunSummary
from records.extensions import PaperContext
from records.pdf import blocks as b
from records.reports.parts import local_day

Deed = tuple[str, object, date | datetime | None]


def who(m: Making, context: PaperContext) -> list[b.Block]:
    columns = (b.Column("What"), b.Column("Who"), b.Column("When"))
    deeds = sorted((deed for deed in [*_deeds(m), _issue(context)] if deed[1]), key=_day)
    rows = tuple(dict.fromkeys((what, str(person), local_day(when)) for what, person, when in deeds))
    return [b.Heading("Who did what"), b.FigureTable(columns, rows)]


def _day(deed: Deed) -> date:
    """By the museum's own clock; what has no date comes last."""
    when = deed[2]
    return timezone.localdate(when) if isinstance(when, datetime) else when or date.max


def signatures(context: PaperContext) -> list[b.Block]:
    """Who issued the report, and room for the ink of another: two roles see it."""
    other = "Registrar" if context.role.lower() == "conservator" else "Conservator"
    issued = b.Signer(context.issued_by, context.role.capitalize(), local_day(context.issued_at))
    return [b.Heading("Signatures"), b.Signatures((issued, b.Signer("", other)))]


def _issue(context: PaperContext) -> Deed:
    return "issued this report", f"{context.issued_by}, {context.role}", context.issued_at


def _deeds(m: Making) -> list[Deed]:
    deeds: list[Deed] = [(f"assessed the risk, {risk.number}", risk.assessor, risk.assessed_on) for risk in m.risks]
    deeds += [
        (f"examined {report.item.number}, {report.number}", report.examiner, report.examined_on) for report in m.reports
    ]
    for mould in m.moulds:
        deeds += [(f"made mould {mould.item.number}", mould.made_by, mould.made_on)]
        deeds += [(f"accepted mould {mould.item.number}", mould.accepted_by, mould.accepted_on)]
    deeds += [deed for each in m.runs for deed in _run_deeds(each)]
    deeds.append(("made it up", m.making_up.made_up_by, m.making_up.made_up_on))
    deeds += [(f"finish: {step.finish.label}", step.done_by, step.done_on) for step in m.finishes]
    for mark in m.marks:
        deeds += [
            (f"marked it {mark.text}", mark.made_by, mark.made_on),
            ("witnessed the mark", mark.witness, mark.made_on),
        ]
    for each in m.inspections:
        deeds += [("inspected it", each.inspector, each.inspected_on)]
        deeds += [
            ("signed the inspection", f"{each.signed_by}, {each.signed_role}" if each.is_signed else "", each.signed_at)
        ]
    return deeds + [(f"gave concession {c.number}", f"{c.given_by}, {c.given_role}", c.given_on) for c in m.concessions]


def _run_deeds(summary: RunSummary) -> list[Deed]:
    read = dict.fromkeys(line.row.person for line in summary.sheet.lines if line.row.person)
    number, start = summary.run.number, summary.sheet.started_at
    return [
        (f"ran {number}", summary.run.operator, start),
        *((f"wrote the sheet of {number}", person, start) for person in read),
    ]
