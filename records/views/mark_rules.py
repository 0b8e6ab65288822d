"""The rules that marks are held against: those that came with the register, and the museum's own."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from records import access, marking
from records.forms.mark_rules import MarkRuleForm
from records.models import MarkRule
from records.own_rules import recorded_rules
from records.views.writing import begin, correct

SENTENCE = "The museum’s own rules and those of several countries, with where they are written and how sure we are."
HERE = "this museum"
OWN = "A rule of the museum, or of its country: one question, its figure, and where it is written."


def mark_rule_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", MarkRule)
    rows = sorted(recorded_rules(), key=lambda rule: (rule.jurisdiction != HERE, rule.jurisdiction))
    context = {"sentence": SENTENCE, "rules": rows, "own": MarkRule.objects.all(), "disclaimer": marking.ADVICE}
    return render(request, "records/mark_rule_list.html", context)


def mark_rule_add(request: HttpRequest) -> HttpResponse:
    back = reverse("mark_rule_list")
    return begin(
        request, MarkRuleForm, title="A rule of the museum", sentence=OWN, verb="Keep the rule", back_url=back,
        then=lambda rule: back,
    )  # fmt: skip


def mark_rule_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, MarkRuleForm, where={"pk": pk}, title=lambda rule: f"Rule {rule.code}", sentence=OWN,
        verb="Keep the rule", then=lambda rule: reverse("mark_rule_list"),
    )  # fmt: skip


urls = [
    path("mark-rules/", mark_rule_list, name="mark_rule_list"),
    path("mark-rules/new/", mark_rule_add, name="mark_rule_add"),
    path("mark-rules/<int:pk>/edit/", mark_rule_edit, name="mark_rule_edit"),
]
