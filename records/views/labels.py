"""The wording of a copy's label: written, checked, approved."""

from typing import Any

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import path, reverse
from django.views.decorators.http import require_POST

from records import access, clock, extensions, labelling
from records.forms.labels import LabelForm
from records.gates import GateClosed, Subject, checks
from records.labelling import Labelled
from records.limits import limits_conceded
from records.line import keep_line
from records.models import Gate, Item, LabelWording
from records.original_marks import keep_marks
from records.services.signing import approve_label
from records.views.answering import answer_form, closed_words
from records.wording.reading import reading_size, x_height_mm

COPIES = Item.objects.copies().select_related("owner", "label__signed_by", "rule_facts")
SENTENCE = "One approved wording, from which every label, tag and caption of this copy is printed."
CHANGED = "The wording was changed since you opened this page: read it again before you approve it."


def label_edit(request: HttpRequest, number: str) -> HttpResponse:
    """Whoever may not write it reads it here."""
    copy = access.fetch(request, COPIES, number=number)
    label = getattr(copy, "label", None)
    keep_line(copy)
    keep_marks(copy)
    labelled = labelling.gather(copy)
    context = _context(copy, label, labelled)
    if not access.may(request.user, "write", LabelWording):
        return render(request, "records/label.html", context)
    fresh = {} if label else labelling.proposal(labelled)
    form = LabelForm(
        request.POST or None, instance=label or LabelWording(item=copy), initial=fresh, facts=labelled.facts
    )
    return answer_form(
        request, form, verb="Keep the wording", template="records/label.html",
        act=lambda form: _keep(request, form), then=lambda label: reverse("label_edit", args=[number]), **context,
    )  # fmt: skip


def _context(copy: Item, label: LabelWording | None, labelled: Labelled) -> dict[str, Any]:
    subject = Subject(copy, copy.number, (copy,))
    found = labelling.complaints(label, labelled) if label else []
    return {
        "title": f"Label of {copy.number}", "sentence": SENTENCE, "item": copy, "label": label, "complaints": found,
        "is_refused": any(one.severity == "refuse" for one in found),
        "is_asked": any(one.severity == "ask" for one in found),
        "draft": labelling.draft_of(label) if label else None,
        "reading": _reading(label) if label else None,
        "mark_checks": checks(Gate.MARK, subject, clock.today()),
        "consents": [consent for consent in labelled.consents if consent.label_wording or consent.credit],
        "conceded": [limit.sentence for limit in limits_conceded(copy, labelled.descent)],
        "back_url": copy.get_absolute_url(), "issue": _paper(copy, label),
    }  # fmt: skip


def _reading(label: LabelWording) -> dict[str, float]:
    """How large the letters are, for whoever judges the label on a page."""
    distance_m = label.distance_mm / 1000
    return {
        "distance_m": distance_m, "x_height_mm": x_height_mm(distance_m, label.light),
        "size_pt": reading_size(distance_m, label.light),
    }  # fmt: skip


def _paper(copy: Item, label: LabelWording | None) -> extensions.PaperKind | None:
    """The gallery label, once its wording is approved and nothing else forbids it."""
    kind = extensions.paper_kinds.get("gallery-label")
    if kind is None or label is None or not label.is_signed or kind.refusals(copy):
        return None
    return kind


def _keep(request: HttpRequest, form: LabelForm) -> LabelWording:
    was_approved = form.instance.is_signed
    label = form.save()
    if was_approved and not label.is_signed:
        messages.warning(
            request, "The wording changed: it has to be approved again. The one before stays in the history."
        )
    else:
        messages.success(request, "The wording is kept.")
    return label


@require_POST
def label_approve(request: HttpRequest, number: str) -> HttpResponse:
    rows = LabelWording.objects.select_related("item__owner")
    label = access.fetch(request, rows, to="approve label", item__number=number)
    party, role = access.signer(request, "approve label")
    context: dict[str, Any] = {}
    try:
        if request.POST.get("version") != str(label.version):
            raise ValidationError(CHANGED)
        approve_label(label=label, party=party, role=role, answer=request.POST.get("answer", "")[:300])
        return redirect("label_edit", number)
    except ValidationError as error:
        context["refusals"] = error.messages
    except GateClosed as gate:
        context["closed"] = closed_words(gate)
    return _not_approved(request, label, context)


def _not_approved(request: HttpRequest, label: LabelWording, context: dict[str, Any]) -> HttpResponse:
    labelled = labelling.gather(label.item)
    context |= {"gate_final": True, "verb": "Keep the wording"}
    form = LabelForm(instance=label, facts=labelled.facts)
    shown = {**_context(label.item, label, labelled), "form": form, **context}
    return render(request, "records/label.html", shown, status=422)


urls = [
    path("things/<str:number>/label/", label_edit, name="label_edit"),
    path("things/<str:number>/label/approve/", label_approve, name="label_approve"),
]
