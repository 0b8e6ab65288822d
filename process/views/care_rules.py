"""What each composition asks of whoever stores and handles a piece: the museum's own table."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path

from process.forms.care_rules import CareRuleForm
from process.models import CareRule
from records import access
from records.views.writing import correct

SENTENCE = "These sentences stand on the pages, tags and papers of every piece that they fit. Local rules come first."


def care_rule_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", CareRule)
    return render(request, "process/care_rule_list.html", {"rows": CareRule.objects.all(), "sentence": SENTENCE})


def care_rule_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, CareRuleForm, where={"pk": pk}, title=lambda row: f"Care: {row}", sentence=SENTENCE,
        then=CareRule.get_absolute_url,
    )  # fmt: skip


urls = [
    path("care-rules/", care_rule_list, name="care_rule_list"),
    path("care-rules/<int:pk>/edit/", care_rule_edit, name="care_rule_edit"),
]
