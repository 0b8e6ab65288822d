"""Answering for an interruption, and departing from the rule in one's own name."""

from django.core.exceptions import ValidationError
from django.db import transaction

from process.models import InterruptionAnswers
from records import clock
from records.models import Party


def set_risk(*, answers: InterruptionAnswers, risk: str, reason: str, party: Party, role: str) -> InterruptionAnswers:
    """Put another risk than the rule's on an interruption, or go back to the rule with an empty one."""
    if risk and not reason.strip():
        raise ValidationError({"set_risk_reason": "A risk that differs from the rule needs its reason."})
    with transaction.atomic():
        answers.set_risk, answers.set_risk_reason = risk, reason.strip() if risk else ""
        answers.set_risk_by, answers.set_risk_role = (party, role) if risk else (None, "")
        answers.set_risk_on = clock.today() if risk else None
        answers._change_reason = reason.strip() or "Back to the rule."
        answers.save()
    return answers
