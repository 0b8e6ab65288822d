"""Issued papers: the list of all of them, the stored file itself, and issuing the next version."""

import hashlib
from typing import Any

from django import forms
from django.contrib import messages
from django.core.exceptions import ValidationError
from django.db import IntegrityError
from django.db.models import Exists, OuterRef
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import path, reverse
from django.utils.http import urlencode
from django.views.decorators.http import require_POST

from records import access, extensions
from records.forms import sending
from records.models import Commission, ConditionReport, Disposal, Document, Handover, Item, RiskAssessment
from records.pdf.page_sizes import page_size
from records.pdf.refusal import CannotPrint
from records.services import papers
from records.views.listing import export, page, wants_export

COLUMNS = [
    ("Paper", "title"), ("Kind", "kind"), ("About", "number"), ("Version", "edition_count"), ("Issued at", "issued_at"),
    ("Issued by", "issued_by"), ("As", "signed_role"), ("SHA-256 of the file", "sha256"),
    ("SHA-256 of the record", "record_sha256"), ("Size, bytes", "size_bytes_count"),
]  # fmt: skip
# What a person can mend: a rule, a text that does not fit or print, a lost picture, a colleague at the same moment.
REFUSED = (ValidationError, CannotPrint, IntegrityError)
SUBJECTS = (Item, ConditionReport, Commission, Handover, Disposal, RiskAssessment)


def document_list(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "view", Document)
    later = Document.objects.filter(
        kind=OuterRef("kind"), number=OuterRef("number"), edition_count__gt=OuterRef("edition_count")
    )
    rows = Document.objects.select_related("issued_by", "item").annotate(is_replaced=Exists(later))
    kind, words, shown = (request.GET.get(name, "").strip() for name in ("kind", "q", "show"))
    if kind in extensions.paper_kinds:
        rows = rows.filter(kind=kind)
    if words:
        rows = rows.filter(number__icontains=words)
    if shown != "all":
        rows = rows.filter(is_replaced=False)
    if wants_export(request):
        return export(rows, COLUMNS, "papers")
    context = {
        "page": page(rows, request, key=("-issued_at", "pk")),
        "kinds": extensions.paper_kinds.values(),
        "kind": kind,
        "q": words,
        "shown": shown,
    }
    return render(request, "records/document_list.html", context)


def document(request: HttpRequest, pk: int) -> HttpResponse:
    """The stored file as it was issued, never made anew; one that was changed since is not passed off as the paper."""
    paper = access.fetch(request, Document, pk=pk)
    file = papers.path_of(paper)
    if not file.is_file():
        raise Http404(f"The file of {paper} is not in the data folder: restore it from the backup.")
    content = file.read_bytes()
    if hashlib.sha256(content).hexdigest() != paper.sha256:
        return render(request, "records/document_refused.html", {"paper": paper}, status=409)
    response = HttpResponse(content, content_type="application/pdf")
    response["Content-Disposition"] = f'inline; filename="{paper.path}"'
    response["X-Content-Type-Options"] = "nosniff"
    response["Cache-Control"] = "private, no-cache"
    return response


@require_POST
def paper_issue(request: HttpRequest, kind: str, number: str) -> HttpResponse:
    known = extensions.paper_kinds.get(kind)
    party, role = access.signer(request, known.act if known else "issue paper")
    subject = _subject(kind, number)
    form = forms.Form(request.POST)
    size = page_size(request.POST.get("page_size", ""))
    try:
        with sending.taken(form, request):
            paper = papers.issue(kind=kind, subject=subject, party=party, role=role, page_size=size)
    except sending.SentAlready:
        messages.info(request, "This paper was asked for twice at once, and is issued once.")
        return redirect(f"{subject.get_absolute_url()}#papers")
    except REFUSED as refused:
        for sentence in _sentences(refused):
            messages.error(request, sentence)
        return redirect(f"{subject.get_absolute_url()}#papers")
    messages.success(request, f"{paper.title}, version {paper.edition_count}, is issued and kept.")
    return redirect(f"{reverse('document_list')}?{urlencode({'q': paper.number})}")


def _subject(kind: str, number: str) -> Any:
    """What the paper is about: the thing, report or commission of that number that this kind of paper is made for."""
    paper = extensions.paper_kinds.get(kind)
    if paper is None:
        raise Http404("There is no such kind of paper.")
    found = (model.objects.filter(number=number).first() for model in (*SUBJECTS, *extensions.paper_subjects))
    subject = next((each for each in found if each is not None and paper.applies_to(each)), None)
    if subject is None:
        raise Http404(
            f"There is no {paper.title.lower()} of {number}: the number is unknown, or such a paper is not made of it."
        )
    return subject


def _sentences(refused: Exception) -> list[str]:
    """Why nothing was issued, one sentence each."""
    if isinstance(refused, ValidationError):
        return refused.messages
    if isinstance(refused, IntegrityError):
        return [
            "Somebody issued this paper at the same moment. Look at it in the list; issue again if you still need to."
        ]
    return [str(refused)]


urls = [
    path("papers/", document_list, name="document_list"),
    path("papers/<int:pk>/", document, name="document"),
    path("papers/issue/<str:kind>/<str:number>/", paper_issue, name="paper_issue"),
]
