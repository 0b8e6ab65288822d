"""The questions about an interruption, a risk set by hand, and the rows of the rule."""

from typing import Any

from django import forms

from process.forms.asking import AsksUnusual
from process.forms.currents import of_current
from process.forms.events import CAUSES
from process.forms.people import person_field
from process.models import Answer, Event, InterruptionAnswers, Range, RiskLevel, RiskRule
from process.ranges import Opinion
from process.summaries.hanging import hanging_at
from process.summaries.interruptions import Interruption, spans_of
from records.forms.base import RecordForm

NOTHING = Event.Activation.NONE.value
YES_OR_NO = {"returned_by_itself": "Did the current come back by itself?"}


class InterruptionForm(AsksUnusual, RecordForm):
    """Everything may stay open: what nobody knows counts as its worst answer."""

    activation = forms.MultipleChoiceField(
        choices=Event.Activation.choices, required=False, widget=forms.CheckboxSelectMultiple,
        label="What was done to the surface before the restart?",
        help_text="A rinse takes nothing off; acid, a brush or a reversed current make the surface ready.",
    )  # fmt: skip

    class Meta:
        model = InterruptionAnswers
        fields = [
            "cause", "handling", "out_of_bath_s", "returned_by_itself", "activation", "acid_pct", "acid_s",
            "restart_current_a", "restart_ramp_s", "answered_by", "note",
        ]  # fmt: skip
        ranged: list[str] = []
        labels = {"cause": "Why did it stop?", "handling": "Meanwhile the pieces", **YES_OR_NO}
        help_texts = {
            "out_of_bath_s": "If they were lifted: from the surface to the surface again.",
            "restart_ramp_s": "How long the current was kept low before it was set to its full value.",
        }
        groups = [
            ("What happened", ["cause", "handling", "out_of_bath_s"]),
            ("How it went on", ["returned_by_itself", "activation", "acid_pct", "acid_s"]),
            ("At what current did it begin again?", ["restart_current_a", "restart_ramp_s"]),
            ("Who says so", ["answered_by", "note"]),
        ]
        widgets = {"note": forms.Textarea({"rows": 3})}

    def __init__(self, *args: Any, found: Interruption, user: Any = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        known, self.found = found.answers, found
        if self.instance._state.adding:
            self.offer("cause", known.cause)
            self.offer("handling", known.handling)
            self.initial["activation"] = list(known.activation)
            if known.returned_by_itself is not None:
                self.offer("returned_by_itself", Answer.YES if known.returned_by_itself else Answer.NO)
        causes = [(each.value, each.label) for each in CAUSES[Event.Kind.INTERRUPTION]]
        self.fields["cause"].choices = [("", "not known"), *causes]
        for name in ("handling", "returned_by_itself"):
            choices = [choice for choice in self.fields[name].choices if choice[0]]
            self.fields[name].choices = [("", "not known"), *choices]
        person_field(self, "answered_by", user)

    def opinions(self) -> dict[str, Opinion]:
        """The current by what hung there; no piece is out of the bath for longer than nothing flows."""
        asked, run = super().opinions(), self.instance.run
        if typed := self.entered.get("restart_current_a"):
            rail = hanging_at(run.cathodes.all(), run.events.all(), self.found.began_at)
            area = sum(each.total_area_dm2 for each in rail)
            usual = [of_current(typed, area, step=step) for step in (run.agitation, Range.Step.STRIKE)]
            asked["restart_current_a"] = next((each for each in usual if each.is_usual), usual[0])
        out = self.cleaned_data.get("out_of_bath_s")
        if out is not None and out > spans_of(self.found.stretch, self.found.until)[1]:
            asked["out_of_bath_s"] = Opinion("unusual", f"nothing flowed for {self.found.duration} only.")
        return asked

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        steps = cleaned.get("activation") or []
        if NOTHING in steps and len(steps) > 1:
            self.add_error("activation", "“none” and a step exclude each other: keep what was done.")
        dipped = cleaned.get("acid_pct") is not None or cleaned.get("acid_s") is not None
        if dipped and Event.Activation.ACID not in steps:
            self.add_error("activation", "A strength or a time of an acid dip is given: tick the acid dip as well.")
        lifted = cleaned.get("out_of_bath_s") is not None
        if lifted and cleaned.get("handling") == Event.Handling.IMMERSED:
            self.add_error("out_of_bath_s", "They stayed in the bath by your answer: leave this empty.")
        return cleaned


class SetRiskForm(RecordForm):
    """A named person departs from the rule, with a reason; an empty choice goes back to the rule."""

    class Meta:
        model = InterruptionAnswers
        fields = ["set_risk", "set_risk_reason"]
        help_texts = {"set_risk_reason": "It stands beside the risk, with your name, on every page and paper."}
        widgets = {"set_risk_reason": forms.Textarea({"rows": 4})}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["set_risk"].choices = [("", "as the rule says"), *RiskLevel.choices]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        reason = (cleaned.get("set_risk_reason") or "").strip()
        if cleaned.get("set_risk") and not reason:
            self.add_error("set_risk_reason", "Say why: a risk that differs from the rule is only worth its reason.")
        if not cleaned.get("set_risk"):
            cleaned["set_risk_reason"] = ""
        return cleaned


class RiskRuleForm(RecordForm):
    reason = forms.CharField(
        label="Why it is changed", max_length=300,
        error_messages={"required": "Say why: every risk that this row decides changes with it."},
        help_text="It is kept in the history with your name.",
    )  # fmt: skip

    class Meta:
        model = RiskRule
        fields = [
            "words", "longer_than_s", "up_to_s", "time_known", "contact_lost", "handling", "out_up_to_s", "activated",
            "returned_by_itself", "risk", "source", "is_retired",
        ]  # fmt: skip
        groups = [
            ("The situation", ["words"]),
            ("It applies where", ["longer_than_s", "up_to_s", "time_known", "contact_lost", "handling", "out_up_to_s",
                                  "activated", "returned_by_itself"]),
            ("Then the risk is", ["risk", "source", "is_retired", "reason"]),
        ]  # fmt: skip
        help_texts = {"out_up_to_s": "Empty conditions ask nothing. A row whose conditions all fit counts."}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for name in ("time_known", "contact_lost", "handling", "activated", "returned_by_itself"):
            self.fields[name].choices = [("", "either way"), *(c for c in self.fields[name].choices if c[0])]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        low, high = cleaned.get("longer_than_s"), cleaned.get("up_to_s")
        if low is not None and high is not None and high <= low:
            self.add_error("up_to_s", "The bounds cross: this row would never apply.")
        return cleaned

    def save(self, commit: bool = True) -> RiskRule:
        self.instance._change_reason = self.cleaned_data["reason"]
        return super().save(commit)
