"""How far long work is: by plain reload, or by itself where there is script."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import path
from django_htmx.http import HttpResponseClientRedirect

from records import access
from records.models import Job
from records.services import jobs


def job(request: HttpRequest, token: str) -> HttpResponse:
    """Done work leads on to what came of it."""
    shown = access.fetch(request, Job, token=token)
    if shown.state == Job.State.DONE:
        return HttpResponseClientRedirect(shown.url) if request.htmx else redirect(shown.url)
    template = "records/_job.html" if request.htmx else "records/job.html"
    return render(request, template, {"job": shown})


def job_again(request: HttpRequest, token: str) -> HttpResponse:
    shown = access.fetch(request, Job, to="write", token=token)
    if request.method == "POST":
        jobs.again(job=shown)
    return redirect(shown)


urls = [
    path("jobs/<uuid:token>/", job, name="job"),
    path("jobs/<uuid:token>/again/", job_again, name="job_again"),
]
