"""Cores: plaster positives that stay inside."""

from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import render
from django.urls import path, reverse

from process.forms.cores import CoreChangeForm, CoreForm
from process.models import Core
from process.services.moulds import cast_core
from process.summaries.core_lines import cores_with_lines, line_of_core
from records import access
from records.views.answering import answer_form, wants_afterwards
from records.views.listing import Column, export, page, wants_export
from records.views.writing import correct

SENTENCE = "A cast that is waterproofed, coated and covered with metal. Dry it to constant mass before the bath."


COLUMNS: list[Column] = [
    ("number", "core.item.number"), ("cast in", "core.pull.mould.item.number"), ("cast on", "core.cast_on"),
    ("before the bath", "before.code"), ("leak test", "leak_words"), ("after the bath", "skin_words"),
]  # fmt: skip


def core_list(request: HttpRequest) -> HttpResponseBase:
    """Where each core stands: dry, tight, skinned, dry again."""
    access.require(request, "view", Core)
    rows = cores_with_lines()
    if wants_export(request):
        return export([line_of_core(core) for core in rows], COLUMNS, "cores")
    found = page(rows, request, key="pk")
    context = {"page": found, "lines": [line_of_core(core) for core in found.rows]}
    return render(request, "process/core_list.html", context)


def core_add(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "write", Core)
    form = CoreForm(request.POST or None)
    return answer_form(
        request,
        form,
        title="Record a core",
        sentence=SENTENCE,
        verb="Record the core",
        back_url=reverse("mould_list"),
        act=lambda form: cast_core(
            mould=form.cleaned_data["mould"],
            core=form.save(commit=False),
            afterwards=wants_afterwards(request),
            **form.identity(),
        ),
        then=lambda core: core.item,
    )


def core_edit(request: HttpRequest, number: str) -> HttpResponseBase:
    return correct(
        request, CoreChangeForm, where={"item__number": number}, related=("item",), sentence=SENTENCE,
        title=lambda core: f"Correct {number}", then=lambda core: core.item,
    )  # fmt: skip


urls = [
    path("cores/", core_list, name="core_list"),
    path("cores/new/", core_add, name="core_add"),
    path("cores/<str:number>/edit/", core_edit, name="core_edit"),
]
