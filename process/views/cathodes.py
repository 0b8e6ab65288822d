"""What hangs on the rail of a run."""

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import path, reverse
from django.views.decorators.http import require_POST

from process.forms.cathodes import CathodeForm
from process.forms.events import HELP, EventForm
from process.models import Cathode, Event, Mould, Run
from process.services.runs import add_event, remove_cathode
from records import access
from records.views.answering import answer_form

SENTENCE = (
    "Current and charge are reckoned on the whole area, thickness of the face on the face: flange and wires count."
)


def cathode_add(request: HttpRequest, number: str) -> HttpResponse:
    run = access.fetch(request, Run, number=number)
    access.require(request, "write", Cathode)
    if run.events.filter(kind=Event.Kind.ENTRY).exists():
        messages.warning(
            request, "The run has started: another cathode changes every density, so it belongs to a new run."
        )
        return redirect(run)
    mould = Mould.objects.filter(item__number=request.GET.get("mould", "")).first()
    offered = {"mould": mould, "label": mould.get_side_display()} if mould else {}
    form = CathodeForm(request.POST or None, instance=Cathode(run=run), initial=offered)
    return answer_form(
        request, form, title="Add a cathode", number=run.number, verb="Add it", then=Cathode.get_absolute_url,
        back_url=run.get_absolute_url(), sentence=SENTENCE,
    )  # fmt: skip


def cathode_edit(request: HttpRequest, pk: int) -> HttpResponse:
    cathode = access.fetch(request, Cathode.objects.select_related("run"), to="write", pk=pk)
    form = CathodeForm(request.POST or None, instance=cathode)
    return answer_form(
        request,
        form,
        title=f"Correct {cathode.label}",
        number=cathode.run.number,
        verb="Keep",
        then=Cathode.get_absolute_url,
        back_url=cathode.get_absolute_url(),
        sentence=SENTENCE,
        quiet=[{"url": reverse("cathode_area", args=[cathode.pk]), "text": "Reckon the area from its parts"}],
    )


@require_POST
def cathode_remove(request: HttpRequest, pk: int) -> HttpResponse:
    cathode = access.fetch(request, Cathode.objects.select_related("run"), to="write", pk=pk)
    try:
        remove_cathode(cathode=cathode)
    except ValidationError as error:
        messages.error(request, " ".join(error.messages))
    return redirect(cathode.run)


def cathode_take_out(request: HttpRequest, pk: int) -> HttpResponse:
    """One piece leaves the rail while the others go on: a new segment begins."""
    kind = Event.Kind.TAKEN_OUT
    cathode = access.fetch(request, Cathode.objects.select_related("run"), to="write", pk=pk)
    run = cathode.run
    form = EventForm(
        request.POST or None, run=run, kind=kind, user=request.user, instance=Event(run=run, kind=kind, cathode=cathode)
    )

    def act(form: EventForm) -> Event:
        return add_event(run=run, at=form.cleaned_data["at"], kind=kind, **form.line | {"cathode": cathode})

    return answer_form(
        request, form, title=f"Take out {cathode.label}", number=run.number, verb="Take it out", act=act,
        then=Event.get_absolute_url, back_url=run.get_absolute_url(), sentence=HELP[kind],
    )  # fmt: skip


urls = [
    path("cathodes/<int:pk>/take-out/", cathode_take_out, name="cathode_take_out"),
    path("runs/<str:number>/cathodes/new/", cathode_add, name="cathode_add"),
    path("cathodes/<int:pk>/edit/", cathode_edit, name="cathode_edit"),
    path("cathodes/<int:pk>/remove/", cathode_remove, name="cathode_remove"),
]
