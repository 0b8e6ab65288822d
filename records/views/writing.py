"""A row that a person writes by hand: begun and corrected in one way, each room saying only its own words."""

from collections.abc import Callable, Mapping
from typing import Any

from django.forms import ModelForm
from django.http import HttpRequest, HttpResponse
from django.shortcuts import resolve_url
from django.urls import reverse

from records import access
from records.views.answering import answer_form

Row = Any  # of whatever model the form writes


def begin(
    request: HttpRequest,
    form_class: type[ModelForm],
    *,
    on: Mapping[str, Any] | None = None,
    offer: Callable[[], dict[str, Any]] = dict,
    told: Mapping[str, Any] | None = None,
    **answer: Any,
) -> HttpResponse:
    """A new row; `on` is what it hangs on, `offer` what stands in the form, `told` what the form itself must know."""
    model = form_class._meta.model
    access.require(request, "write", model)
    form = form_class(request.POST or None, instance=model(**(on or {})), initial=offer(), **(told or {}))
    return answer_form(request, form, **answer)


def correct(
    request: HttpRequest,
    form_class: type[ModelForm],
    *,
    title: Callable[[Row], str],
    then: Callable[[Row], Any],
    related: tuple[str, ...] = (),
    strikes: str = "",
    where: Mapping[str, Any],
    **answer: Any,
) -> HttpResponse:
    """A row that stands already, found by `where`; `strikes` is its kind, if it can be struck out."""
    row = access.fetch(request, form_class._meta.model.objects.select_related(*related), to="write", **where)
    form = form_class(request.POST or None, instance=row)
    if strikes:
        answer["strike_url"] = reverse("strike", args=[strikes, row.pk])
    return answer_form(
        request, form, title=title(row), back_url=resolve_url(then(row)), then=then, **{"verb": "Save"} | answer
    )
