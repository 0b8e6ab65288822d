"""The walls of a shell and of a copy: fetched by their pages when they are shown, and pages of their own."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path

from process.models import MakingUp, Shell
from process.summaries.copy_limits import limits_of_shells
from records import access


def _part(request: HttpRequest, name: str, part: str, context: dict) -> HttpResponse:
    return render(request, part if request.htmx else f"process/{name}.html", context)


def shell_evidence(request: HttpRequest, number: str) -> HttpResponse:
    shell = access.fetch(request, Shell.objects.select_related("item"), item__number=number)
    context = {
        "shell": shell,
        "coupons": shell.coupon_tests.select_related("tested_by"),
        "defects": shell.defects.select_related("term", "photo"),
        "failures": shell.failures.select_related("run"),
        "may_write": access.may(request.user, "write", Shell),
    }
    return _part(request, "shell_evidence", "process/_shell_evidence.html", context)


def copy_walls(request: HttpRequest, number: str) -> HttpResponse:
    making = access.fetch(request, MakingUp.objects.select_related("copy"), copy__number=number)
    context = {"copy": making.copy, "limits": limits_of_shells(making.shells.all())}
    return _part(request, "copy_walls", "process/_wall_limits.html", context)


urls = [
    path("shells/<str:number>/evidence/", shell_evidence, name="shell_evidence"),
    path("copies/<str:number>/walls/", copy_walls, name="copy_walls"),
]
