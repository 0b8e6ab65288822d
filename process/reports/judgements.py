"""What the report says of a wall that cannot be trusted everywhere: interruptions, coupons, defects, failures."""

from django.utils import timezone

from process.models import CouponTest, Defect
from process.reports.making import Making
from process.summaries.interruptions import Interruption
from process.summaries.runs import RunSummary
from process.summaries.wall_limits import WallLimit, limits_of
from records.figures import Figure
from records.pdf import blocks as b
from records.pdf.tables import Row
from records.reports.figures import number_of, written
from records.reports.parts import local_day
from records.wording.phrases import joined

UNKNOWN = "Nothing is written on the sheet: whether the current was ever gone is not known."
GAPS = (
    b.Column("Current gone"),
    b.Column("For"),
    b.Column("Boundary", "mm from the face", "right"),
    b.Column("On the trimmed face", "mm", "right"),
    b.Column("Risk"),
)
COUPONS = (
    b.Column("Coupon"), b.Column("Cut from", empty=""), b.Column("Section", "mm", "right", empty=""),
    b.Column("Bend test"), b.Column("Tested", empty=""),
)  # fmt: skip
DEFECTS = (
    b.Column("Shell"), b.Column("Defect"), b.Column("Where"), b.Column("Severity"), b.Column("Found"),
    b.Column("Cause", empty=""),
)  # fmt: skip


def limits(m: Making) -> list[WallLimit]:
    """Those of the shells in this copy."""
    mine = {shell.pk for shell in m.shells}
    return [limit for each in m.runs for limit in limits_of(each) if limit.shell and limit.shell.pk in mine]


def notices(m: Making) -> list[b.Block]:
    """What the walls forbid, before anything else is read."""
    return [b.Notice(f"Shell {limit.name}: {limit.sentence}", limit.reason) for limit in limits(m)]


def interruptions(m: Making, summary: RunSummary) -> list[b.Block]:
    """Each stretch without current, how deep in the wall its boundary lies, and how it was judged."""
    blocks: list[b.Block] = [b.Heading("Interruptions", 2)]
    if not summary.interruptions:
        return [*blocks, b.Prose("The current was never gone." if summary.sheet.lines else UNKNOWN)]
    shells = {each.cathode.label: str(each.shell) for each in m.own(summary)}
    rows = tuple(_gap_row(gap, shells) for gap in summary.interruptions)
    grown = {each.shell.pk for each in m.own(summary)}
    note = "The boundary is counted from the face that touched the mould or core; depths of the shells in this copy."
    judged = [c for c in m.concessions if grown & {item.pk for item in c.items.all()}]
    words = [_seen(gap) for gap in summary.interruptions]
    words += [_rule_words(gap) for gap in summary.interruptions if gap.makes_boundary]
    words += [f"Judged in concession {c.number}: {c.reason}" for c in judged]
    return [*blocks, b.FigureTable(GAPS, rows, note=note), b.Prose("\n\n".join(words))]


def _gap_row(gap: Interruption, shells: dict[str, str]) -> Row:
    began = timezone.localtime(gap.began_at)
    own = {shells[each.wall.label]: each for each in gap.boundaries if each.wall.label in shells}
    return (
        f"{local_day(began)}, {began:%H:%M}",
        gap.duration.replace(" ", "\u00a0"),
        _depths({shell: each.depth for shell, each in own.items()}),
        _depths({shell: each.at_face for shell, each in own.items() if each.at_face}),
        gap.risk_word if gap.makes_boundary else "no boundary",
    )


def _seen(gap: Interruption) -> str:
    """What was seen and done, as a sentence beneath the table: a narrow column would make a wall of it."""
    at = timezone.localtime(gap.began_at)
    open_questions = f"not answered: {', '.join(gap.unanswered)}" if gap.unanswered else ""
    words = joined(word.rstrip(".") for word in [*gap.words, open_questions])
    return f"{local_day(at)}, {at:%H:%M}: {words or 'nothing was written down'}."


def _depths(figures: dict[str, Figure]) -> b.Cell:
    known = [f"{shell}:\u00a0{written(each)[0]}" for shell, each in figures.items() if each.value is not None]
    return b.Cell("\n".join(known), calculated=bool(known))


def _rule_words(gap: Interruption) -> str:
    at = timezone.localtime(gap.began_at)
    start = f"{local_day(at)}, {at:%H:%M}: {gap.risk_word}"
    row = gap.set_by_hand
    if row is None:
        return f"{start} of lamination by the museum’s rule: {gap.rule_words}."
    by = f"set by {row.set_risk_by}, {row.set_risk_role}, {local_day(row.set_risk_on)}"
    return f"{start} of lamination, {by}: {row.set_risk_reason} By the rule it is {gap.rule_word}."


def evidence(m: Making) -> list[b.Block]:
    """Coupons and defects of the shells in this copy, and what the failure library holds of them."""
    pieces = [each.shell for summary in m.runs for each in m.own(summary)]
    coupons = [test for shell in pieces for test in shell.coupon_tests.all()]
    defects = list(Defect.objects.filter(shell__in=pieces).select_related("term", "shell__item"))
    failures = {f.pk: f for shell in pieces for f in shell.failures.all()}.values()
    blocks: list[b.Block] = []
    if coupons:
        blocks.append(b.FigureTable(COUPONS, tuple(map(_coupon_row, coupons)), caption="Coupons of the flange"))
    if defects:
        blocks.append(b.FigureTable(DEFECTS, tuple(map(_defect_row, defects)), caption="Defects of the deposit"))
    blocks += [b.Prose(f"Failure {f.number}: {f.title}. Lesson: {f.lesson}") for f in failures]
    return [b.Heading("Coupons and defects"), *blocks] if blocks else []


def _coupon_row(test: CouponTest) -> Row:
    words = ". ".join(filter(None, [test.words, test.note]))
    by = f", {test.tested_by}" if test.tested_by else ""
    tested = f"{local_day(test.tested_on)}{by}" if test.tested_on else ""
    return test.number, test.taken_from, number_of(test, "section_mm")[0], words, tested


def _defect_row(defect: Defect) -> Row:
    extent = f", {defect.extent}" if defect.extent else ""
    on = f", {local_day(defect.found_on)}" if defect.found_on else ""
    return (
        str(defect.shell), defect.term.label, f"{defect.location}{extent}", defect.get_severity_display(),
        f"{defect.get_stage_display()}{on}", f"{defect.cause} ({defect.get_certainty_display()})".strip(),
    )  # fmt: skip
