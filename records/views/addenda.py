"""What is added to a signed condition report."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import path

from records import access
from records.forms.addenda import AddendumForm
from records.models import Addendum, ConditionReport
from records.services.addenda import UNSIGNED, add_to_report
from records.views.answering import answer_form

SENTENCE = (
    "The signed report stays as it is. What is written here stands beneath it, with your name and this day, and is "
    "not changed afterwards. What is seen now belongs in a new report."
)


def addendum_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", Addendum)
    report = access.fetch(request, ConditionReport.objects.select_related("item"), number=number)
    if not report.is_signed:
        messages.warning(request, UNSIGNED)
        return redirect(report)
    party, role = access.signer(request, "sign condition report")
    form = AddendumForm(request.POST or None, instance=Addendum(report=report))
    return answer_form(
        request, form, title=f"Add to {number}", sentence=SENTENCE, verb="Sign and add",
        template="records/addendum_form.html",
        back_url=report.get_absolute_url(), then=Addendum.get_absolute_url,
        act=lambda form: add_to_report(
            report=report, party=party, role=role, words=form.cleaned_data["words"], photos=form.cleaned_data["photos"]
        ),
    )  # fmt: skip


urls = [path("condition/<str:number>/addenda/new/", addendum_add, name="addendum_add")]
