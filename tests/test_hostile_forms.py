"""No form takes a number that no bench can have: every number field of every page is sent what it must refuse."""

import math
from collections.abc import Iterator

import pytest
from django import forms
from django.apps import apps
from django.db import models

from process.seeding import ensure_ranges
from tests.everything import one_of_each
from tests.forms_on_pages import NUMBERS, fields_of, pages_with_forms
from tests.test_hostile_requests import everybody  # noqa: F401

pytestmark = pytest.mark.django_db
# Wrong for every number, whatever its bounds.
REFUSED = ["1e12", "1e999", "nan", "-1e9", "1_000", "7" * 65, "5 parsec"]
# What a person may well write: never a fault, and a comma is always read.
TYPED = ["0", "-1", "0,35"]
STOCK = ("Ensure this value", "Enter a ", "This field is required", "Null characters")  # Django's own say nothing to do


def test_no_number_field_takes_what_no_bench_can_have(everybody):  # noqa: F811
    ensure_ranges()
    pages = [page for page in pages_with_forms(everybody, one_of_each()) if any(numbers(page))]

    wrong = {}
    for page in pages:
        for text in REFUSED:
            answer = page.send(everybody, page.sent(text))
            if found := list(taken(page, answer)):
                wrong[f"{page.name}: {text[:12]}"] = found

    assert wrong == {}
    assert unbelievable() == {}


def test_what_a_person_may_well_write_is_never_a_fault(everybody):  # noqa: F811
    ensure_ranges()
    pages = [page for page in pages_with_forms(everybody, one_of_each()) if any(numbers(page))]

    wrong = {}
    for page in pages:
        for text in TYPED:
            answer = page.send(everybody, page.sent(text))
            if answer.status_code not in (200, 302, 422) or (answer.status_code == 422 and stock(page, answer)):
                wrong[f"{page.name}: {text}"] = answer.status_code, stock(page, answer)

    assert wrong == {}
    assert unbelievable() == {}


def numbers(page) -> Iterator[tuple[forms.BaseForm, str]]:
    for form in page.forms:
        yield from ((form, name) for name in fields_of(form, NUMBERS))


def taken(page, answer) -> Iterator[str]:
    """Number fields that let the text pass, or refuse it in words that are not ours."""
    if answer.status_code != 422:
        yield f"answered {answer.status_code}"
        return
    back = page.back(answer)
    yield from (name for form, name in numbers(page) if name not in back[form.prefix].errors)
    yield from stock(page, answer)


def stock(page, answer) -> list[str]:
    """Sentences that only say what went wrong."""
    back = page.back(answer).values() if answer.context else ()
    said = [(name, str(error)) for form in back for name, several in form.errors.items() for error in several]
    return [f"{name}: {error}" for name, error in said if any(words in error for words in STOCK)]


def unbelievable() -> dict[str, float]:
    """Columns that hold what is no finite number, or one beyond everything."""
    found = {}
    for model in apps.get_models():
        columns = [each.name for each in model._meta.fields if isinstance(each, models.FloatField)]
        for row in model._base_manager.values(*columns) if columns else ():
            found |= {
                f"{model.__name__}.{name}": value
                for name, value in row.items()
                if value is not None and (not math.isfinite(value) or abs(value) > 1e9)
            }
    return found
