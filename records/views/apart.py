"""Tell them apart: two pieces of one line side by side, on a page and as a sheet to take along."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path

from records import access, clock
from records.apart import COMPARED, others_of, sheet_of
from records.models import Item
from records.pdf.page_sizes import page_size


def apart_choice(request: HttpRequest, number: str) -> HttpResponse:
    item = access.fetch(request, Item, number=number)
    return render(request, "records/apart_choice.html", {"item": item, "others": others_of(item)})


def _pair(request: HttpRequest, number: str, other: str) -> tuple[Item, Item]:
    rows = Item.objects.filter(kind__in=COMPARED)
    return access.fetch(request, rows, number=number), access.fetch(request, rows.exclude(number=number), number=other)


def apart(request: HttpRequest, number: str, other: str) -> HttpResponse:
    return render(request, "records/apart.html", {"sheet": sheet_of(*_pair(request, number, other))})


def apart_paper(request: HttpRequest, number: str, other: str) -> HttpResponse:
    """Made anew each time it is asked for: a working sheet, no issued paper."""
    from records.reports.apart import make_sheet  # the paper kit is read when a paper is made

    sheet = sheet_of(*_pair(request, number, other))
    size = page_size(request.GET.get("page_size", ""))
    answer = HttpResponse(make_sheet(sheet, clock.now(), size), content_type="application/pdf")
    answer["Content-Disposition"] = 'inline; filename="tell-apart.pdf"'
    return answer


urls = [
    path("things/<str:number>/apart/", apart_choice, name="apart_choice"),
    path("things/<str:number>/apart/<str:other>/", apart, name="apart"),
    path("things/<str:number>/apart/<str:other>/sheet.pdf", apart_paper, name="apart_paper"),
]
