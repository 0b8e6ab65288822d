"""Search: a whole number goes straight to its page; words find things, and numbers of everything else."""

from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import path

from records import access, extensions
from records.extensions import SearchHit
from records.lost import with_flags
from records.models import Item
from records.portraits import with_portraits
from records.search_sources import OWN_SOURCES
from records.searching import find, fold
from records.views.listing import page

LONGEST = 120


def search(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "view", Item)
    typed = " ".join(request.GET.get("q", "").replace("\0", "").split())[:LONGEST]
    if not typed:
        return render(request, "records/search.html", {"typed": ""})
    if thing := Item.objects.filter(number__iexact=typed).first():
        return redirect(thing)
    hits = _hits(typed)
    if exact := next((hit for hit in hits if hit.number and fold(hit.number) == fold(typed)), None):
        return redirect(exact.url)
    found = page(with_portraits(find(with_flags(Item.objects.select_related("place")), typed)), request)
    return render(request, "records/search.html", {"typed": typed, "page": found, "hits": hits})


def _hits(typed: str) -> list[SearchHit]:
    """Hits among other records, each kind's numbers first."""
    sources = (*OWN_SOURCES, *extensions.search_sources)
    return [hit for source in sources for hit in source(typed)]


urls = [path("search/", search, name="search")]
