"""How many copies of this exist, where are they, and where are the moulds?"""

from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import render
from django.urls import path

from records import access
from records.family import Member, family_of
from records.family_sizes import sizes_of
from records.models import Item
from records.views.listing import export, wants_export


def _marked(member: Member) -> str:
    return "yes" if member.item.is_marked else "no"


COLUMNS = [
    ("number", "item__number"), ("kind", lambda m: m.item.get_kind_display()), ("title", "item__title"),
    ("line of descent", "words"), ("generation, at least", "lineage__generation"),
    ("surface transfers, at least", "lineage__transfer_count"), ("mark recorded", _marked), ("uses", "note__uses"),
    ("what became of it", "note__fate"), ("to be decided", "note__due"), ("place", "where"),
    ("owner", lambda m: m.item.owner or ""), ("held as", lambda m: m.item.get_status_display()),
]  # fmt: skip


def family(request: HttpRequest, number: str) -> HttpResponseBase:
    item = access.fetch(request, Item, number=number)
    found = family_of(item)
    if wants_export(request):
        return export([*found.roots, *found.copies, *found.moulds], COLUMNS, f"family-{number}")
    return render(request, "records/family.html", {"item": item, "family": found, "sizes": sizes_of(found)})


urls = [path("things/<str:number>/family/", family, name="family")]
