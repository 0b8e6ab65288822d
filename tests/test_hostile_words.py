"""Days, words and choices that nobody means are refused by every form of every page, in our own words."""

from collections.abc import Callable, Iterator
from datetime import timedelta

import pytest
from django import forms

from process.seeding import ensure_ranges
from records import clock
from records.forms.dates import DayField, InstantField
from tests.everything import one_of_each
from tests.forms_on_pages import Page, fields_of, pages_with_forms
from tests.test_hostile_forms import stock
from tests.test_hostile_requests import everybody  # noqa: F401

pytestmark = pytest.mark.django_db
NO_DAYS = ["0001-01-01", "9999-12-31", "99999-01-01", "2026-02-30", "٢٠٢٦-٠١-٠١", "today"]
NO_WORDS = ["turned \u202e round", "ended\0here", "rung\x07", "x" * 60_002]
NO_CHOICES = ["no such key", "9" * 24, "-1"]
MARKUP = "<script>alert(1)</script>"


def is_of_words(field: forms.Field) -> bool:
    plain = isinstance(field, forms.CharField) and not isinstance(field, forms.UUIDField)
    return plain and not field.widget.is_hidden and not field.disabled


def test_no_day_field_takes_a_day_of_another_age(everybody):  # noqa: F811
    assert let_through(everybody, lambda field: isinstance(field, DayField | InstantField), NO_DAYS) == {}


def test_what_has_happened_lies_not_ahead(everybody):  # noqa: F811
    ahead = clock.today() + timedelta(days=40)

    def of_the_past(field: forms.Field) -> bool:
        return isinstance(field, DayField | InstantField) and not field.allow_future

    assert let_through(everybody, of_the_past, [f"{ahead}", f"{ahead}T09:00"]) == {}


def test_no_field_takes_words_that_cannot_be_seen_or_have_no_end(everybody):  # noqa: F811
    assert let_through(everybody, is_of_words, NO_WORDS) == {}


def test_no_choice_is_made_that_was_not_offered(everybody):  # noqa: F811
    def is_choice(field: forms.Field) -> bool:
        return isinstance(field, forms.ChoiceField | forms.ModelChoiceField) and not field.disabled

    assert let_through(everybody, is_choice, NO_CHOICES) == {}


def test_words_are_shown_as_words(everybody):  # noqa: F811
    found = {}
    for page in pages(everybody, is_of_words):
        answer = page.send(everybody, page.sent(MARKUP, is_of_words))
        if answer.status_code >= 500 or MARKUP in answer.content.decode(errors="replace"):
            found[page.name] = answer.status_code
    assert found == {}


def pages(client, kind: Callable[[forms.Field], bool]) -> list[Page]:
    ensure_ranges()
    return [page for page in pages_with_forms(client, one_of_each()) if any(fields_of(f, kind) for f in page.forms)]


def let_through(client, kind: Callable[[forms.Field], bool], texts: list[str]) -> dict[str, list[str]]:
    """Page and text: the fields of this kind that took it, or refused it in words that are not ours."""
    wrong: dict[str, list[str]] = {}
    for page in pages(client, kind):
        for text in texts:
            if found := list(_taken(page, page.send(client, page.sent(text, kind)), kind)):
                wrong[f"{page.name}: {text[:12]!r}"] = found
    return wrong


def _taken(page: Page, answer, kind) -> Iterator[str]:
    if answer.status_code == 400:  # a record whose key no database can hold was never offered
        return
    if answer.status_code != 422:
        yield f"answered {answer.status_code}"
        return
    back = page.back(answer)
    for form in page.forms:
        yield from (name for name in fields_of(form, kind) if name not in back[form.prefix].errors)
    yield from stock(page, answer)
