"""What hangs on the rail of a run."""

from typing import Any

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import path, reverse
from django.views.decorators.http import require_POST

from process.forms.cathodes import CathodeForm
from process.forms.events import HELP, EventForm
from process.forms.hanging import HANG_IN, HANG_IN_TITLE, HangInForm
from process.models import Cathode, Event, Mould, Run
from process.services import rail
from process.services.runs import remove_cathode
from process.views.sheet import BENCH, CAUTION, line_url, say_saved, sheet_url
from records import access
from records.views.answering import answer_form, wants_afterwards

SENTENCE = (
    "Current and charge are reckoned on the whole area, thickness of the face on the face: flange and wires count."
)


def cathode_add(request: HttpRequest, number: str) -> HttpResponse:
    run = access.fetch(request, Run, number=number)
    access.require(request, "write", Cathode)
    if run.events.filter(kind=Event.Kind.ENTRY).exists():
        messages.info(request, "The run has started: what joins it now is hung in, and begins a new segment.")
        return redirect(f"{reverse('cathode_hang_in', args=[number])}?{request.GET.urlencode()}".rstrip("?"))
    form = CathodeForm(request.POST or None, instance=Cathode(run=run), initial=_offered(request))
    return answer_form(
        request, form, title="Add a cathode", number=run.number, verb="Add it", then=Cathode.get_absolute_url,
        back_url=run.get_absolute_url(), sentence=SENTENCE,
    )  # fmt: skip


def _offered(request: HttpRequest) -> dict[str, Any]:
    """Of the mould from which the person came."""
    mould = Mould.objects.filter(item__number=request.GET.get("mould", "")).first()
    return {"mould": mould, "label": mould.get_side_display()} if mould else {}


def cathode_hang_in(request: HttpRequest, number: str) -> HttpResponse:
    """Another piece joins a run that goes on, through the same gates as at its start."""
    run = access.fetch(request, Run.objects.select_related("bath"), number=number)
    access.require(request, "write", Cathode)
    if not run.events.filter(kind=Event.Kind.ENTRY).exists() or run.outcome:
        messages.warning(request, "Only what goes on can be joined: add a cathode to a plan instead.")
        return redirect(run)
    form = HangInForm(request.POST or None, run=run, user=request.user, initial=_offered(request))

    def act(form: HangInForm) -> Event:
        return say_saved(request, rail.hang_in(
            run=run, cathode=form.instance, at=form.cleaned_data["at"], afterwards=wants_afterwards(request),
            **form.line,
        ))  # fmt: skip

    return answer_form(
        request, form, title=HANG_IN_TITLE, number=number, verb="Hang it in", act=act, then=line_url,
        back_url=sheet_url(run), template=BENCH, caution=" ".join(filter(None, [CAUTION, run.bath.cautions])),
        sentence=HANG_IN,
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
        line = rail.take_out(run=run, at=form.cleaned_data["at"], **form.line | {"cathode": cathode})
        return say_saved(request, line)

    return answer_form(
        request, form, title=f"Take out {cathode.label}", number=run.number, verb="Take it out", act=act,
        then=line_url, back_url=sheet_url(run), sentence=HELP[kind], template=BENCH,
    )  # fmt: skip


urls = [
    path("cathodes/<int:pk>/take-out/", cathode_take_out, name="cathode_take_out"),
    path("runs/<str:number>/cathodes/new/", cathode_add, name="cathode_add"),
    path("runs/<str:number>/hang-in/", cathode_hang_in, name="cathode_hang_in"),
    path("cathodes/<int:pk>/edit/", cathode_edit, name="cathode_edit"),
    path("cathodes/<int:pk>/remove/", cathode_remove, name="cathode_remove"),
]
