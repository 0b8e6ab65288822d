"""Surfaces and mould materials: the table, and its rows."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse
from django.utils.text import capfirst

from records import access
from records.compatibility import STATES
from records.forms.compatibility import CompatibilityForm
from records.models import Compatibility
from records.views.writing import begin, correct

SENTENCE = "What touches a surface nearly always leaves a trace: which mould each surface bears, and how that is known."
OWN = "One surface and one material; the assessments that follow are answered by it."


def compatibility_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", Compatibility)
    rows = Compatibility.objects.select_related("surface", "material")
    by_surface: dict[str, list[tuple[Compatibility, str]]] = {}
    for row in rows:
        by_surface.setdefault(row.surface.label, []).append((row, STATES[Compatibility.Verdict(row.verdict)]))
    context = {"sentence": SENTENCE, "surfaces": by_surface.items()}
    return render(request, "records/compatibility_list.html", context)


def compatibility_add(request: HttpRequest) -> HttpResponse:
    back = reverse("compatibility_list")
    return begin(
        request, CompatibilityForm, title="A surface and a mould material", sentence=OWN, verb="Keep", back_url=back,
        then=lambda row: back,
    )  # fmt: skip


def compatibility_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, CompatibilityForm, where={"pk": pk}, sentence=OWN, verb="Keep",
        title=lambda row: f"{capfirst(row.material)} on {row.surface}",
        then=lambda row: reverse("compatibility_list"),
    )  # fmt: skip


urls = [
    path("compatibility/", compatibility_list, name="compatibility_list"),
    path("compatibility/new/", compatibility_add, name="compatibility_add"),
    path("compatibility/<int:pk>/edit/", compatibility_edit, name="compatibility_edit"),
]
