"""Readings pasted from a spreadsheet: looked at first, then kept together."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import path

from process.forms.pasting import PasteForm
from process.models import Reading, Run
from process.services.pasting import add_readings
from records import access


def readings_paste(request: HttpRequest, number: str) -> HttpResponse:
    run = access.fetch(request, Run.objects.prefetch_related("cathodes", "events", "readings"), number=number)
    access.require(request, "write", Reading)
    form = PasteForm(request.POST or None, run=run)
    sound = request.method == "POST" and form.is_valid()
    if sound and "keep" in request.POST and not form.wrong and not form.asking:
        kept = add_readings(run=run, lines=[row.form.line | {"at": row.form.cleaned_data["at"]} for row in form.fresh])
        if isinstance(kept, str):
            form.add_error("rows", kept)
        else:
            messages.success(request, f"{kept} reading{'s' if kept != 1 else ''} kept.")
            return redirect(f"{run.get_absolute_url()}#sheet")
    stopped = form.errors or (sound and "keep" in request.POST)
    return render(request, "process/paste.html", {"run": run, "form": form}, status=422 if stopped else 200)


urls = [path("runs/<str:number>/readings/paste/", readings_paste, name="readings_paste")]
