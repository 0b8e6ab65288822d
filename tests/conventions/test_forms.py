"""Every form is safe against slips: numbers have bounds, days an age; sent twice it acts once, late it says so."""

import importlib
import math
import pkgutil
from collections.abc import Iterator
from html.parser import HTMLParser
from urllib.parse import urlsplit

import pytest
from django import forms
from django.test import Client
from django.urls import resolve

import process.forms
import process.views
import records.forms
import records.views
from records import units
from records.forms.base import RecordForm
from records.forms.bounds import CountField, FactorField
from records.forms.dates import DayField, InstantField
from records.units.reach import BY_SUFFIX
from tests.addresses import address, routes
from tests.everything import one_of_each
from tests.forms_on_pages import forms_in
from tests.test_hostile_requests import signed_in

# Route -> why a second or a late sending of its form does no harm.
HARMLESS = {
    "area_remove": "what is removed cannot be removed again",
    "finding_delete": "what is struck out cannot be struck out again",
    "finding_mark_delete": "what is removed cannot be removed again",
    "job_again": "a job that runs or is done is left alone",
    "label_sheet": "prints, and keeps nothing",
    "readings_paste": "a pasted row is known by its own words, however often it comes",
    "scan_away": "what is taken away cannot be taken away again",
    "sign_out": "who is signed out stays so",
    "vocabulary_import": "differences are written once, and only those that were seen",
    "trace_again": "reckons what the kept file and the decisions say, and changes nothing",
}
MARKS = {"sending", "token", "version", "seen"}


def every_form() -> list[type[forms.BaseForm]]:
    """The forms of both apps."""
    for room in (records.forms, records.views, process.forms, process.views):
        for found in pkgutil.iter_modules(room.__path__, f"{room.__name__}."):
            importlib.import_module(found.name)
    return sorted(set(_below(forms.BaseForm)), key=lambda form: f"{form.__module__}.{form.__name__}")


def _below(parent: type) -> Iterator[type]:
    for child in parent.__subclasses__():
        if child.__module__.startswith(("records.", "process.")):
            yield child
        yield from _below(child)


@pytest.mark.parametrize("form", every_form())
def test_a_number_has_bounds_and_a_day_its_age(form):
    """A form of a record fits its fields by their names; what a form declares itself it declares so."""
    declared = form.declared_fields if issubclass(form, RecordForm) else form.base_fields

    for name, field in declared.items():
        if isinstance(field, forms.IntegerField):
            assert isinstance(field, CountField | FactorField), f"{name}: declare it as CountField or FactorField"
        assert not isinstance(field, forms.DateField) or isinstance(field, DayField), f"{name}: declare it as DayField"
        assert not isinstance(field, forms.DateTimeField) or isinstance(field, InstantField), f"{name}: InstantField"


@pytest.mark.parametrize("suffix", units.SUFFIXES)
def test_a_unit_has_an_end(suffix):
    assert suffix in BY_SUFFIX, "give it bounds in records/units/reach.py"
    low, high = units.reach_of(suffix)
    assert math.isfinite(low) and math.isfinite(high) and low < high < 1e10


@pytest.mark.django_db
def test_a_form_sent_twice_acts_once_and_a_late_one_says_so():
    client, rows = signed_in(Client()), one_of_each()
    unmarked, unlocked = set(), set()
    for route in sorted(set(routes()) - {"sign_out"}):
        answer = client.get(address(route, rows))
        unmarked |= {
            resolve(urlsplit(action or answer.request["PATH_INFO"]).path).url_name for action in _unmarked(answer)
        }
        unlocked |= {
            f"{route}: {type(form).__name__}" for form in forms_in(answer.context)
            if isinstance(form, forms.ModelForm) and not form.instance._state.adding and "version" not in form.fields
        }  # fmt: skip
    assert unlocked == set()
    assert unmarked == set(HARMLESS)


def _unmarked(answer) -> list[str]:
    """Addresses of the page's posted forms without a mark."""
    if answer.streaming or "html" not in answer.get("Content-Type", ""):
        return []
    reader = _Forms()
    reader.feed(answer.content.decode())
    return [action for action, names in reader.posted if not names & MARKS]


class _Forms(HTMLParser):
    """Each posted form of a page with the names of its fields."""

    def __init__(self) -> None:
        super().__init__()
        self.posted: list[tuple[str, set[str]]] = []
        self.inside = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        known = dict(attrs)
        if tag == "form":
            self.inside = (known.get("method") or "").lower() == "post"
            self.posted += [(known.get("action") or "", set())] if self.inside else []
        elif self.inside and known.get("name"):
            self.posted[-1][1].add(known["name"] or "")

    def handle_endtag(self, tag: str) -> None:
        self.inside = self.inside and tag != "form"
