"""The sheet of a run: its start, readings, events, and correcting a line."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import path, reverse
from django.utils import timezone
from django.utils.html import format_html

from process.forms.events import FIELDS, HELP, TITLES, EventForm
from process.forms.hanging import HANG_IN, HANG_IN_TITLE
from process.forms.sheet import ReadingForm, StartForm
from process.models import Event, Reading, Run
from process.services import runs as services
from process.services.stays import RAIL_CHANGES
from process.summaries.sheet import sheet_of
from records import access
from records.views.answering import answer_form, wants_afterwards

CAUTION = "The bath is acid and the rail carries current: goggles, gloves, extraction on, a second person within call."
BENCH = "process/bench_form.html"
OFFERED = [kind for kind in FIELDS if kind not in {Event.Kind.ENTRY, *RAIL_CHANGES}]


def say_saved(request: HttpRequest, line: Reading | Event) -> Reading | Event:
    """Saved at once; a wrong line is mended afterwards instead of being asked about before."""
    url = reverse("reading_edit" if isinstance(line, Reading) else "event_edit", args=[line.pk])
    if getattr(line, "stood_already", False):
        said = "The reading of {} stands there already with the same figures: this one was not added a second time."
        messages.info(request, said.format(f"{timezone.localtime(line.at):%H:%M}"))
        return line
    what = f"Reading of {timezone.localtime(line.at):%H:%M}"
    if isinstance(line, Event):
        what = f"“{line.get_kind_display()}”, {timezone.localtime(line.at):%H:%M}"
    messages.success(request, format_html('{} saved. <a href="{}">Correct it</a>', what, url))
    return line


def line_url(line: Reading | Event) -> str:
    """Whoever wrote sees what stands there now."""
    return line.get_absolute_url()


def sheet_url(run: Run) -> str:
    return f"{run.get_absolute_url()}#sheet"


def run_start(request: HttpRequest, number: str) -> HttpResponse:
    run = access.fetch(request, Run.objects.select_related("bath"), to="write", number=number)
    form = StartForm(request.POST or None, run=run, user=request.user, instance=Event(run=run, kind=Event.Kind.ENTRY))

    def act(form: StartForm) -> Event:
        line = services.start_run(
            run=run, at=form.cleaned_data["at"], afterwards=wants_afterwards(request), **form.line
        )
        return say_saved(request, line)

    return answer_form(
        request, form, title="Into the bath", number=run.number, verb="Start the run", act=act, then=line_url,
        back_url=run.get_absolute_url(), template=BENCH, caution=" ".join(filter(None, [CAUTION, run.bath.cautions])),
        sentence="Connected before it goes in, low current until it is covered.",
    )  # fmt: skip


def reading_add(request: HttpRequest, number: str) -> HttpResponse:
    run = access.fetch(request, Run, number=number)
    access.require(request, "write", Reading)
    if not request.POST:
        lines = sheet_of(run).currents
        form = ReadingForm(run=run, user=request.user, instance=Reading(run=run), last=lines[-1].row if lines else None)
    else:
        form = ReadingForm(request.POST, run=run, instance=Reading(run=run))
        if (first := form.sent_before()) and not form.says_otherwise(first):
            return redirect(say_saved(request, first))
    return answer_form(
        request, form, title="Reading", number=run.number, verb="Save the reading", then=line_url,
        act=lambda form: say_saved(request, services.add_reading(run=run, at=form.cleaned_data["at"], **form.line)),
        back_url=sheet_url(run), template=BENCH,
        sentence="What the instruments show now; the last values are filled in.",
    )  # fmt: skip


def event_add(request: HttpRequest, number: str) -> HttpResponse:
    run = access.fetch(request, Run, number=number)
    access.require(request, "write", Event)
    kind = request.GET.get("kind")
    if kind not in OFFERED:
        choices = [(f"?kind={each.value}", TITLES[each], HELP[each]) for each in OFFERED]
        choices.append((reverse("cathode_hang_in", args=[number]), HANG_IN_TITLE, HANG_IN))
        return render(request, "process/event_choice.html", {"run": run, "choices": choices})
    form = EventForm(request.POST or None, run=run, kind=kind, user=request.user, instance=Event(run=run, kind=kind))
    if request.POST and (first := form.sent_before()) and not form.says_otherwise(first):
        return redirect(say_saved(request, first))

    def act(form: EventForm) -> Event:
        line = services.add_event(run=run, at=form.cleaned_data["at"], kind=kind, **form.line)
        return say_saved(request, line)

    return answer_form(
        request, form, title=TITLES[kind], number=run.number, verb="Save", then=line_url, act=act,
        back_url=sheet_url(run), template=BENCH, sentence=HELP[kind],
    )  # fmt: skip


def reading_edit(request: HttpRequest, pk: int) -> HttpResponse:
    line = access.fetch(request, Reading.objects.select_related("run"), to="write", pk=pk)
    form = ReadingForm(request.POST or None, run=line.run, instance=line)
    return _correct(request, form, line, "Correct a reading")


def event_edit(request: HttpRequest, pk: int) -> HttpResponse:
    line = access.fetch(request, Event.objects.select_related("run"), to="write", pk=pk)
    form = EventForm(request.POST or None, run=line.run, kind=line.kind, instance=line)
    return _correct(request, form, line, f"Correct “{line.get_kind_display()}”")


def _correct(request: HttpRequest, form, line, title: str) -> HttpResponse:
    return answer_form(
        request,
        form,
        title=title,
        number=line.run.number,
        verb="Keep the correction",
        then=line_url,
        act=lambda form: services.correct_line(line=form.instance, reason=form.cleaned_data["reason"], save=form.save),
        back_url=sheet_url(line.run),
        strike_url=_strike(line),
        template=BENCH,
        sentence="What stood there before stays in the history, with your reason.",
    )


def _strike(line: Reading | Event) -> str:
    """The entry stays: without it there is no run."""
    if isinstance(line, Reading):
        return reverse("strike", args=["reading", line.pk])
    return "" if line.kind == Event.Kind.ENTRY else reverse("strike", args=["event", line.pk])


urls = [
    path("runs/<str:number>/start/", run_start, name="run_start"),
    path("runs/<str:number>/readings/new/", reading_add, name="reading_add"),
    path("readings/<int:pk>/edit/", reading_edit, name="reading_edit"),
    path("runs/<str:number>/events/new/", event_add, name="event_add"),
    path("events/<int:pk>/edit/", event_edit, name="event_edit"),
]
