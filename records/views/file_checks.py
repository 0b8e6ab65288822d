"""Whether the kept files are still as they came: the last reading of them all, and those before."""

from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import render
from django.urls import path

from records import access
from records.models import FileCheck

SHOWN = 12


def file_check_list(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "view", FileCheck)
    last, *earlier = list(FileCheck.objects.all()[:SHOWN]) or [None]
    return render(request, "records/file_check_list.html", {"last": last, "earlier": earlier})


urls = [path("kept-files/", file_check_list, name="file_check_list")]
