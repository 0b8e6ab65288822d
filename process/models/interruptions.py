"""What people answer about a stretch without current, and the rule by which its risk is judged."""

from django.db import models
from django.urls import reverse

from records.models import Tracked

from .runs import Event, Run


class RiskLevel(models.TextChoices):
    NOTE = "note", "note only"
    LOW = "low", "low"
    MEDIUM = "medium", "medium"
    HIGH = "high", "high"


class Answer(models.TextChoices):
    YES = "yes", "yes"
    NO = "no", "no"


class InterruptionAnswers(Tracked):
    """Answers about the interruption of a run that lies in this interval; the interval itself is evidence."""

    run = models.ForeignKey(Run, models.CASCADE, related_name="interruption_answers")
    began_at = models.DateTimeField(editable=False)
    ended_at = models.DateTimeField(null=True, blank=True, editable=False)
    cause = models.CharField(max_length=20, choices=Event.Cause, blank=True)
    handling = models.CharField("meanwhile it", max_length=20, choices=Event.Handling, blank=True)
    out_of_bath_s = models.FloatField("out of the bath for", null=True, blank=True)
    returned_by_itself = models.CharField(
        "did the current come back by itself", max_length=3, choices=Answer, blank=True
    )
    activation = models.JSONField("before the restart", default=list, blank=True)
    acid_pct = models.FloatField("strength of the acid dip", null=True, blank=True)
    acid_s = models.FloatField("time in the acid", null=True, blank=True)
    restart_current_a = models.FloatField("current at the restart", null=True, blank=True)
    restart_ramp_s = models.FloatField("until the full current", null=True, blank=True)
    note = models.TextField(blank=True)
    answered_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")

    set_risk = models.CharField("risk", max_length=10, choices=RiskLevel, blank=True)
    set_risk_reason = models.TextField("why it differs from the rule", blank=True)
    set_risk_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    set_risk_role = models.CharField(max_length=20, blank=True, editable=False)
    set_risk_on = models.DateField(null=True, blank=True, editable=False)

    class Meta:
        ordering = ["run", "began_at"]
        verbose_name_plural = "interruption answers"
        constraints = [
            models.UniqueConstraint(fields=["run", "began_at"], name="interruption_answered_once"),
            models.CheckConstraint(
                condition=models.Q(set_risk="") | ~models.Q(set_risk_reason=""), name="set_risk_has_reason",
                violation_error_message="A risk that differs from the rule needs a reason.",
            ),
        ]  # fmt: skip

    def __str__(self) -> str:
        return f"interruption of {self.run.number}, {self.began_at:%Y-%m-%d %H:%M}"

    def get_absolute_url(self) -> str:
        return f"{self.run.get_absolute_url()}#interruptions"


class RiskRule(Tracked):
    """One row of the rule; an empty condition asks nothing."""

    words = models.CharField("the situation in words", max_length=200)
    longer_than_s = models.FloatField("without current for more than", null=True, blank=True)
    up_to_s = models.FloatField("and up to", null=True, blank=True)
    time_known = models.CharField("is its length known", max_length=3, choices=Answer, blank=True)
    contact_lost = models.CharField("was a contact lost", max_length=3, choices=Answer, blank=True)
    handling = models.CharField("meanwhile it", max_length=20, choices=Event.Handling, blank=True)
    out_up_to_s = models.FloatField("out of the bath up to", null=True, blank=True)
    activated = models.CharField("was the surface activated", max_length=3, choices=Answer, blank=True)
    returned_by_itself = models.CharField(
        "did the current come back by itself", max_length=3, choices=Answer, blank=True
    )
    risk = models.CharField(max_length=10, choices=RiskLevel)
    source = models.CharField(max_length=300, blank=True)
    is_retired = models.BooleanField("no longer used", default=False)

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        return self.words

    def get_absolute_url(self) -> str:
        return reverse("risk_rule_list")
