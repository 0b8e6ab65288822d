"""What stands on a condition report's page."""

from collections import Counter
from dataclasses import dataclass
from typing import Any

from django.db.models import Prefetch
from django.http import HttpRequest

from records import access, extensions, units
from records.mapping import maps_of
from records.models import Addendum, ConditionReport, DescentLink, Document, Finding, FindingMark, Grade, Term, Urgency
from records.mouldings import advice as doubt_of_day
from records.mouldings import days_after, moulding_of
from records.services.signing import report_gaps

FINDINGS = Finding.objects.select_related("term", "photo").prefetch_related(
    Prefetch("marks", FindingMark.objects.select_related("photo"))
)
ADDENDA = Prefetch("addenda", Addendum.objects.select_related("signed_by").prefetch_related("photos"))
STEPS = Prefetch("item__descendants", DescentLink.objects.select_related("target"))
REPORTS = ConditionReport.objects.select_related(
    "item", "commission", "examiner", "previous", "signed_by", "incident"
).prefetch_related(Prefetch("findings", FINDINGS), Prefetch("previous__findings", FINDINGS), "photos", ADDENDA, STEPS)

Stability, Comparison = Term.Stability, Finding.Comparison
# The least reassuring first.
BY_CONCERN = [Stability.ACTIVE, Stability.POSSIBLY_ACTIVE, Stability.NOT_ASSESSED, Stability.STABLE]
COMPARISON_STATES = {
    Comparison.NEW: "look", Comparison.WORSE: "look", Comparison.SAME: "done", Comparison.BETTER: "done",
    Comparison.TREATED: "done", Comparison.NOT_REEXAMINED: "open",
}  # fmt: skip
ANSWERED = (Comparison.SAME, Comparison.WORSE, Comparison.BETTER, Comparison.TREATED)
ANSWERS = [(kind.value, kind.label) for kind in ANSWERED]
PAPER, SHEET = "condition-report", "condition-sheet"


@dataclass(frozen=True)
class Shown:
    """A finding, what it was in the report compared with, and the state of the comparison."""

    finding: Finding
    before: Finding | None

    @property
    def state(self) -> str:
        return COMPARISON_STATES.get(self.finding.comparison, "")

    @property
    def waits(self) -> bool:
        return self.finding.comparison == Comparison.NOT_REEXAMINED

    @property
    def differs(self) -> bool:
        """Something that the last report said is said otherwise now."""
        told = ("severity", "stability", "extent", "location", "term_id")
        return self.before is not None and any(getattr(self.before, n) != getattr(self.finding, n) for n in told)


def context_of(request: HttpRequest, report: ConditionReport) -> dict[str, Any]:
    """Everything the templates of the page read."""
    findings = list(report.findings.all())
    photos = list(report.photos.all())
    gaps = [] if report.is_signed else report_gaps(report)
    return {
        "report": report,
        "findings": _beside_the_last(report, findings),
        "photos": photos,
        "maps": [map for map in maps_of(findings) if map.drawn],
        "addenda": list(report.addenda.all()) if report.is_signed else [],
        "gaps": gaps,
        "advice": [] if report.is_signed else _advice(report, findings, bool(photos)),
        "grade": Grade(report.overall_grade).label,
        "worst": Grade(report.worst_severity).label,
        "urgency": Urgency(max((f.urgency for f in findings), default=0)).label,
        "tally": _tally(findings) if report.previous else [],
        "answers": ANSWERS,
        "mass_kind": report.evidence("mass_g"),
        "mass_change": _mass_change(report),
        **_permissions(request, report),
        "moulding": moulding_of(report),
        "pairs": list(report.pairs.select_related("before", "after")),
        "days_after": days_after(report),
        "seen": seen_mark(report, findings),
        "later": list(report.next.all()),
        "paper": _paper(request, report, PAPER),
        "sheet": None if report.is_signed else _paper(request, report, SHEET),
        "documents": list(Document.objects.filter(kind=PAPER, number=report.number).order_by("-edition_count")),
    }


def seen_mark(report: ConditionReport, findings: list[Finding]) -> str:
    """What the signer has before their eyes; it differs as soon as anything was changed."""
    return f"{report.version}.{len(findings)}.{sum(finding.version for finding in findings)}"


def _beside_the_last(report: ConditionReport, findings: list[Finding]) -> list[Shown]:
    old = {f.position_count: f for f in report.previous.findings.all()} if report.previous else {}
    return [Shown(finding, old.get(finding.position_count)) for finding in findings]


def _tally(findings: list[Finding]) -> list[str]:
    counted = Counter(finding.comparison for finding in findings)
    return [f"{counted[kind]} {kind.label}" for kind in Comparison if counted[kind]]


def _mass_change(report: ConditionReport) -> str:
    """The difference from the mass in the report compared with, in words."""
    before = report.previous.mass_g if report.previous else None
    if before is None or report.mass_g is None:
        return ""
    change = round(report.mass_g - before, 6)
    if not change:
        return f"the same as in {report.previous.number}"
    return f"{units.show(abs(change), '_g')} {'more' if change > 0 else 'less'} than in {report.previous.number}"


def _permissions(request: HttpRequest, report: ConditionReport) -> dict[str, bool]:
    may_write = access.may(request.user, "write", ConditionReport)
    return {
        "may_write": may_write,
        "may_change": may_write and not report.is_signed,
        "may_sign": access.may(request.user, "sign condition report"),
    }


def worst_stability(findings: list[Finding]) -> str:
    present = {finding.stability for finding in findings}
    return next((stability for stability in BY_CONCERN if stability in present), "")


def _advice(report: ConditionReport, findings: list[Finding], has_photos: bool) -> list[str]:
    """What does not forbid a signature, but will be missed."""
    found = []
    if waiting := sum(f.comparison == Comparison.NOT_REEXAMINED for f in findings):
        found.append(f"{waiting} of {len(findings)} findings not re-examined: they are stated so, never as unchanged.")
    stability = worst_stability(findings)
    if stability and stability != report.stability:
        words = Stability(stability).label, report.get_stability_display()
        found.append(f"Among the findings the most doubtful stability is “{words[0]}”, the report says “{words[1]}”.")
    if doubt := doubt_of_day(report):
        found.append(doubt)
    if not has_photos:
        found.append(_without_photos(report))
    if not report.not_seen:
        found.append("“Not seen” is empty: say what could not be examined, or that all sides were.")
    return found


def _without_photos(report: ConditionReport) -> str:
    if report.occasion == ConditionReport.Occasion.BEFORE:
        return "No photographs chosen: without them the gate before moulding stays closed."
    return "No photographs chosen: a later eye cannot compare words alone."


def _paper(request: HttpRequest, report: ConditionReport, code: str) -> dict[str, Any] | None:
    """The report as a paper of that kind, if the person may issue it."""
    kind = extensions.paper_kinds.get(code)
    if kind is None or not access.may(request.user, kind.act) or not kind.applies_to(report):
        return None
    return {"code": kind.code, "title": kind.title, "refusals": kind.refusals(report)}
