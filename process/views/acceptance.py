"""A copy held against its specification: looked at by everybody, answered by who accepts it."""

from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import path, reverse

from process.forms.acceptance import AnswersForm
from process.models import Inspection
from process.summaries.acceptance import held_against, specification_for
from records import access
from records.views.answering import answer_form

ROWS = Inspection.objects.select_related("copy__making_up", "inspector")


def inspection_points(request: HttpRequest, pk: int) -> HttpResponseBase:
    inspection = access.fetch(request, ROWS, pk=pk)
    specification, points = held_against(inspection)
    context = {
        "inspection": inspection,
        "item": inspection.copy,
        "specification": specification,
        "points": points,
        "may_answer": access.may(request.user, "write", Inspection),
    }
    return render(request, "process/inspection_points.html", context)


def inspection_answer(request: HttpRequest, pk: int) -> HttpResponseBase:
    inspection = access.fetch(request, ROWS, to="write", pk=pk)
    back = reverse("inspection_points", args=[pk])
    specification = specification_for(inspection)
    if inspection.is_signed or specification is None:
        return redirect(back)
    form = AnswersForm(request.POST or None, instance=inspection, specification=specification)
    return answer_form(
        request, form, title=f"Hold {inspection.copy.number} against its specification", verb="Keep",
        sentence="What was measured is compared by itself; these points are seen.", back_url=back,
        then=lambda row: back,
    )  # fmt: skip


urls = [
    path("inspections/<int:pk>/points/", inspection_points, name="inspection_points"),
    path("inspections/<int:pk>/points/answer/", inspection_answer, name="inspection_answer"),
]
