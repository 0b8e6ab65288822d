"""Usual and impossible values: the museum's own table."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse
from django.utils.text import capfirst

from process.forms.range_rows import RangeForm
from process.models import Range
from records import access
from records.views.answering import answer_form

SENTENCE = "A number outside “usual” is asked about; one outside “possible” is not accepted."


def range_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", Range)
    return render(request, "process/range_list.html", {"rows": Range.objects.all(), "sentence": SENTENCE})


def range_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, Range, to="write", pk=pk)
    form = RangeForm(request.POST or None, instance=row)
    back = reverse("range_list")
    return answer_form(
        request, form, title=capfirst(row.words), sentence=SENTENCE, verb="Save", back_url=back, then=lambda _: back
    )


urls = [
    path("limits/", range_list, name="range_list"),
    path("limits/<int:pk>/edit/", range_edit, name="range_edit"),
]
