"""How a thing may be used: fetched by the pages that concern it when they are shown, and a page of its own."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path

from records import access
from records.limits import limits_along
from records.models import Item


def thing_limits(request: HttpRequest, number: str) -> HttpResponse:
    item = access.fetch(request, Item, number=number)
    template = "records/_limits_brief.html" if request.htmx else "records/thing_limits.html"
    return render(request, template, {"item": item, "limits": limits_along(item)})


urls = [path("things/<str:number>/limits/", thing_limits, name="thing_limits")]
