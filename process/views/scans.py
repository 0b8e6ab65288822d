"""Scans: sent, read at once or by the worker, looked at, and given back as they came."""

from django.contrib import messages
from django.http import FileResponse, Http404, HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.urls import path
from django.views.decorators.http import require_POST

from process.forms.scans import ScanForm, ScanReadForm
from process.models import AreaPart, Cathode
from process.services import scan_jobs
from process.services.scan_files import path_of
from records import access
from records.models import Job
from records.views.answering import answer_form

SENT = "A small scan is read at once, a large one by the worker: you look at its area before it counts."
FOUND = "Read to its end. Look whether size and side are right; only then does it count."


def send_scan(request: HttpRequest, part: AreaPart) -> HttpResponse:
    """What is sent and not kept is taken away again."""
    form = ScanForm(request.POST or None, request.FILES or None, instance=part, user=request.user)
    with form.holding:
        return answer_form(
            request, form, title="Area: scan", number=part.cathode.run.number, sentence=SENT, verb="Keep this part",
            back_url=part.get_absolute_url(), then=lambda kept: kept.get_absolute_url(),
        )  # fmt: skip


def scan_found(request: HttpRequest, token: str) -> HttpResponse:
    """What the worker read: kept as a part of the area, or taken away."""
    access.require(request, "write", AreaPart)
    job = access.fetch(request, Job, token=token, kind=scan_jobs.KIND)
    said = job.arguments
    cathode = access.fetch(request, Cathode.objects.select_related("run"), pk=said["cathode"])
    if not said["waits"]:
        messages.info(request, "This scan was kept or taken away already.")
        return redirect("cathode_area", cathode.pk)
    if "sides_dm2" not in said["facts"]:
        return redirect(job)
    part = AreaPart(cathode=cathode, shape=AreaPart.Shape.SCAN, scan_facts=said["facts"])
    form = ScanReadForm(request.POST or None, instance=part, job=job)
    return answer_form(
        request, form, title=f"Area: {said['facts']['name']}", number=cathode.run.number, sentence=FOUND,
        verb="Keep this part", back_url=part.get_absolute_url(), then=AreaPart.get_absolute_url,
        template="process/scan_found.html", job=job, facts=said["facts"],
    )  # fmt: skip


@require_POST
def scan_away(request: HttpRequest, token: str) -> HttpResponse:
    access.require(request, "write", AreaPart)
    job = access.fetch(request, Job, token=token, kind=scan_jobs.KIND)
    if job.arguments["waits"]:
        scan_jobs.take_away(job=job)
    return redirect("cathode_area", job.arguments["cathode"])


def area_scan(request: HttpRequest, pk: int) -> HttpResponseBase:
    """The scan as it came."""
    part = access.fetch(request, AreaPart, pk=pk)
    kept = path_of(part)
    if kept is None:
        raise Http404("Of this scan only the digest was kept, or its file is not in the data folder.")
    name = part.scan_facts["name"]
    return FileResponse(kept.open("rb"), as_attachment=True, filename=name, content_type="application/octet-stream")


urls = [
    path("scans/<uuid:token>/", scan_found, name="scan_found"),
    path("scans/<uuid:token>/away/", scan_away, name="scan_away"),
    path("areas/<int:pk>/scan/", area_scan, name="area_scan"),
]
