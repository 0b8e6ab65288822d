"""The vocabulary as SKOS: handed out as one file, and taken in after a look at what it would change."""

from typing import Any

from django.conf import settings
from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import path, reverse

from records import access, clock
from records.forms.vocabulary_exchange import ExchangeForm
from records.models import Term
from records.services import vocabulary


def vocabulary_skos(request: HttpRequest) -> HttpResponse:
    """All words of one kind, or of all, as Turtle."""
    from records.skos.writing import turtle

    access.require(request, "view", Term)
    scheme = request.GET.get("scheme", "")
    terms = Term.objects.filter(scheme=scheme) if scheme in Term.Scheme.values else Term.objects.all()
    base = f"{settings.BASE_URL}{reverse('vocabulary_list')}"
    response = HttpResponse(
        turtle(vocabulary.words_of(terms), dict(Term.Scheme.choices), base), content_type="text/turtle; charset=utf-8"
    )
    response["Content-Disposition"] = f'attachment; filename="vocabulary-{clock.today()}.ttl"'
    return response


def vocabulary_import(request: HttpRequest) -> HttpResponse:
    """First the differences, then, of those that were seen, the change."""
    access.require(request, "write", Term)
    form = ExchangeForm(request.POST or None, request.FILES or None)
    found: list[vocabulary.Difference] | None = None
    if request.method == "POST" and form.is_valid():
        found = _compared(form)
        if found and form.cleaned_data["seen"] and _taken(form):
            messages.success(request, f"{_counted(found)}; what the file does not name is as it was.")
            return redirect(f"{reverse('vocabulary_list')}?scheme={found[0].term.scheme}")
    status = 422 if form.errors else 200
    return render(request, "records/vocabulary_import.html", _context(form, found), status=status)


def _compared(form: ExchangeForm) -> list[vocabulary.Difference] | None:
    from records.skos.words import NotTaken

    try:
        return vocabulary.differences(form.cleaned_data["words"])
    except NotTaken as fault:
        form.add_error("file", str(fault))
        return None


def _taken(form: ExchangeForm) -> bool:
    try:
        vocabulary.take_in(words=form.cleaned_data["words"], seen=form.cleaned_data["seen"])
    except ValidationError as changed:
        form.add_error(None, changed)
        return False
    return True


def _counted(found: list[vocabulary.Difference]) -> str:
    new = sum(each.is_new for each in found)
    return f"{new} new, {len(found) - new} changed"


def _context(form: ExchangeForm, found: list[vocabulary.Difference] | None) -> dict[str, Any]:
    context: dict[str, Any] = {"form": form, "found": found, "title": "Take in a vocabulary"}
    if found is not None:
        words = form.cleaned_data["words"]
        context |= {
            "text": form.cleaned_data["text"], "seen": vocabulary.mark_of(found), "counted": _counted(found),
            "same_count": len(words) - len(found), "left_out": form.cleaned_data["left_out"],
        }  # fmt: skip
    return context


urls = [
    path("vocabulary/skos/", vocabulary_skos, name="vocabulary_skos"),
    path("vocabulary/import/", vocabulary_import, name="vocabulary_import"),
]
