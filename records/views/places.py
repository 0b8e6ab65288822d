"""Where things are kept."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from records import access
from records.filters import PlaceFilter
from records.forms.places import PlaceForm
from records.models import Place
from records.views.listing import PAGE_SIZE, page
from records.views.writing import begin, correct

SENTENCE = "A room, case, cupboard or box in which things are kept."


def place_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", Place)
    form = PlaceFilter(request.GET)
    rows = form.narrow(Place.objects.select_related("within"))
    context = {"form": form, "page": page(rows, request, key="name"), "count": rows.count()}
    return render(request, "records/place_list.html", context)


def place_add(request: HttpRequest) -> HttpResponse:
    return begin(
        request, PlaceForm, title="New place", sentence=SENTENCE, verb="Keep", back_url=reverse("place_list"),
        then=Place.get_absolute_url,
    )  # fmt: skip


def place(request: HttpRequest, pk: int) -> HttpResponse:
    where = access.fetch(request, Place.objects.select_related("within"), pk=pk)
    parts = where.parts.all()[: PAGE_SIZE + 1]
    context = {
        "place": where,
        "parts": parts[:PAGE_SIZE],
        "more": len(parts) > PAGE_SIZE,
        "page": page(where.items.all(), request),
    }
    return render(request, "records/place.html", context)


def place_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, PlaceForm, where={"pk": pk}, title=lambda where: where.name, verb="Keep", then=Place.get_absolute_url
    )


urls = [
    path("places/", place_list, name="place_list"),
    path("places/new/", place_add, name="place_add"),
    path("places/<int:pk>/", place, name="place"),
    path("places/<int:pk>/edit/", place_edit, name="place_edit"),
]
