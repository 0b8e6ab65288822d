"""Findings of a condition report: entering one in under a minute, comparing, mending, striking out."""

from typing import Any

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import path, reverse
from django.views.decorators.http import require_POST

from records import access
from records.forms.findings import FindingForm
from records.models import ConditionReport, Finding
from records.services.condition import compare_finding, is_carried, next_position, refuse_if_signed, strike_out
from records.views.answering import answer_form
from records.views.condition import signed_already

FINDINGS = Finding.objects.select_related("term", "report__item", "report__previous")
TEMPLATE = "records/finding_form.html"
SENTENCE = "Say what one sees, not what one suspects. How bad and how lively are two different questions."
# After these the finding itself has to be described anew.
DESCRIBE_AGAIN = {Finding.Comparison.WORSE, Finding.Comparison.BETTER, Finding.Comparison.TREATED}


def _keep(form: FindingForm) -> Finding:
    finding = form.instance
    refuse_if_signed(finding.report)
    if finding._state.adding:
        finding.position_count = next_position(finding.report)
        finding.first_seen_on = finding.report.examined_on
    return form.save()


def finding_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", Finding)
    report = access.fetch(request, ConditionReport.objects.select_related("item", "previous"), number=number)
    if report.is_signed and request.method != "POST":
        return signed_already(request, report)

    def then(finding: Finding) -> Any:
        if "another" not in request.POST:
            return finding
        messages.success(request, f"Kept as finding {finding.position_count}: {finding}.")
        return reverse("finding_add", args=[number])

    form = FindingForm(request.POST or None, instance=Finding(report=report))
    return answer_form(request, form, title="What is seen?", sentence=SENTENCE, report=report, act=_keep, then=then,
                       template=TEMPLATE, is_new=True)  # fmt: skip


def finding_edit(request: HttpRequest, pk: int) -> HttpResponse:
    finding = access.fetch(request, FINDINGS, to="write", pk=pk)
    if finding.report.is_signed and request.method != "POST":
        return signed_already(request, finding.report)
    form = FindingForm(request.POST or None, instance=finding)
    return answer_form(
        request, form, title=f"Finding {finding.position_count}", sentence=SENTENCE, report=finding.report, act=_keep,
        then=Finding.get_absolute_url, template=TEMPLATE, finding=finding, may_strike=not is_carried(finding),
    )  # fmt: skip


@require_POST
def finding_compare(request: HttpRequest, pk: int) -> HttpResponse:
    """One touch for each finding that was taken over; a changed one is then described as it is now."""
    finding = access.fetch(request, FINDINGS, to="write", pk=pk)
    try:
        compare_finding(finding=finding, comparison=request.POST.get("comparison", ""))
    except ValidationError as error:
        messages.error(request, " ".join(error.messages))
        return redirect(finding)
    return redirect("finding_edit", pk=pk) if finding.comparison in DESCRIBE_AGAIN else redirect(finding)


@require_POST
def finding_delete(request: HttpRequest, pk: int) -> HttpResponse:
    finding = access.fetch(request, FINDINGS, to="write", pk=pk)
    report, words = finding.report, f"Finding {finding.position_count}, {finding}, is struck out; the history keeps it."
    try:
        strike_out(finding=finding)
        messages.success(request, words)
    except ValidationError as error:
        messages.error(request, " ".join(error.messages))
    return redirect(f"{report.get_absolute_url()}#findings")


urls = [
    path("condition/<str:number>/findings/new/", finding_add, name="finding_add"),
    path("findings/<int:pk>/edit/", finding_edit, name="finding_edit"),
    path("findings/<int:pk>/compare/", finding_compare, name="finding_compare"),
    path("findings/<int:pk>/delete/", finding_delete, name="finding_delete"),
]
