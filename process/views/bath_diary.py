"""The diary of a bath as one line of time, and the balance between two analyses."""

from typing import Any

from django import forms
from django.http import Http404, HttpRequest, HttpResponseBase
from django.shortcuts import render
from django.urls import path
from django.utils.timezone import localtime

from process.models import Bath
from process.summaries.bath_diary import KINDS, Entry, diary_of
from process.summaries.bath_page import read_bath
from process.summaries.baths import bath_ledger
from records import access, clock
from records.views.listing import PAGE_SIZE, Page, export, wants_export

COLUMNS = [
    ("time", lambda entry: localtime(entry.at).isoformat(timespec="minutes")), ("kind", "kind"), ("what", "title"),
    ("words", "words"), ("person", "person"), ("lot", "lot"),
    ("struck out", "struck_words"),
]  # fmt: skip


class DiaryFilter(forms.Form):
    """“Show the diary with …”."""

    kind = forms.ChoiceField(label="with", required=False, choices=[("", "everything"), *KINDS.items()])

    def kinds(self) -> list[str]:
        chosen = self.cleaned_data["kind"] if self.is_valid() else ""
        return [chosen] if chosen else list(KINDS)


def bath_diary(request: HttpRequest, number: str) -> HttpResponseBase:
    bath = access.fetch(request, Bath.objects.prefetch_related("limits"), number=number)
    form = DiaryFilter(request.GET)
    entries = diary_of(bath, bath_ledger(bath), form.kinds())
    if wants_export(request):
        return export(entries, COLUMNS, f"diary-{number}")
    shown = _page(entries, request.GET.get("after", ""))
    context: dict[str, Any] = {"bath": bath, "form": form, "page": shown, "count": len(entries)}
    return render(request, "process/bath_diary.html", context)


def _page(entries: list[Entry], after: str) -> Page:
    """The entries are one sorted list of several kinds of rows; their key is the instant, the kind and the row."""
    rest = [entry for entry in entries if not after or entry.key < after]
    more = len(rest) > PAGE_SIZE
    return Page(rest[:PAGE_SIZE], rest[PAGE_SIZE - 1].key if more else None)


def bath_balance(request: HttpRequest, number: str, analysis: str) -> HttpResponseBase:
    bath = access.fetch(request, Bath.objects.prefetch_related("limits"), number=number)
    balance = read_bath(bath, clock.today()).balance_to(analysis)
    if balance is None:
        raise Http404("There is no analysis of this number in this bath, or none before it to start from.")
    return render(request, "process/bath_balance.html", {"bath": bath, "balance": balance})


urls = [
    path("baths/<str:number>/diary/", bath_diary, name="bath_diary"),
    path("baths/<str:number>/balance/<str:analysis>/", bath_balance, name="bath_balance"),
]
