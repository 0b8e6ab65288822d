"""Traces of loggers: the file comes in, is mapped, argued about, accepted or withdrawn; what counts is chosen."""

from typing import Any

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import FileResponse, HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import path
from django.utils.safestring import mark_safe

from process.forms.trace_mapping import MappingForm
from process.forms.traces import DecisionsForm, TraceUploadForm, WithdrawForm
from process.models import Run, Trace
from process.services import trace_jobs
from process.services import traces as services
from process.services.trace_files import path_of
from process.services.trace_reckoning import propose
from process.summaries.trace_chart import trace_chart
from process.summaries.trace_words import facts_of, found_words, sentence_of
from process.summaries.traces import choice_words, undecided
from process.tracing import AskFirst, Mapping, TraceRefused
from process.tracing.dialect import DELIMITERS
from records import access
from records.models import Job
from records.pdf.charts import svg
from records.views.answering import answer_form

TRACES = Trace.objects.select_related("run__bath", "brought_by", "accepted_by")
NARROW = 380.0


def trace_add(request: HttpRequest, number: str) -> HttpResponse:
    """A small file is read here, outside of every transaction; a large one is kept and read by the worker."""
    run = access.fetch(request, Run, number=number)
    access.require(request, "write", Trace)
    form = TraceUploadForm(request.POST or None, request.FILES or None)
    if request.method == "POST" and form.is_valid():
        file, token = form.cleaned_data["file"], form.cleaned_data["token"]
        try:
            person = access.party_of(request.user)
            later = trace_jobs.is_large(file.size)
            kept = services.receive(run=run, file=file, name=file.name, token=token, brought_by=person, later=later)
            if later:
                return redirect(trace_jobs.begin(kept, "take_up", request.user))
            return redirect("trace_mapping", kept.pk)
        except TraceRefused as refused:
            form.add_error("file", f"{refused} Nothing was kept.")
    context = {"title": f"Logger’s trace of {number}", "form": form, "run": run}
    return render(request, "process/trace_add.html", context, status=422 if form.errors else 200)


def trace_mapping(request: HttpRequest, pk: int) -> HttpResponse:
    """What was found in the file, for confirmation; what it leaves open is asked."""
    trace = access.fetch(request, TRACES, to="write", pk=pk)
    if trace.state != Trace.State.FOUND:
        return redirect(trace)
    kept, named = Mapping.from_json(trace.mapping), request.GET.get("parted", "")
    delimiter = named if named in DELIMITERS else kept.delimiter
    try:
        proposal = propose(path_of(trace), delimiter=delimiter)
    except TraceRefused as refused:
        return _broken(request, trace, refused, back=named and request.path)
    kept = kept if delimiter == kept.delimiter else proposal.mapping
    form = MappingForm(request.POST or None, trace=trace, proposal=proposal, mapping=kept)
    if request.method == "POST" and form.is_valid():
        try:
            if trace_jobs.is_large(trace.size_bytes_count):
                return redirect(trace_jobs.begin(trace, "map", request.user, mapping=form.mapping.as_json()))
            services.map_trace(trace=trace, mapping=form.mapping)
            return redirect(trace)
        except AskFirst as question:
            form.add_error(None, form.ask(question))
        except TraceRefused as refused:
            form.add_error(None, f"It cannot be read so. {refused}")
    context = {
        "trace": trace, "run": trace.run, "form": form, "proposal": proposal, "found": found_words(proposal),
        "delimiters": DELIMITERS.items(), "delimiter": delimiter,
    }  # fmt: skip
    return render(request, "process/trace_mapping.html", context, status=422 if form.errors else 200)


def _broken(request: HttpRequest, trace: Trace, refused: TraceRefused, back: str = "") -> HttpResponse:
    messages.error(request, str(refused))
    return redirect(back or trace.run)


def trace(request: HttpRequest, pk: int) -> HttpResponse:
    """What the file says against itself; the page reads rows alone."""
    shown = access.fetch(request, TRACES, pk=pk)
    may_write = access.may(request.user, "write", Trace)
    if shown.state == Trace.State.READING:
        return redirect("job", trace_jobs.job_of(shown, "take_up"))
    if not shown.is_mapped and may_write:
        return redirect("trace_mapping", pk)
    said = trace_jobs.typed_in_vain(shown) if may_write else {}
    return _page(request, shown, DecisionsForm(trace=shown, said=said) if may_write else None)


