"""Condition reports: the list, one report, beginning and completing it, its photographs and its signature."""

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.db.models import Count, F, OuterRef, Subquery, Value
from django.db.models.functions import Coalesce
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import path
from django.views.decorators.http import require_POST

from records import access
from records.forms.condition import NewReportForm, ReportForm, ReportPhotosForm
from records.forms.condition_filter import ConditionFilter
from records.models import ConditionReport, Finding, Item
from records.services.condition import SIGNED, carry_over, refuse_if_signed
from records.services.signing import sign_report
from records.views.answering import answer_form
from records.views.condition_page import REPORTS, context_of, seen_mark
from records.views.listing import export, page, wants_export

COLUMNS = [
    ("number", "number"), ("object", "item__number"), ("title", "item__title"), ("occasion", "get_occasion_display"),
    ("examined on", "examined_on"), ("examiner", "examiner"), ("light", "light"), ("mass (g)", "mass_g"),
    ("grade (0–3)", "shown_grade"), ("stability", "get_stability_display"), ("findings", "findings_count"),
    ("compared with", lambda report: report.previous or ""), ("statement", "get_change_display"),
    ("signed by", lambda report: report.signed_by or ""), ("signed at (UTC)", lambda report: report.signed_at or ""),
]  # fmt: skip
BEGIN = "Look first, then write what is seen, where, how bad and how lively; findings follow on the report’s own page."
BEGIN_AGAIN = "The findings of {} are taken over as “not re-examined”: then say of each what became of it."
COMPLETE = "What the findings amount to, what was not seen, and what follows from it."
OFFERED = ("occasion", "light", "aids")  # by whoever leads here: a survey round takes its light along
CHANGED = "Someone changed this report after you opened it: read it again, then sign."


def condition_list(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "view", ConditionReport)
    form = ConditionFilter(request.GET)
    worst = Finding.objects.filter(report=OuterRef("pk")).order_by("-severity").values("severity")[:1]
    rows = ConditionReport.objects.select_related("item", "examiner", "previous", "signed_by")
    rows = rows.annotate(shown_grade=Coalesce(F("grade"), Subquery(worst), Value(0)), findings_count=Count("findings"))
    rows = form.narrow(rows)
    if wants_export(request):
        return export(rows.order_by("-number"), COLUMNS, "condition-reports")
    context = {"form": form, "page": page(rows, request, key=("-examined_on", "number")), "count": rows.count()}
    return render(request, "records/condition_list.html", context)


def condition_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", ConditionReport)
    item = access.fetch(request, Item, number=number)
    initial = {"examiner": access.party_of(request.user)}
    initial |= {name: request.GET[name] for name in OFFERED if request.GET.get(name)}
    form = NewReportForm(request.POST or None, instance=ConditionReport(item=item), initial=initial)
    last = form.initial.get("previous")
    return answer_form(
        request, form, title=f"Examine {item.number}", sentence=BEGIN_AGAIN.format(last.number) if last else BEGIN,
        verb="Begin the report", back_url=item.get_absolute_url(), act=lambda form: carry_over(form.save()),
        then=ConditionReport.get_absolute_url,
    )  # fmt: skip


def condition(request: HttpRequest, number: str) -> HttpResponse:
    report = access.fetch(request, REPORTS, number=number)
    return render(request, "records/condition.html", context_of(request, report))


def signed_already(request: HttpRequest, report: ConditionReport) -> HttpResponse:
    """A signed report is not opened for changes; what was typed before the signature is answered by the form itself."""
    messages.warning(request, SIGNED)
    return redirect(report)


def _keep(form) -> ConditionReport:
    refuse_if_signed(form.instance)
    return form.save()


def condition_edit(request: HttpRequest, number: str) -> HttpResponse:
    report = access.fetch(request, REPORTS, to="write", number=number)
    if report.is_signed and request.method != "POST":
        return signed_already(request, report)
    form = ReportForm(request.POST or None, instance=report)
    return answer_form(
        request, form, title=f"Complete {number}", sentence=COMPLETE, verb="Keep", act=_keep,
        back_url=report.get_absolute_url(), then=ConditionReport.get_absolute_url,
    )  # fmt: skip


def condition_photos(request: HttpRequest, number: str) -> HttpResponse:
    report = access.fetch(request, REPORTS, to="write", number=number)
    if report.is_signed and request.method != "POST":
        return signed_already(request, report)
    form = ReportPhotosForm(request.POST or None, instance=report)
    return answer_form(
        request, form, title=f"Photographs of {number}", template="records/condition_photos.html", report=report,
        act=_keep, then=lambda report: f"{report.get_absolute_url()}#photographs",
    )  # fmt: skip


@require_POST
def condition_sign(request: HttpRequest, number: str) -> HttpResponse:
    """Sign what is before the signer's eyes: if it was changed meanwhile, it is shown again first."""
    report = access.fetch(request, REPORTS, to="sign condition report", number=number)
    party, role = access.signer(request, "sign condition report")
    now = seen_mark(report, list(report.findings.all()))
    try:
        if request.POST.get("seen", now) != now:
            raise ValidationError(CHANGED)
        sign_report(report=report, party=party, role=role)
    except ValidationError as error:
        context = {**context_of(request, report), "refusals": error.messages}
        return render(request, "records/condition.html", context, status=422)
    messages.success(request, f"Signed by {party}, {role}. {number} now stays as it is.")
    return redirect(report)


urls = [
    path("condition/", condition_list, name="condition_list"),
    path("things/<str:number>/condition/new/", condition_add, name="condition_add"),
    path("condition/<str:number>/", condition, name="condition"),
    path("condition/<str:number>/edit/", condition_edit, name="condition_edit"),
    path("condition/<str:number>/photographs/", condition_photos, name="condition_photos"),
    path("condition/<str:number>/sign/", condition_sign, name="condition_sign"),
]
