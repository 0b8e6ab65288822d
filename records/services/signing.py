"""Signatures: who, in which role, when; and what must stand before a name is put to it."""

from django.core.exceptions import ValidationError
from django.db import transaction

from records import clock, gates, labelling
from records.models import ConditionReport, Finding, Gate, LabelWording, Party, Signed
from records.mouldings import too_early
from records.services.incidents import open_incident, plan_second_look

NEW_OR_WORSE = {Finding.Comparison.NEW.value, Finding.Comparison.WORSE.value}
CHANGED = "Someone changed this after you opened it: read it again, then sign."


def sign(*, row: Signed, party: Party, role: str) -> None:
    """Put a name, a role and the instant to a row; a signed row is not signed again."""
    with transaction.atomic():
        refuse_if_moved_on(row)
        row.signed_by, row.signed_role, row.signed_at = party, role, clock.now()
        row.save()


def refuse_if_moved_on(row: Signed) -> None:
    """Hold the row to this transaction; a name goes only under what its bearer has read."""
    now = type(row)._base_manager.select_for_update().get(pk=row.pk)
    if now.is_signed:
        raise ValidationError(f"Signed already by {now.signed_by} on {clock.day_words(now.signed_at)}.")
    if now.version != row.version:
        raise ValidationError(CHANGED)


def refuse_unread(row: Signed, seen: str | None) -> None:
    """The version that stood on the signer's page, where the page says it, is the one that is signed."""
    if seen not in (None, "", str(row.version)):
        raise ValidationError(CHANGED)


def sign_report(*, report: ConditionReport, party: Party, role: str) -> None:
    """Sign a condition report; a change opens an incident, and after moulding one looks a second time."""
    for sentence in report_gaps(report):
        raise ValidationError(sentence)
    with transaction.atomic():
        sign(row=report, party=party, role=role)
        if report.change == ConditionReport.Change.CHANGED:
            open_incident(report)
        if report.occasion == ConditionReport.Occasion.AFTER:
            plan_second_look(report)


def report_gaps(report: ConditionReport) -> list[str]:
    """What is missing before a condition report can be signed."""
    gaps = []
    if not report.light:
        gaps.append("Say which light was used: without it the next examination cannot repeat this one.")
    if report.occasion == ConditionReport.Occasion.AFTER and (why := too_early(report.item, report.examined_on)):
        gaps.append(why)
    if (report.occasion == ConditionReport.Occasion.AFTER or report.previous_id) and not report.change:
        gaps.append("State whether anything changed: choose “no change observed” or “changed”.")
    if report.previous_id and (numbers := _numbers(report, {""})):
        gaps.append(f"Say of finding {numbers} what became of it since {report.previous.number}.")
    if report.change == ConditionReport.Change.CHANGED and not report.change_words:
        gaps.append("Say what changed.")
    if report.change == ConditionReport.Change.NO_CHANGE and (numbers := _numbers(report, NEW_OR_WORSE)):
        gaps.append(f"“No change observed” is stated, but finding {numbers} is new or worse: correct one of the two.")
    if report.grade is not None and report.grade != report.worst_severity and not report.grade_reason:
        gaps.append("The grade differs from the worst finding: give the reason.")
    return gaps


def _numbers(report: ConditionReport, comparisons: set[str]) -> str:
    """The numbers of those findings of which one of these was said."""
    return ", ".join(str(f.position_count) for f in report.findings.all() if f.comparison in comparisons)


def approve_label(*, label: LabelWording, party: Party, role: str, answer: str = "") -> None:
    """Approve a wording that no check refuses, for a copy that carries its mark or a concession instead.

    What a check asks about is answered in words, which stay with the approval.
    """
    said = labelling.complaints(label)
    unanswered = [one for one in said if one.severity == "refuse" or (one.severity == "ask" and not answer.strip())]
    if unanswered:
        raise ValidationError([complaint.sentence for complaint in unanswered])
    label.answer = answer.strip() if any(one.severity == "ask" for one in said) else ""
    copy = label.item
    with transaction.atomic():
        subject = gates.Subject(copy, copy.number, (copy,))
        gates.pass_gates([Gate.MARK], subject, clock.today(), afterwards=False)
        sign(row=label, party=party, role=role)