def trace_decide(request: HttpRequest, pk: int) -> HttpResponse:
    """Keep the decisions; with the other button, accept the trace as it then stands."""
    shown = access.fetch(request, TRACES, to="write", pk=pk)
    form = DecisionsForm(request.POST, trace=shown)
    if request.method != "POST" or not form.is_valid():
        return _page(request, shown, form) if request.method == "POST" else redirect(shown)
    reason, ruling = form.cleaned_data["reason"], form.cleaned_data.get("ruling", "")
    try:
        if trace_jobs.is_large(shown.size_bytes_count):
            return redirect(_decide_later(request, shown, form))
        services.decide(trace=shown, decisions=form.decisions)
        if "accept" in request.POST:
            services.accept(trace=shown, reason=reason, ruling=ruling, person=access.party_of(request.user))
            messages.success(request, "Accepted: it stands beside meter and sheet. Choose which of them counts.")
            return redirect(f"{shown.run.get_absolute_url()}#charge")
    except (ValidationError, TraceRefused) as error:
        form = DecisionsForm(request.POST, trace=shown)
        form.is_valid()
        form.add_error(None, error if isinstance(error, ValidationError) else str(error))
        return _page(request, shown, form)
    return redirect(shown)


def _decide_later(request: HttpRequest, shown: Trace, form: DecisionsForm) -> Job:
    return trace_jobs.begin(
        shown, "decide", request.user, decisions=form.decisions, accept="accept" in request.POST,
        reason=form.cleaned_data["reason"], ruling=form.cleaned_data.get("ruling", ""),
        person=access.party_of(request.user).pk,
    )  # fmt: skip


def _page(request: HttpRequest, shown: Trace, form: DecisionsForm | None) -> HttpResponse:
    chart = trace_chart(shown)
    fields = [field for field, _ in form.findings] if form else [None] * len(shown.findings)
    words = [choice_words(shown, each) for each in shown.findings]
    wanted = form is not None and shown.state == Trace.State.FOUND
    context: dict[str, Any] = {
        "trace": shown, "run": shown.run, "sentence": sentence_of(shown),
        "facts": facts_of(shown, trace_jobs.reckoned_again(shown)),
        "form": form if wanted else None, "may_write": form is not None, "waiting": undecided(shown),
        "findings": list(zip(fields, shown.findings, words, strict=True)),
        "chart": mark_safe(svg(chart, "trace")) if chart else "",  # escaped by svg() itself
        "chart_narrow": mark_safe(svg(chart, "trace-narrow", NARROW)) if chart else "",
    }  # fmt: skip
    return render(request, "process/trace.html", context, status=422 if form is not None and form.errors else 200)


def trace_withdraw(request: HttpRequest, pk: int) -> HttpResponse:
    shown = access.fetch(request, TRACES, to="write", pk=pk)
    run = shown.run

    def act(form: WithdrawForm) -> Run | Job:
        reason = form.cleaned_data["reason"]
        if any(trace_jobs.is_large(other.size_bytes_count) for other in services.ruled_by(shown)):
            return trace_jobs.begin(shown, "withdraw", request.user, reason=reason)
        services.withdraw(trace=shown, reason=reason)
        return run

    never = "It never counted: the file goes with it."
    stays = "It stays on record with your reason and counts no more; file and decisions are kept."
    return answer_form(
        request, WithdrawForm(request.POST or None), title=f"Withdraw {shown.original_name}", number=run.number,
        sentence=never if shown.is_pending else stays, verb="Withdraw it", act=act,
        then=lambda led: led.get_absolute_url(), back_url=shown.get_absolute_url(),
    )  # fmt: skip


def trace_again(request: HttpRequest, pk: int) -> HttpResponse:
    """Reckon it again from the kept file, and say whether the same comes out."""
    shown = access.fetch(request, TRACES, to="write", pk=pk)
    if request.method == "POST" and shown.is_mapped:
        if trace_jobs.is_large(shown.size_bytes_count):
            return redirect(trace_jobs.begin(shown, "again", request.user))
        try:
            found = services.differences(shown)
            say = messages.warning if found else messages.success
            say(request, f"Reckoned again: {'; '.join(found)}." if found else "Reckoned again: the same figures.")
        except (TraceRefused, AskFirst) as error:
            messages.error(request, str(error))
    return redirect(shown)


def trace_file(request: HttpRequest, pk: int) -> HttpResponseBase:
    """The file as it came."""
    shown = access.fetch(request, TRACES, pk=pk)
    try:
        file = path_of(shown).open("rb")
    except TraceRefused as refused:
        return _broken(request, shown, refused)
    return FileResponse(file, as_attachment=True, filename=shown.original_name, content_type="text/plain")


urls = [
    path("runs/<str:number>/traces/new/", trace_add, name="trace_add"),
    path("traces/<int:pk>/", trace, name="trace"),
    path("traces/<int:pk>/reading/", trace_mapping, name="trace_mapping"),
    path("traces/<int:pk>/decisions/", trace_decide, name="trace_decide"),
    path("traces/<int:pk>/withdraw/", trace_withdraw, name="trace_withdraw"),
    path("traces/<int:pk>/again/", trace_again, name="trace_again"),
    path("traces/<int:pk>/file/", trace_file, name="trace_file"),
]
