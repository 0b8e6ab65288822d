"""Shells: weighed when they come off."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import path

from process.forms.shells import ShellForm, WeighForm
from process.models import Cathode, Shell
from process.services.runs import weigh
from records import access
from records.views.answering import answer_form


def shell_weigh(request: HttpRequest, pk: int) -> HttpResponse:
    rows = Cathode.objects.select_related("run", "mould__item", "core__item")
    cathode = access.fetch(request, rows, to="write", pk=pk)
    if first := Shell.objects.filter(cathode=cathode).select_related("item").first():
        messages.warning(request, f"What grew on {cathode.label} is weighed already, as {first.item.number}.")
        return redirect(cathode)
    form = WeighForm(request.POST or None, instance=Shell(cathode=cathode))

    def act(form: WeighForm) -> Shell:
        return weigh(
            cathode=cathode, number=form.cleaned_data["number"], shell=form.instance,
            mould_wear=form.cleaned_data.get("mould_wear", ""),
        )  # fmt: skip

    return answer_form(
        request,
        form,
        title=f"Weigh what grew on {cathode.label}",
        number=cathode.run.number,
        verb="Keep the weighing",
        act=act,
        then=lambda shell: cathode.get_absolute_url(),
        back_url=cathode.get_absolute_url(),
        sentence=f"Rinsed and dried. The tare of {cathode.tare_g:g} g is taken off.",
    )


def shell_edit(request: HttpRequest, number: str) -> HttpResponse:
    rows = Shell.objects.select_related("item", "cathode__run")
    shell = access.fetch(request, rows, to="write", item__number=number)
    form = ShellForm(request.POST or None, instance=shell)
    return answer_form(
        request, form, title="Correct the weighing", number=number, verb="Keep", then=Shell.get_absolute_url,
        back_url=shell.get_absolute_url(),
    )  # fmt: skip


urls = [
    path("cathodes/<int:pk>/weigh/", shell_weigh, name="shell_weigh"),
    path("shells/<str:number>/edit/", shell_edit, name="shell_edit"),
]
