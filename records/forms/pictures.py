"""Choosing among photographs by looking at them: the newest of them, all on demand."""

from collections.abc import Iterable
from typing import Any

from django import forms
from django.db.models import QuerySet
from django.http import HttpRequest
from django.utils.html import format_html

NEWEST = 40
ASKED = "photographs"  # in the address: all of them are to be seen


class PictureCheckboxes(forms.CheckboxSelectMultiple):
    template_name = "records/_picture_choice.html"


class PictureRadio(forms.RadioSelect):
    template_name = "records/_picture_choice.html"


def offer_pictures(field: Any, rows: QuerySet, chosen: Iterable[int | None] = ()) -> None:
    """The newest, and those chosen before; a piece may have hundreds."""
    newest = list(rows.order_by("-pk").values_list("pk", flat=True)[: NEWEST + 1])
    field.queryset = rows
    if len(newest) > NEWEST:
        field.all_pictures = rows
        field.queryset = rows.filter(pk__in=[*newest[:NEWEST], *(pk for pk in chosen if pk)])
        said = f"{field.help_text} " if field.help_text else ""
        field.help_text = format_html(
            '{}The newest {} stand here. <a href="?{}=all">Begin again with all of them</a>.', said, NEWEST, ASKED
        )


def let_see_all(form: forms.BaseForm, request: HttpRequest) -> None:
    """Where the address asks for all photographs, they are offered."""
    for field in form.fields.values():
        if ASKED in request.GET and hasattr(field, "all_pictures"):
            field.queryset, field.help_text = field.all_pictures, ""
