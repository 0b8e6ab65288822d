"""Incidents: opened by a report that states a change; here what was done, and when the owner was told."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from records import access
from records.forms.incidents import IncidentForm
from records.models import Incident
from records.services.incidents import keep_incident
from records.views.answering import answer_form

INCIDENTS = Incident.objects.select_related("report__item__owner", "duty")
SENTENCE = "{}, {}: {}"


def incident(request: HttpRequest, number: str) -> HttpResponse:
    row = access.fetch(request, INCIDENTS, to="write", number=number)
    form = IncidentForm(request.POST or None, instance=row)
    report = row.report
    return answer_form(
        request, form, title=f"Incident {number}", verb="Keep", back_url=report.get_absolute_url(),
        sentence=SENTENCE.format(report.item.number, report.number, report.change_words), act=_keep,
        then=lambda kept: f"{kept.report.get_absolute_url()}#change",
    )  # fmt: skip


def _keep(form: IncidentForm) -> Incident:
    return keep_incident(incident=form.save(commit=False))


urls = [path("incidents/<str:number>/", incident, name="incident")]
