"""Addresses and questions that no page offers: answered like any that is not there, on both databases."""

import re
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlencode

import pytest
from django import forms

from tests.addresses import ADDRESSES, address
from tests.everything import one_of_each
from tests.forms_on_pages import forms_in
from tests.test_hostile_requests import everybody  # noqa: F401

pytestmark = pytest.mark.django_db
ROOT = Path(__file__).parent.parent
HUGE = "9" * 24
PARTS = [HUGE, "9" * 5000, "%ff%fe", "%e2%80%ae" + "x" * 3000, "'%20or%201=1"]
QUESTIONS = ["1e9", HUGE, f"-1{'x' * 3000}", f"2026-01-01~{HUGE}", "\ufffe\u202e'"]


def test_an_address_that_no_page_has_is_no_fault_of_ours(everybody):  # noqa: F811
    rows = one_of_each()

    def answers() -> Iterator[tuple[str, int]]:
        for route, parts in ADDRESSES.items():
            words = [part for part in address(route, rows).split("?")[0].split("/") if part]
            for place in range(len(words)) if parts else ():
                for part in PARTS:
                    where = "/" + "/".join([*words[:place], part, *words[place + 1 :]]) + "/"
                    yield where[:80], everybody.get(where).status_code
            if parts:
                for part in (HUGE, "x" * 3000):
                    where = "/" + "/".join(part if word.isdigit() else word for word in words) + "/"
                    yield where[:80], everybody.post(where, {}).status_code

    assert {where: status for where, status in answers() if status >= 500} == {}


def test_a_question_that_no_page_asks_is_no_fault_of_ours(everybody):  # noqa: F811
    rows, faults, names = one_of_each(), {}, asked_names()
    for route in ADDRESSES:
        where = address(route, rows).split("?")[0]
        shown = everybody.get(where)
        for text in QUESTIONS if shown.status_code == 200 else ():
            every = [*names, *filters(shown.context)]
            question = urlencode(dict.fromkeys(every, text))
            if (status := everybody.get(f"{where}?{question}").status_code) >= 500:
                faults[f"{where} {text[:20]}"] = status
    assert faults == {}


def asked_names() -> list[str]:
    """Every name under which a view looks into the question of its address."""
    found: set[str] = set()
    for app in ("records", "process"):
        for source in (ROOT / app).rglob("*.py"):
            found |= set(re.findall(r'GET(?:\.get|\.getlist)?[(\[]"(\w+)"', source.read_text(encoding="utf-8")))
    assert {"after", "kind", "q"} <= found
    return sorted(found - {"export"})


def filters(context) -> list[str]:
    return [name for form in forms_in(context) for name in form.fields if not isinstance(form, forms.ModelForm)]
