"""What no browser sends by itself: bytes that a database refuses, strange hosts, forms from other sites."""

from collections.abc import Iterator
from typing import Any

import pytest
from django.contrib.auth.models import Group
from django.test import Client
from django.urls import reverse

from records.roles import ROLES
from tests.addresses import ADDRESSES, address, routes
from tests.everything import one_of_each
from tests.factories import make_user

pytestmark = pytest.mark.django_db
NUL = "\0"


@pytest.fixture
def everybody(client: Client) -> Client:
    """Every role at once; a fault of ours answers 500 instead of raising."""
    return signed_in(client)


def signed_in(client: Client) -> Client:
    user = make_user("conservator")
    user.groups.set([Group.objects.get_or_create(name=role)[0] for role in ROLES])
    client.force_login(user)
    client.raise_request_exception = False
    return client


def faults(answers: Iterator[tuple[str, int]]) -> dict[str, int]:
    return {what: status for what, status in answers if status >= 500}


def test_a_nul_in_an_address_or_its_query_is_no_fault_of_ours(everybody):
    rows = one_of_each()

    def answers() -> Iterator[tuple[str, int]]:
        for route, parts in ADDRESSES.items():
            where = address(route, rows).split("?")[0]
            for method in (everybody.get, everybody.post):
                words = [part for part in where.split("/") if part]
                for place in range(len(words)) if parts else ():
                    hostile = "/" + "/".join([*words[:place], words[place] + "%00", *words[place + 1 :]]) + "/"
                    yield hostile, method(hostile).status_code
            for name in (
                "q",
                "kind",
                "show",
                "after",
                "of",
                "item",
                "original",
                "next",
                "export",
                "gate",
                "view",
                "what",
            ):
                yield f"{where}?{name}=%00", everybody.get(f"{where}?{name}=a%00b").status_code

    assert faults(answers()) == {}


def test_a_nul_in_any_field_of_any_form_is_no_fault_of_ours(everybody):
    rows = one_of_each()
    wrong: dict[str, Any] = {}
    for route in sorted(set(routes()) - {"sign_out"}):
        where = address(route, rows)
        shown = everybody.get(where)
        form = (shown.context or {}).get("form") if shown.status_code == 200 else None
        names = list(getattr(form, "fields", {}))
        names += [f"{name}_{part}" for name in names for part in ("unit", "kind", "method", "plus_minus")]
        status = everybody.post(where, dict.fromkeys([*names, "token", "version", "next", "afterwards"], f"1{NUL}"))
        if status.status_code >= 500:
            wrong[route] = status.status_code
    assert wrong == {}


def test_every_form_from_another_site_is_refused(client):
    rows, strict = one_of_each(), Client(enforce_csrf_checks=True)
    signed_in(strict)

    taken = {route for route in routes() if strict.post(address(route, rows)).status_code not in {403, 405}}

    assert taken == set()


def test_a_strange_host_is_not_answered(client):
    assert client.get(reverse("sign_in"), HTTP_HOST="evil.example").status_code == 400


def test_no_page_may_stand_in_a_frame_and_none_is_guessed_at(client):
    page = client.get(reverse("sign_in"))

    assert page["X-Frame-Options"] == "DENY" and "frame-ancestors 'none'" in page["Content-Security-Policy"]
    assert page["X-Content-Type-Options"] == "nosniff"


def test_no_record_can_be_given_a_number_that_no_address_can_carry(everybody):
    rows = one_of_each()
    kept = {}
    for route in sorted(routes()):
        where = address(route, rows)
        shown = everybody.get(where)
        form = (shown.context or {}).get("form") if shown.status_code == 200 else None
        if form is None or "number" not in form.fields:
            continue
        for number in ("RQ/2026", "new", "..", "a?b", "a#b", "a%2fb", "a\\b"):
            answer = everybody.post(where, {"number": number})
            if not answer.context or "number" not in answer.context["form"].errors:
                kept[route] = number
    assert kept == {}
