"""The findings of a condition report as tables: numbered findings, what was noted, definitions, what changed."""

from collections import Counter

from records.models import ConditionReport, Finding, Grade, Urgency
from records.pdf import blocks as b
from records.pdf.tables import Row
from records.reports.figures import in_words
from records.reports.parts import local_day, sentences

URGENCY_WORDS = {
    Urgency.NONE: "0 none",
    Urgency.YEARS: "1 within years",
    Urgency.MONTHS: "2 within 12 months",
    Urgency.WEEKS: "3 within weeks",
}
COLUMNS = (
    b.Column("No.", align="right"), b.Column("Finding"), b.Column("Layer"), b.Column("Where"), b.Column("Extent"),
    b.Column("Severity"), b.Column("Stability"), b.Column("Urgency"), b.Column("Since the last"),
)  # fmt: skip
SCALES = (
    "Severity 0–3: none, minor, moderate, major. Urgency 0–3: next routine survey, within years, within 12 months, "
    "immediate or within weeks. Stability is an axis of its own: a large old dent is major and stable."
)


def findings_table(findings: list[Finding]) -> b.FigureTable:
    return b.FigureTable(
        COLUMNS,
        tuple(_row(f) for f in findings),
        note=SCALES,
        empty="No findings: nothing was seen that departs from sound.",
    )


def _row(finding: Finding) -> Row:
    return (
        str(finding.position_count), str(finding.term), finding.layer, finding.location, _unbroken(finding.extent),
        _unbroken(finding.get_severity_display()), finding.get_stability_display(),
        URGENCY_WORDS.get(finding.urgency, ""),
        finding.get_comparison_display(),
    )  # fmt: skip


def _unbroken(words: str) -> str:
    """“1.5 mm” stays on one line."""
    return words.replace(" ", "\u00a0") if len(words) < 12 else words


def notes(findings: list[Finding]) -> list[b.Block]:
    """What was noted or is to be done, beneath the table and by its numbers."""
    said = [(f, sentences(f.note, f"To do: {f.action}" if f.action else "")) for f in findings]
    return [b.Prose(f"{f.position_count} · {f.term}, {f.location}: {words}") for f, words in said if words]


def definitions(findings: list[Finding]) -> list[b.Block]:
    """Each term that was used, in neutral words."""
    terms = {f.term.pk: f.term for f in findings if f.term.definition}
    if not terms:
        return []
    rows = tuple((t.label, t.definition) for t in sorted(terms.values(), key=lambda t: t.label))
    return [b.Heading("The terms used"), b.FigureTable((b.Column("Term"), b.Column("Meaning")), rows)]


def comparison(report: ConditionReport, findings: list[Finding]) -> list[b.Block]:
    """The statement of change, which the pair of reports exists for, and the two examinations side by side."""
    before = report.previous
    if before is None and not report.change:
        return []
    blocks: list[b.Block] = [b.Heading("Comparison"), b.Prose(statement(report, findings))]
    if before is not None:
        columns = (
            b.Column(""),
            b.Column(f"{before.number}, {local_day(before.examined_on)}"),
            b.Column(f"{report.number}, {local_day(report.examined_on)}"),
        )
        blocks.append(b.FigureTable(columns, tuple(_side_by_side(before, report))))
        blocks += compared(before, report, findings)
    return blocks


def compared(before: ConditionReport, now: ConditionReport, findings: list[Finding]) -> list[b.Block]:
    """Each finding then and now. One that was not re-examined says nothing of now."""
    old = {finding.position_count: finding for finding in before.findings.select_related("term")}
    rows = [_then_and_now(old.get(finding.position_count), finding) for finding in findings]
    if not rows:
        return []
    columns = (b.Column("No.", align="right"), b.Column("Finding"), b.Column(before.number), b.Column(now.number),
               b.Column("Since then"))  # fmt: skip
    return [b.FigureTable(columns, tuple(rows), caption="Finding by finding")]


def _then_and_now(old: Finding | None, now: Finding) -> Row:
    skipped = now.comparison == Finding.Comparison.NOT_REEXAMINED
    return (
        str(now.position_count), f"{now.term}, {now.location}", _as_seen(old) if old else "not there",
        "not looked at" if skipped else _as_seen(now), now.get_comparison_display() or "not said",
    )  # fmt: skip


def _as_seen(finding: Finding) -> str:
    told = (finding.extent, finding.get_severity_display(), finding.get_stability_display())
    return ", ".join(filter(None, told))


def statement(report: ConditionReport, findings: list[Finding]) -> str:
    counts = Counter(f.get_comparison_display() for f in findings if f.comparison)
    tally = f"Findings compared: {', '.join(f'{n} {word}' for word, n in counts.items())}" if counts else ""
    against = (
        f"Compared with {report.previous.number} of {local_day(report.previous.examined_on)}" if report.previous else ""
    )
    said = report.get_change_display().capitalize() if report.change else "No statement of change has been made"
    light = (
        f"Under the light of this report ({report.light})" if report.change == ConditionReport.Change.NO_CHANGE else ""
    )
    return sentences(against, f"{light}: {said.lower()}" if light else said, report.change_words, tally)


def _side_by_side(before: ConditionReport, now: ConditionReport) -> list[Row]:
    pairs = [
        ("Grade", grade_words(before), grade_words(now)),
        ("Stability", before.get_stability_display(), now.get_stability_display()),
        ("Mass", in_words(before, "mass_g"), in_words(now, "mass_g")),
        ("Findings", str(before.findings.count()), str(len(now.findings.all()))),
        ("Light", before.light, now.light),
    ]
    return [row for row in pairs if row[1] or row[2]]


def grade_words(report: ConditionReport) -> str:
    """“1 minor”; the worst finding, unless a person gave another with a reason."""
    return Grade(report.overall_grade).label
