"""Where things are kept."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from records import access
from records.forms.places import PlaceForm
from records.models import Place
from records.views.answering import answer_form
from records.views.listing import page


def place_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", Place)
    rows = Place.objects.select_related("within")
    return render(request, "records/place_list.html", {"page": page(rows, request, key="name")})


def place_add(request: HttpRequest) -> HttpResponse:
    access.require(request, "write", Place)
    form = PlaceForm(request.POST or None)
    return answer_form(
        request,
        form,
        title="New place",
        verb="Keep",
        back_url=reverse("place_list"),
        sentence="A room, case, cupboard or box in which things are kept.",
        then=Place.get_absolute_url,
    )


def place(request: HttpRequest, pk: int) -> HttpResponse:
    where = access.fetch(request, Place.objects.select_related("within"), pk=pk)
    context = {"place": where, "parts": where.parts.all(), "page": page(where.items.all(), request)}
    return render(request, "records/place.html", context)


def place_edit(request: HttpRequest, pk: int) -> HttpResponse:
    where = access.fetch(request, Place, to="write", pk=pk)
    form = PlaceForm(request.POST or None, instance=where)
    return answer_form(request, form, title=where.name, verb="Keep", back_url=where.get_absolute_url(),
                       then=Place.get_absolute_url)  # fmt: skip


urls = [
    path("places/", place_list, name="place_list"),
    path("places/new/", place_add, name="place_add"),
    path("places/<int:pk>/", place, name="place"),
    path("places/<int:pk>/edit/", place_edit, name="place_edit"),
]
