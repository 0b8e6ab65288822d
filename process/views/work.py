"""Hours, bills and estimates of a copy, a run or a commission; each is written on the page of what it is for."""

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import resolve_url
from django.urls import path, reverse

from process.forms.work import EstimateForm, ExpenseForm, HoursForm
from process.models import Run, WorkEstimate, WorkHours
from records import access
from records.models import Commission, Item
from records.views.answering import answer_form
from records.views.writing import correct

OF = {"copy": Item.objects.made_here(), "run": Run.objects.all(), "commission": Commission.objects.all()}
SENTENCE = "Work that failed counts too: tick it, and it stands beside what came of it."


def _about(request: HttpRequest, of: str, number: str) -> dict[str, Any]:
    """The columns that say what a line is for; a copy and a run bring their commission."""
    if of not in OF:
        raise Http404("Hours are written for a copy, a run or a commission.")
    found = access.fetch(request, OF[of], number=number)
    commission = {"copy": lambda: found.made_for.first(), "run": lambda: found.commission}.get(of, lambda: found)()
    return {of: found, "commission": commission}


def costs_page(row: Any) -> str:
    if row.copy_id:
        return reverse("copy_costs", args=[row.copy.number])
    if row.commission_id:
        return reverse("commission_costs", args=[row.commission.number])
    return resolve_url(row.run)


def _begin(request: HttpRequest, form_class: type, of: str, number: str, **words: Any) -> HttpResponse:
    model = form_class._meta.model
    access.require(request, "write", model)
    row = model(**_about(request, of, number))
    initial = {"person": access.party_of(request.user)} if model is WorkHours else {}
    form = form_class(request.POST or None, instance=row, initial=initial)
    return answer_form(
        request, form, number=number, sentence=SENTENCE, back_url=costs_page(row), then=costs_page, **words
    )


def work_add(request: HttpRequest, of: str, number: str) -> HttpResponse:
    return _begin(request, HoursForm, of, number, title="Hours", verb="Keep the hours")


def expense_add(request: HttpRequest, of: str, number: str) -> HttpResponse:
    return _begin(request, ExpenseForm, of, number, title="A bill", verb="Keep the bill")


RELATED = ("copy", "run", "commission")


def work_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, HoursForm, where={"pk": pk}, related=RELATED, then=costs_page, title=lambda row: f"Correct: {row}"
    )


def expense_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, ExpenseForm, where={"pk": pk}, related=RELATED, then=costs_page, title=lambda row: f"Correct: {row}"
    )


def _estimates(row: WorkEstimate) -> str:
    return reverse("commission_costs", args=[row.commission.number])


def estimate_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", WorkEstimate)
    commission = access.fetch(request, Commission, number=number)
    form = EstimateForm(request.POST or None, instance=WorkEstimate(commission=commission))
    return answer_form(
        request, form, title="Estimate hours", number=number, verb="Keep the estimate",
        sentence="What a kind of work is planned to take, for all copies of the commission together.",
        back_url=reverse("commission_costs", args=[number]), then=_estimates,
    )  # fmt: skip


def estimate_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, EstimateForm, where={"pk": pk}, related=("commission",), then=_estimates,
        title=lambda row: f"Correct: {row}",
    )  # fmt: skip


urls = [
    path("work/<str:of>/<str:number>/new/", work_add, name="work_add"),
    path("work/<int:pk>/edit/", work_edit, name="work_edit"),
    path("bills/<str:of>/<str:number>/new/", expense_add, name="expense_add"),
    path("bills/<int:pk>/edit/", expense_edit, name="expense_edit"),
    path("commissions/<str:number>/estimates/new/", estimate_add, name="estimate_add"),
    path("estimates/<int:pk>/edit/", estimate_edit, name="estimate_edit"),
]
