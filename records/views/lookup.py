"""What a number stands for while one types, and a few that fit: a help for fields of `records.forms.lookup`."""

import re

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path

from records import access
from records.forms.lookup import LookupWidget
from records.lookups import LONGEST, LONGEST_LIST, LOOKUPS, last_of
from records.models import Item


def lookup(request: HttpRequest, kind: str) -> HttpResponse:
    """The lines beneath the field; or, where one was picked, the field with it written in."""
    access.require(request, "view", Item)
    name = request.GET.get("name", "")
    if kind not in LOOKUPS or not re.fullmatch(r"[\w-]{1,60}", name):
        raise Http404("No such list.")
    widget = LookupWidget(kind, several="several" in request.GET, inside=request.GET.get("in", "").replace("\0", ""))
    widget.may_add = bool(widget.lookup.begun) and access.may(request.user, "write", widget.lookup.model)
    text = request.GET.get(name, "").replace("\0", "")[: LONGEST_LIST if widget.several else LONGEST].rstrip(" ")
    if picked := request.GET.get("pick", "").replace("\0", ""):
        before = text[: len(text) - len(last_of(text))].rstrip(" ") if widget.several else ""
        attrs = {"id": f"id_{name}", "autofocus": True, "aria-describedby": f"id_{name}_found"}
        return HttpResponse(widget.render(name, f"{before}{picked}", attrs))
    context = {**widget.get_context(name, text, {"id": f"id_{name}"}), "live": True}
    return render(request, "records/_lookup_found.html", context)


urls = [path("lookup/<str:kind>/", lookup, name="lookup")]
