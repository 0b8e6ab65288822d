"""Which of the three figures of charge counts, and the words that logger columns are known by."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from process.forms.runs import ChargeForm
from process.forms.traces import HeaderWordForm
from process.models import HeaderWord, Run
from process.summaries.runs import summarise
from records import access
from records.units import show
from records.views.answering import answer_form

WORDS = (
    "Words that stand above the columns of loggers and power units, and what they mean. A unit says more than a word."
)


def charge_choose(request: HttpRequest, number: str) -> HttpResponse:
    run = access.fetch(request, Run.objects.with_sheet().with_traces(), to="write", number=number)
    form = ChargeForm(request.POST or None, instance=run)
    if not request.POST:
        form.initial["charge_reason"] = run.charge_reason
    beside = [each for each in summarise(run).charge.beside if each.figure and each.figure.value is not None]
    known = "; ".join(f"{each.name}: {show(each.figure.value, '_ah')}" for each in beside)
    return answer_form(
        request, form, title="Which charge counts", number=number, verb="Keep the choice", intro=known + ".",
        sentence="Mass, thickness, efficiency and the bath’s ledger follow; the history keeps the choice before.",
        then=lambda run: f"{run.get_absolute_url()}#charge", back_url=f"{run.get_absolute_url()}#charge",
    )  # fmt: skip


def header_word_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", HeaderWord)
    rows = HeaderWord.objects.all()
    return render(request, "process/header_word_list.html", {"rows": rows, "sentence": WORDS})


def header_word_add(request: HttpRequest) -> HttpResponse:
    access.require(request, "write", HeaderWord)
    return _word(request, HeaderWordForm(request.POST or None), "A word above a column")


def header_word_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, HeaderWord, to="write", pk=pk)
    return _word(request, HeaderWordForm(request.POST or None, instance=row), f"“{row.word}”")


def _word(request: HttpRequest, form: HeaderWordForm, title: str) -> HttpResponse:
    back = reverse("header_word_list")
    return answer_form(request, form, title=title, verb="Keep", then=lambda _: back, back_url=back)


urls = [
    path("runs/<str:number>/charge/", charge_choose, name="charge_choose"),
    path("header-words/", header_word_list, name="header_word_list"),
    path("header-words/new/", header_word_add, name="header_word_add"),
    path("header-words/<int:pk>/edit/", header_word_edit, name="header_word_edit"),
]
