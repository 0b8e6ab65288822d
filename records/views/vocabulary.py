"""Words with neutral definitions, which the museum edits."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse
from django.utils.text import capfirst

from records import access
from records.forms.vocabulary import TermForm
from records.models import Term
from records.seeding import STARTING
from records.views.writing import begin, correct

SENTENCE = "Say what one sees, not what one suspects; the definition stands beside every choice."


def vocabulary_list(request: HttpRequest) -> HttpResponse:
    """One scheme at a time: a vocabulary is read through, not paged."""
    access.require(request, "view", Term)
    scheme = request.GET.get("scheme") if request.GET.get("scheme") in Term.Scheme.values else Term.Scheme.FINDING
    context = {"scheme": scheme, "schemes": Term.Scheme.choices, "terms": Term.objects.filter(scheme=scheme),
               "starting": STARTING}  # fmt: skip
    return render(request, "records/vocabulary_list.html", context)


def term_add(request: HttpRequest) -> HttpResponse:
    return begin(
        request, TermForm, title="New word", sentence=SENTENCE, verb="Keep", back_url=reverse("vocabulary_list"),
        offer=lambda: {"scheme": request.GET.get("scheme", "")}, then=_list_of,
    )  # fmt: skip


def term_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, TermForm, where={"pk": pk}, title=lambda term: capfirst(term.label), verb="Keep", then=_list_of,
        sentence="Records that use this word keep it; they show the new spelling.",
    )  # fmt: skip


def _list_of(term: Term) -> str:
    return f"{reverse('vocabulary_list')}?scheme={term.scheme}"


urls = [
    path("vocabulary/", vocabulary_list, name="vocabulary_list"),
    path("vocabulary/new/", term_add, name="term_add"),
    path("vocabulary/<int:pk>/edit/", term_edit, name="term_edit"),
]
