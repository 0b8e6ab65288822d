"""Closing a skinned core: written down, then signed by the conservator."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.urls import path, reverse

from process.forms.closings import ClosingForm, SignClosingForm
from process.models import CoreClosing, Shell
from process.services.cores import sign_closing
from process.summaries.drying import drying_of_shell
from records import access
from records.services.signing import refuse_unread
from records.views.answering import answer_form, wants_afterwards

CLOSINGS = CoreClosing.objects.select_related(
    "shell__item", "shell__cathode__core__item", "shell__making_up", "signed_by"
)
SHELLS = Shell.objects.select_related("item", "cathode__core__item", "making_up")
SENTENCE = "Closed wet, acid and salt come out months later as green spots. Write what was done, then have it signed."
SIGNED = "This decision is signed and stays as it is: write a new one if something has changed."


def closing_add(request: HttpRequest, number: str) -> HttpResponseBase:
    access.require(request, "write", CoreClosing)
    shell = access.fetch(request, SHELLS, item__number=number)
    if shell.cathode.core_id is None:
        messages.warning(request, f"{number} did not grow on a core: there is nothing to close.")
        return redirect(shell)
    return _answer(request, CoreClosing(shell=shell), f"Close the core under {number}")


def closing_edit(request: HttpRequest, pk: int) -> HttpResponseBase:
    closing = access.fetch(request, CLOSINGS, to="write", pk=pk)
    if closing.is_signed:
        messages.warning(request, SIGNED)
        return redirect(closing)
    return _answer(request, closing, f"Closing of {closing.shell.item.number}")


def _answer(request: HttpRequest, closing: CoreClosing, title: str) -> HttpResponse:
    shell = closing.shell
    return answer_form(
        request, ClosingForm(request.POST or None, instance=closing), title=title, number=shell.item.number,
        sentence=SENTENCE, verb="Keep, then sign", back_url=f"{shell.get_absolute_url()}#drying",
        then=lambda row: reverse("closing_sign", args=[row.pk]), template="process/closing_form.html",
        drying=drying_of_shell(shell),
    )  # fmt: skip


def closing_sign(request: HttpRequest, pk: int) -> HttpResponseBase:
    closing = access.fetch(request, CLOSINGS, to="close core", pk=pk)
    if closing.is_signed:
        return redirect(closing)
    party, role = access.signer(request, "close core")
    form = SignClosingForm(request.POST if request.method == "POST" else None, initial={"version": closing.version})

    def act(form: SignClosingForm) -> CoreClosing:
        refuse_unread(closing, form.cleaned_data["version"])
        sign_closing(closing=closing, party=party, role=role, afterwards=wants_afterwards(request))
        return closing

    return answer_form(
        request, form, title=f"Sign: {closing.get_decision_display()}", act=act, then=CoreClosing.get_absolute_url,
        template="process/closing_sign.html", closing=closing, drying=drying_of_shell(closing.shell), signer=party,
        role=role, concerns=[closing.shell.item.number], back_url=closing.get_absolute_url(), verb="Sign",
    )  # fmt: skip


urls = [
    path("shells/<str:number>/closing/new/", closing_add, name="closing_add"),
    path("closings/<int:pk>/edit/", closing_edit, name="closing_edit"),
    path("closings/<int:pk>/sign/", closing_sign, name="closing_sign"),
]
