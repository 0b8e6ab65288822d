"""The register's own gate checks: permission, risk, condition before and after, mark, identification.

They read whole sets and choose in Python, so that a page about many things prefetches them once (`RELATED`).
"""

from datetime import date

from django.db.models import Prefetch
from django.utils import timezone

from records import consents as _conditions  # noqa: F401 - the conditions of consents register themselves
from records.clock import day_words
from records.gates import Check, Subject, gate_check
from records.judging import closing_verdicts
from records.models import Concession, ConditionReport, Consent, Gate, Item, RiskAssessment
from records.mouldings import looked_back
from records.original_marks import foreseen_marks, marks_left_open
from records.roles import CONSERVATOR, CURATOR, REGISTRAR, TECHNICIAN

PERMANENT_MARK = "permanent mark"
RELATED = [
    Prefetch("consents", Consent.objects.with_commissions()),
    "risk_assessments",
    Prefetch("condition_reports", ConditionReport.objects.pictured()),
    "marks",
    Prefetch("concessions", Concession.objects.select_related("given_by")),
]


@gate_check(Gate.PERMISSION, "consent in force")
def consent_in_force(subject: Subject, on: date) -> Check | None:
    """A consent that names the model and holds on the day; once it is moulded, only its conditions are asked."""
    model: Item = subject.thing
    if subject.act and not subject.act.is_moulding:
        return None
    consent = next((c for c in model.consents.all() if c.in_force_on(on)), None)
    if consent:
        end = f" to {day_words(consent.valid_to)}" if consent.valid_to else ""
        sentence = f"Consent of {consent.owner}, {day_words(consent.given_on)}, holds{end}."
        return Check("consent in force", True, sentence)
    return Check("consent in force", False, f"No consent in force on {day_words(on)} names {model.number}.", REGISTRAR)


@gate_check(Gate.RISK, "risk assessed")
def risk_decided(subject: Subject, on: date) -> Check:
    """A signed assessment that does not refuse."""
    model: Item = subject.thing
    last = next((r for r in model.risk_assessments.all() if r.assessed_on <= on and r.is_signed), None)
    if last is None:
        sentence = f"No signed risk assessment of {model.number} by {day_words(on)}."
        return Check("risk assessed", False, sentence, CONSERVATOR)
    refused = last.decision == RiskAssessment.Decision.REFUSE
    why = f" All the same: {last.all_the_same.rstrip('.')}." if last.all_the_same else ""
    return Check("risk assessed", not refused, f"{last.number}: {last.get_decision_display()}.{why}"[:400], CONSERVATOR)


@gate_check(Gate.RISK, "mould as assessed")
def as_assessed(subject: Subject, on: date) -> Check | None:
    """The mould is of the material that was assessed; asked when it is taken."""
    act = subject.act
    if not act or not act.is_moulding or act.material is None:
        return None
    rows = (r for r in subject.thing.risk_assessments.all() if r.assessed_on <= on and r.is_signed)
    last = next((row for row in rows if row.mould_material_id), None)
    if last is None or last.mould_material_id == act.material.pk:
        return None
    sentence = f"{last.number} assessed {last.mould_material}; {act.words} in {act.material}."
    return Check("mould as assessed", False, sentence, CONSERVATOR)


def _signed_reports(model: Item, occasion: str) -> list[ConditionReport]:
    """The latest first, each with the day of its first photograph."""
    rows = list(model.condition_reports.all())
    if not all(hasattr(row, "first_picture_at") for row in rows):
        rows = list(model.condition_reports.pictured())
    found = [row for row in rows if row.occasion == occasion and row.is_signed]
    return sorted(found, key=lambda report: report.examined_on, reverse=True)


@gate_check(Gate.BEFORE, "condition before")
def condition_before(subject: Subject, on: date) -> Check:
    """A signed report and photographs, both dated before the mould was taken; what came later shows nothing of it."""
    model: Item = subject.thing
    reports = _signed_reports(model, ConditionReport.Occasion.BEFORE)
    report = next((report for report in reports if report.examined_on <= on), None)
    if report is None:
        late = f" {reports[-1].number} is of {day_words(reports[-1].examined_on)}, after it." if reports else ""
        sentence = f"No signed condition report of {model.number} before moulding.{late}"
        return Check("condition before", False, sentence, CONSERVATOR)
    first = report.first_picture_at
    if first and timezone.localtime(first).date() <= on:
        return Check("condition before", True, f"{report.number}, {day_words(report.examined_on)}, with photographs.")
    why = " but those taken later" if first else " but undated ones" if report.has_pictures else ""
    return Check("condition before", False, f"{report.number} has no photographs{why}.", CONSERVATOR)


@gate_check(Gate.AFTER, "condition after")
def condition_after(subject: Subject, on: date) -> Check:
    """A signed report that follows the last moulding and states whether anything changed."""
    model: Item = subject.thing
    report, why = looked_back(_signed_reports(model, ConditionReport.Occasion.AFTER), model, on)
    if report is None:
        sentence = f"No signed condition report of {model.number} after moulding states whether it changed.{why}"
        return Check("condition after", False, sentence, CONSERVATOR)
    return Check("condition after", True, f"{report.number}: {report.get_change_display()}.")


@gate_check(Gate.MARK, PERMANENT_MARK)
def permanent_mark(subject: Subject, on: date) -> Check | None:
    """A permanent, photographed mark that says copy and passes the museum's rules; historic copies are flagged."""
    copy: Item = subject.thing
    if not copy.made_here:
        return None
    mark, closing = closing_verdicts(copy, copy.marks.all())
    if mark and not closing:
        return Check(PERMANENT_MARK, True, f"{mark}, {mark.get_method_display()}, photographed.")
    sentence = f"{copy.number} carries no permanent, photographed mark that says it is a copy."
    if mark and mark.is_photographed_copy_mark:
        sentence = f"{mark} does not pass the museum’s rules. {' '.join(each.sentence for each in closing)}"
    return Check(PERMANENT_MARK, False, sentence, TECHNICIAN)


@gate_check(Gate.MARK, "marks of the original")
def marks_of_the_original(subject: Subject, on: date) -> Check | None:
    """No hallmark is carried over; a maker's mark is kept off, or left for a reason; a photograph shows the place."""
    copy: Item = subject.thing
    if not copy.made_here or not (foreseen := foreseen_marks(copy)):
        return None
    open_ones = marks_left_open(foreseen)
    if not open_ones:
        said = "Every hallmark and maker’s mark of the original is accounted for."
        return Check("marks of the original", True, said)
    sentence = f"{copy.number}: {' '.join(open_ones)}"
    return Check("marks of the original", False, sentence, TECHNICIAN)


@gate_check(Gate.IDENTIFY, "label approved")
def label_approved(subject: Subject, on: date) -> Check | None:
    """Approved wording that begins with the kind of copy."""
    copy: Item = subject.thing
    label = getattr(copy, "label", None)
    if label and label.is_signed:
        sentence = f"Label approved by {label.signed_by}, {day_words(label.signed_at)}."
        return Check("label approved", True, sentence)
    return Check("label approved", False, f"{copy.number} has no approved label yet.", CURATOR)
