"""Shells: weighed when they come off."""

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import path

from process.forms.shells import ShellForm, WeighForm
from process.models import Cathode, Shell, Weighing
from process.services.masses import STANDS, strike_mass
from process.services.runs import weigh
from records import access
from records.views.answering import answer_form
from records.views.striking import STRIKE, ReasonForm


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
        sentence=f"Rinsed and dried. The tare of {cathode.tare_g or 0:g} g is taken off.",
    )


def shell_edit(request: HttpRequest, number: str) -> HttpResponse:
    rows = Shell.objects.select_related("item", "cathode__run")
    shell = access.fetch(request, rows, to="write", item__number=number)
    form = ShellForm(request.POST or None, instance=shell)
    return answer_form(
        request, form, title="Correct the weighing", number=number, verb="Keep", then=Shell.get_absolute_url,
        back_url=shell.get_absolute_url(),
    )  # fmt: skip


def mass_strike(request: HttpRequest, number: str, kind: str) -> HttpResponse:
    """A mass that stands on the shell is struck out; it stays on the shell's page, and nothing counts it."""
    rows = Shell.objects.select_related("item", "cathode")
    shell = access.fetch(request, rows, to="write", item__number=number)
    if kind not in STANDS or (shell.cathode.core_id and kind == Weighing.Kind.SHELL):
        raise Http404("No such mass.")
    form, back = ReasonForm(request.POST or None), f"{shell.get_absolute_url()}#shell"
    label = Weighing.Kind(kind).label

    def act(form: ReasonForm) -> str:
        party = access.party_of(request.user)
        strike_mass(shell=shell, kind=kind, party=party, reason=form.cleaned_data["reason"])
        return back

    return answer_form(
        request, form, title=f"Strike out: {label}", number=number, verb="Strike it out", act=act,
        then=lambda address: address, back_url=back, sentence=STRIKE,
    )  # fmt: skip


urls = [
    path("shells/<str:number>/masses/<str:kind>/strike-out/", mass_strike, name="mass_strike"),
    path("cathodes/<int:pk>/weigh/", shell_weigh, name="shell_weigh"),
    path("shells/<str:number>/edit/", shell_edit, name="shell_edit"),
]
