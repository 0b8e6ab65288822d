"""The owner's consent and its conditions."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path

from records import access, clock
from records.conditions import conditions_of
from records.forms.commissions import ConsentForm
from records.models import Commission, Consent
from records.services.permissions import record_duties_of
from records.views.answering import answer_form
from records.views.writing import correct

SENTENCE = "What the owner allows, for how long, and on which conditions. Dated conditions become duties."


def _keep(form: ConsentForm, commission: Commission | None = None) -> Consent:
    consent = form.save()
    if commission:
        consent.commissions.add(commission)
    record_duties_of(consent=consent)
    return consent


def consent_add(request: HttpRequest, number: str) -> HttpResponse:
    commission = access.fetch(request, Commission, number=number)
    access.require(request, "write", Consent)
    owners = {item.owner_id for item in commission.originals.all()}
    initial = {"items": commission.originals.all(), "owner": owners.pop() if len(owners) == 1 else None}
    form = ConsentForm(request.POST or None, commission=commission, initial=initial)
    return answer_form(
        request, form, title=f"Consent for {commission.number}", sentence=SENTENCE, verb="Keep",
        back_url=commission.get_absolute_url(), act=lambda form: _keep(form, commission), then=lambda _: commission,
    )  # fmt: skip


def consent(request: HttpRequest, pk: int) -> HttpResponse:
    rows = Consent.objects.select_related("owner", "given_by").prefetch_related("items", "commissions")
    found = access.fetch(request, rows, pk=pk)
    context = {"consent": found, "duties": found.duties.all(), "today": clock.today(),
               "conditions": conditions_of(found),
               "in_force": found.in_force_on(clock.today())}  # fmt: skip
    return render(request, "records/consent.html", context)


def consent_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, ConsentForm, where={"pk": pk}, title=str, sentence=SENTENCE, verb="Keep", act=_keep,
        then=Consent.get_absolute_url,
    )  # fmt: skip


urls = [
    path("commissions/<str:number>/consents/new/", consent_add, name="consent_add"),
    path("consents/<int:pk>/", consent, name="consent"),
    path("consents/<int:pk>/edit/", consent_edit, name="consent_edit"),
]
