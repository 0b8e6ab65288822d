"""The one way a form is shown, acted on and answered, so that nothing typed is ever lost."""

from collections.abc import Callable
from typing import Any
from urllib.parse import urlencode

from django.contrib import messages
from django.core.exceptions import BadRequest, ValidationError
from django.db import IntegrityError, transaction
from django.forms import BaseForm
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render, resolve_url

from records.forms import newcomers, sending
from records.forms.conflicts import StaleRecord
from records.forms.lookup import LookupField
from records.forms.pictures import let_see_all
from records.gates import GateClosed, label_of
from records.models import SentForm


def wants_afterwards(request: HttpRequest) -> bool:
    """The person chose “record what has happened” although a gate is not met."""
    return "afterwards" in request.POST


def closed_words(gate: GateClosed) -> dict[str, Any]:
    """What the notice about a closed gate reads: the checks, and for each gate the concession that could pass them."""
    named = list(dict.fromkeys(item.number for item in gate.items))
    needed: dict[str, list[str]] = {}
    for check in gate.unmet:
        needed.setdefault(check.gate, []).append(check.name)
    asked = [
        (label_of(code), urlencode({"gate": code, "check": list(dict.fromkeys(names)), "item": named}, doseq=True))
        for code, names in needed.items()
    ]
    return {"gate": label_of(gate.gate), "checks": gate.unmet, "concessions": asked}


def _is_valid(form: BaseForm) -> bool:
    try:
        return form.is_valid()
    except OverflowError as error:
        # No page offers a record whose key no database can hold.
        raise BadRequest("A choice in this form is not one that was offered: open the page anew.") from error


def _is_new(form: BaseForm) -> bool:
    """Nothing stands yet that a version would guard."""
    instance = getattr(form, "instance", None)
    return instance is None or instance._state.adding


def _act(request: HttpRequest, form: BaseForm, act: Callable[[Any], Any] | None, then: Callable[[Any], Any]) -> str:
    """Act once for each sending, in one transaction; the address is kept for a second one."""
    with transaction.atomic():
        claimed = sending.claim(form, request)
        newcomers.keep(form)
        result = act(form) if act else form.save()
        address = resolve_url(then(result))
        if claimed:
            claimed.answer = address[:500]
            claimed.save()
    return address


def _as_the_first(request: HttpRequest, first: SentForm | None) -> HttpResponse:
    """The second sending is answered as the first was."""
    messages.info(request, "This form came twice and is kept once.")
    return redirect((first and first.answer) or request.path)


def _offer_more(form: BaseForm, request: HttpRequest) -> None:
    """What hangs on who asks, and how: new people and places, all photographs."""
    let_see_all(form, request)
    for field in form.fields.values():
        if isinstance(field, LookupField):
            field.let_add(request.user)


def answer_form(
    request: HttpRequest,
    form: BaseForm,
    *,
    title: str,
    then: Callable[[Any], Any],
    act: Callable[[Any], Any] | None = None,
    template: str = "records/form_page.html",
    **context: Any,
) -> HttpResponse:
    """Show a form; act on a valid one inside one transaction and go on; or give it back with what to do."""
    closed = None
    sending.offer(form)
    _offer_more(form, request)
    if request.method == "POST" and (first := sending.sent_before(form)):
        if first.digest == sending.digest_of(request):
            return _as_the_first(request, first)
        sending.renew(form)
        if _is_new(form):
            form.add_error(None, sending.SENT_OTHERWISE)
    if request.method == "POST" and _is_valid(form):
        form.cleaned_data.pop(sending.NAME, None)
        try:
            return redirect(_act(request, form, act, then))
        except sending.SentAlready:
            return _as_the_first(request, sending.sent_before(form))
        except IntegrityError:
            # Two people took the same number at once: the check now sees the other's row. All else is a fault of ours.
            form.full_clean()
            if form.is_valid():
                raise
        except StaleRecord as late:
            form.add_error(None, str(late))
        except ValidationError as error:
            form.add_error(None, error)
        except GateClosed as gate:
            closed = closed_words(gate)
    if request.method == "POST" and form.errors and (first := sending.sent_before(form)):
        # The first sending ended while this one was being read, and is what stands in its way.
        return _as_the_first(request, first)
    context = {"title": title, "form": form, "closed": closed, "conflict": getattr(form, "conflict", None), **context}
    status = 422 if form.errors or closed else 200
    return render(request, template, context, status=status)
