"""Marks: recording one with its photograph, and how it stands against the recorded rules."""

from typing import Any

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.urls import path, reverse

from records import access, marking
from records.forms.marks import MarkForm
from records.judging import piece_facts, verdicts_of
from records.lineage import descent_of
from records.models import Item, Mark, Photo
from records.services.photographs import keep_photo
from records.views.answering import answer_form

SENTENCE = "A permanent mark in the metal, read letter by letter and photographed: what nobody can take off a tag."


def mark_add(request: HttpRequest, number: str) -> HttpResponse:
    item = access.fetch(request, Item, number=number)
    access.require(request, "write", Mark)
    initial = {"made_by": access.party_of(request.user), **({} if item.is_copy else {"purpose": Mark.Purpose.MAKER})}
    form = MarkForm(request.POST or None, request.FILES or None, instance=Mark(item=item), initial=initial)
    return _answer(request, form, f"Record a mark on {number}", advice=_advice(item) if item.is_copy else [])


def mark_edit(request: HttpRequest, pk: int) -> HttpResponse:
    mark = access.fetch(request, Mark.objects.select_related("item__rule_facts"), to="write", pk=pk)
    judged = verdicts_of(mark, _piece(mark.item))
    form = MarkForm(request.POST or None, request.FILES or None, instance=mark)
    return _answer(request, form, f"Mark “{mark.text}” on {mark.item.number}", mark=mark, verdicts=judged)


def _piece(item: Item) -> marking.PieceFacts:
    model = descent_of(item).model
    return piece_facts(item, [model] if model else [])


def _advice(item: Item) -> list[marking.before.Advice]:
    return marking.advise(_piece(item))


def _answer(request: HttpRequest, form: MarkForm, title: str, **context: Any) -> HttpResponse:
    item = form.instance.item
    return answer_form(
        request, form, title=title, sentence=SENTENCE, verb="Keep the mark",
        back_url=f"{item.get_absolute_url()}#marks",
        act=lambda form: _keep(request, form), then=lambda mark: reverse("mark_edit", args=[mark.pk]),
        template="records/mark_form.html", item=item, disclaimer=marking.ADVICE,
        onward=f"Go on with {item.number}", **context,
    )  # fmt: skip


def _keep(request: HttpRequest, form: MarkForm) -> Mark:
    """The mark and, if one was sent along, its photograph; both or neither."""
    mark = form.save(commit=False)
    file = form.cleaned_data["new_photo"]
    if file:
        mark.photo = keep_photo(
            file=file, name=file.name, facts=form.picture, item=mark.item, view=Photo.View.MARK,
            caption=f"Mark “{mark.text}”",
            taken_by=mark.witness or mark.made_by,
        )  # fmt: skip
    form.save()
    messages.success(request, f"Kept: {mark}." if mark.photo_id else f"Kept: {mark}. It still needs its photograph.")
    return mark


urls = [
    path("things/<str:number>/marks/new/", mark_add, name="mark_add"),
    path("marks/<int:pk>/edit/", mark_edit, name="mark_edit"),
]
