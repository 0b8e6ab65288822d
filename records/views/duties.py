"""Anything due by a date."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from records import access, clock
from records.forms.duties import DutyDoneForm, DutyForm
from records.models import Duty
from records.services.permissions import fulfil
from records.views.answering import answer_form
from records.views.listing import export, page, wants_export
from records.views.writing import begin

COLUMNS = [("Due", "due_on"), ("What", "sentence"), ("For", "role"), ("Done", "done_on"), ("How", "done_words")]


def duty_list(request: HttpRequest) -> HttpResponse:
    """Open duties in the order in which they fall due; the done ones on request."""
    access.require(request, "view", Duty)
    shows_done = request.GET.get("show") == "done"
    rows = Duty.objects.select_related("item", "commission", "consent", "done_by")
    rows = rows.filter(done_on__isnull=not shows_done)
    if wants_export(request):
        return export(rows, COLUMNS, "duties")
    context = {"page": page(rows, request, key=("due_on", "pk")), "shows_done": shows_done, "today": clock.today()}
    return render(request, "records/duty_list.html", context)


def duty_add(request: HttpRequest) -> HttpResponse:
    return begin(
        request, DutyForm, title="New duty", sentence="Something that must be done by a date.", verb="Keep",
        back_url=reverse("duty_list"), then=lambda duty: reverse("duty_list"),
    )  # fmt: skip


def duty_done(request: HttpRequest, pk: int) -> HttpResponse:
    duty = access.fetch(request, Duty.objects.open(), pk=pk)
    if not access.may_fulfil(request.user, duty.role):
        access.require(request, "write", Duty)
    form = DutyDoneForm(request.POST or None)
    return answer_form(
        request,
        form,
        title="Done",
        sentence=duty.sentence,
        verb="Write down that it is done",
        back_url=reverse("duty_list"),
        act=lambda form: fulfil(duty=duty, party=access.party_of(request.user), **form.cleaned_data),
        then=lambda _: reverse("duty_list"),
    )


urls = [
    path("duties/", duty_list, name="duty_list"),
    path("duties/new/", duty_add, name="duty_add"),
    path("duties/<int:pk>/done/", duty_done, name="duty_done"),
]
