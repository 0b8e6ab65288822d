"""Risk assessments: may this surface bear a mould?"""

from typing import Any

from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import path
from django.views.decorators.http import require_POST

from records import access
from records.compatibility import STATES, faults, remarks, rows_for
from records.forms.risks import RiskForm
from records.models import Compatibility, Item, RiskAssessment
from records.services.signing import refuse_unread, sign
from records.views.answering import answer_form
from records.views.offered_papers import kinds_for

SENTENCE = "Materials that touch a surface nearly always leave a trace: decide with a reason, and sign."


def risk_add(request: HttpRequest, number: str) -> HttpResponse:
    item = access.fetch(request, Item, number=number)
    access.require(request, "write", RiskAssessment)
    last = item.commissions.order_by("-number").first()
    initial = {"assessor": access.party_of(request.user), "commission": last, "surface": item.materials}
    form = RiskForm(request.POST or None, instance=RiskAssessment(item=item), initial=initial)
    return answer_form(
        request,
        form,
        title=f"Assess the risk of moulding {item.number}",
        sentence=SENTENCE,
        verb="Keep",
        back_url=item.get_absolute_url(),
        then=RiskAssessment.get_absolute_url,
    )


def risk(request: HttpRequest, number: str) -> HttpResponse:
    rows = RiskAssessment.objects.select_related("item", "commission", "assessor", "signed_by", "mould_material")
    return render(request, "records/risk.html", _shown(access.fetch(request, rows, number=number)))


def _shown(risk: RiskAssessment) -> dict[str, Any]:
    """What is signed is the version that stands on this page."""
    rows = rows_for(risk.surfaces)
    return {
        "risk": risk, "sign_fields": [("version", risk.version)], "remarks": remarks(risk, rows),
        "papers": kinds_for(risk),
        "answers": [(row, STATES[Compatibility.Verdict(row.verdict)]) for row in rows],
    }  # fmt: skip


def risk_edit(request: HttpRequest, number: str) -> HttpResponse:
    found = access.fetch(request, RiskAssessment, to="write", number=number)
    if found.is_signed:
        return redirect(found)
    form = RiskForm(request.POST or None, instance=found)
    return answer_form(
        request,
        form,
        title=found.number,
        sentence=SENTENCE,
        verb="Keep",
        back_url=found.get_absolute_url(),
        then=RiskAssessment.get_absolute_url,
    )


@require_POST
def risk_sign(request: HttpRequest, number: str) -> HttpResponse:
    found = access.fetch(request, RiskAssessment, to="sign risk assessment", number=number)
    party, role = access.signer(request, "sign risk assessment")
    try:
        refuse_unread(found, request.POST.get("version"))
        if against := faults(found):
            raise ValidationError(against)
        sign(row=found, party=party, role=role)
    except ValidationError as error:
        return render(request, "records/risk.html", {**_shown(found), "refusals": error.messages}, status=422)
    return redirect(found)


urls = [
    path("things/<str:number>/risks/new/", risk_add, name="risk_add"),
    path("risks/<str:number>/", risk, name="risk"),
    path("risks/<str:number>/edit/", risk_edit, name="risk_edit"),
    path("risks/<str:number>/sign/", risk_sign, name="risk_sign"),
]
