"""Things: the list, one thing's page, entering and mending one, and what was changed."""

from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import render
from django.urls import path, reverse

from records import access
from records.changes import changes_of
from records.filters import ItemFilter
from records.forms.items import ItemForm, NewItemForm
from records.lost import with_flags
from records.models import Item
from records.portraits import with_portraits
from records.services.holding import keep_thing
from records.views.answering import answer_form, wants_afterwards
from records.views.item_page import THINGS, context_of
from records.views.listing import export, page, wants_export

COLUMNS = [
    ("number", "number"), ("kind", "get_kind_display"), ("title", "title"), ("type of object", "object_type"),
    ("materials and techniques", "materials"), ("date or period", "date_words"), ("maker", "maker"),
    ("held as", "get_status_display"), ("owner", lambda item: item.owner or ""),
    ("place", lambda item: item.place or ""), ("flag", "flag"),
]  # fmt: skip
ADD_SENTENCE = (
    "An original, a historic copy, a cast or a matrix that the museum holds or borrows. Moulds, cores, shells and "
    "copies made here come from their own pages, which record how they came to be."
)


def item_list(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "view", Item)
    form = ItemFilter(request.GET)
    rows = form.narrow(with_flags(Item.objects.select_related("owner", "place")))
    if wants_export(request):
        return export(rows, COLUMNS, "objects")
    context = {"form": form, "page": page(with_portraits(rows), request), "count": rows.count()}
    return render(request, "records/item_list.html", context)


def item(request: HttpRequest, number: str) -> HttpResponseBase:
    thing = access.fetch(request, THINGS, number=number)
    return render(request, "records/item.html", context_of(request, thing))


def item_add(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "write", Item)
    form = NewItemForm(request.POST or None, initial={"kind": request.GET.get("kind", "original")})
    return answer_form(
        request, form, title="Enter an object", sentence=ADD_SENTENCE, verb="Enter it",
        back_url=reverse("item_list"), then=Item.get_absolute_url,
    )  # fmt: skip


def item_edit(request: HttpRequest, number: str) -> HttpResponseBase:
    thing = access.fetch(request, Item, to="write", number=number)
    back = thing.get_absolute_url()
    form = ItemForm(request.POST or None, instance=thing)
    return answer_form(
        request, form, title=f"Correct {number}", sentence="What was written before is kept in the history.",
        verb="Save", back_url=back, then=Item.get_absolute_url,
        act=lambda form: keep_thing(
            thing=thing, save=form.save, afterwards=wants_afterwards(request), held_anew="status" in form.changed_data
        ),
    )  # fmt: skip


def item_history(request: HttpRequest, number: str) -> HttpResponseBase:
    thing = access.fetch(request, Item, number=number)
    return render(request, "records/item_history.html", {"item": thing, "entries": changes_of(thing)})


urls = [
    path("things/", item_list, name="item_list"),
    path("things/new/", item_add, name="item_add"),
    path("things/<str:number>/", item, name="item"),
    path("things/<str:number>/edit/", item_edit, name="item_edit"),
    path("things/<str:number>/history/", item_history, name="item_history"),
]
