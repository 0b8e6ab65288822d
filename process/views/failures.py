"""The failure library, and the defects of a shell."""

from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import render
from django.urls import path, reverse

from process.forms.failures import DefectForm, FailureFilter, FailureForm
from process.models import Defect, Failure, Run, Shell
from process.views.rig_photos import VIEWS
from records import access
from records.models import Photo
from records.views.answering import answer_form
from records.views.listing import Column, export, page, wants_export
from records.views.uploading import answer_upload, upload_form

SENTENCE = "What failed, why, and what is done differently since: written once, found before the next run like it."
COLUMNS: list[Column] = [
    ("Number", "number"), ("Happened", "happened_on"), ("Run", lambda row: row.run or ""), ("In one line", "title"),
    ("What was seen", "what"), ("Cause", "cause"), ("The cause is", "get_certainty_display"), ("Lesson", "lesson"),
    ("What is done since", "action"), ("Shells", lambda row: ", ".join(map(str, row.shells.all()))),
]  # fmt: skip


def failure_list(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "view", Failure)
    form = FailureFilter(request.GET)
    rows = form.narrow(Failure.objects.select_related("run").prefetch_related("shells__item"))
    if wants_export(request):
        return export(rows, COLUMNS, "failures")
    unwritten = Run.objects.filter(outcome=Run.Outcome.FAILED, failures__isnull=True)[:20]
    context = {"form": form, "page": page(rows, request, key="-number"), "unwritten": unwritten, "sentence": SENTENCE}
    return render(request, "process/failure_list.html", context)


def failure_add(request: HttpRequest) -> HttpResponse:
    access.require(request, "write", Failure)
    run = Run.objects.select_related("bath").filter(number=request.GET.get("run", "")).first()
    offered = (
        {"what": run.outcome_words, "shells": Shell.objects.select_related("item").filter(cathode__run=run)}
        if run
        else {}
    )
    form = FailureForm(request.POST or None, run=run, user=request.user, initial=offered)
    return answer_form(
        request, form, title="Write down a failure", sentence=SENTENCE, verb="Keep it",
        then=Failure.get_absolute_url, back_url=run.get_absolute_url() if run else reverse("failure_list"),
    )  # fmt: skip


def failure(request: HttpRequest, number: str) -> HttpResponse:
    rows = Failure.objects.select_related("run__bath", "recorded_by").prefetch_related(
        "photos", "shells__item", "shells__defects__term"
    )
    return render(request, "process/failure.html", {"failure": access.fetch(request, rows, number=number)})


def failure_edit(request: HttpRequest, number: str) -> HttpResponse:
    row = access.fetch(request, Failure.objects.select_related("run"), to="write", number=number)
    form = FailureForm(request.POST or None, instance=row)
    return answer_form(
        request, form, title="Correct the entry", number=number, verb="Keep", then=Failure.get_absolute_url,
        back_url=row.get_absolute_url(),
    )  # fmt: skip


def failure_photo_add(request: HttpRequest, number: str) -> HttpResponseBase:
    row = access.fetch(request, Failure, to="write", number=number)
    access.require(request, "write", Photo)
    return answer_upload(
        request, upload_form(request, views=VIEWS), join=row.photos.add, title="Photographs of the failure",
        number=number, then=row.get_absolute_url(), back_url=row.get_absolute_url(),
    )  # fmt: skip


def defect_add(request: HttpRequest, number: str) -> HttpResponse:
    shell = access.fetch(request, Shell.objects.select_related("item"), item__number=number)
    access.require(request, "write", Defect)
    form = DefectForm(request.POST or None, instance=Defect(shell=shell), user=request.user)
    return answer_form(
        request, form, title=f"A defect of {number}", number=number, verb="Keep it", then=Defect.get_absolute_url,
        back_url=shell.get_absolute_url(), sentence="Say what is seen; the cause may stay unknown.",
    )  # fmt: skip


def defect_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, Defect.objects.select_related("shell__item"), to="write", pk=pk)
    form = DefectForm(request.POST or None, instance=row)
    return answer_form(
        request, form, title="Correct a defect", number=row.shell.item.number, verb="Keep",
        then=Defect.get_absolute_url, back_url=row.shell.get_absolute_url(),
    )  # fmt: skip


urls = [
    path("failures/", failure_list, name="failure_list"),
    path("failures/new/", failure_add, name="failure_add"),
    path("failures/<str:number>/", failure, name="failure"),
    path("failures/<str:number>/edit/", failure_edit, name="failure_edit"),
    path("failures/<str:number>/photographs/new/", failure_photo_add, name="failure_photo_add"),
    path("shells/<str:number>/defects/new/", defect_add, name="defect_add"),
    path("defects/<int:pk>/edit/", defect_edit, name="defect_edit"),
]
