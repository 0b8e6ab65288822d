"""Every page of a register with thousands of rows: few questions to the database, few bytes, no list unrolled."""

from collections import Counter
from html.parser import HTMLParser

import pytest
from django.contrib.auth.models import Group
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from records.roles import ROLES
from tests.addresses import address, routes
from tests.crowd import crowded
from tests.factories import make_user
from tests.many import many
from tests.test_query_counts import MOST, NOT_A_PAGE

SIZE = 2000
MOST_BYTES = 120_000
# Route: why its page may hold more. Each shows a record with fifty of everything that can hang on it.
WHOLE_RECORDS = {
    "bath": "analyses, additions, work and anodes with their weighings",
    "commission": "the file with all its originals, consents and concessions",
    "item": "all that was seen of a thing, and done to it",
    "run": "its sheet, interruptions and shells",
}
MOST_BYTES_OF_A_RECORD = 600_000
MOST_CHOICES = 45  # fewer than what the crowd has of everything: no list of rows may be unrolled
# Page and field: why it may set out more.
WORDS = "the words for what is seen, grouped by material, which the museum keeps short itself"
CLOSED = {
    ("finding_add", "term"): WORDS,
    ("finding_edit", "term"): WORDS,
    ("condition_photos", "photos"): "besides the newest those that were chosen before, fifty in this crowd",
}

pytestmark = pytest.mark.django_db


class Choices(HTMLParser):
    """How many may be chosen from in each field of a page, by its name."""

    def __init__(self) -> None:
        super().__init__()
        self.counted: Counter[str] = Counter()
        self._select = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        said = dict(attrs)
        if tag in {"select", "datalist"}:
            self._select = said.get("name") or said.get("id") or ""
        elif tag == "option":
            self.counted[self._select] += 1
        elif tag == "input" and said.get("type") in {"radio", "checkbox"}:
            self.counted[said.get("name") or ""] += 1


def _allowed(route: str) -> int:
    return MOST_BYTES_OF_A_RECORD if route in WHOLE_RECORDS else MOST_BYTES


def test_no_page_unrolls_what_grows_without_end(client: Client):
    user = make_user("conservator")
    user.groups.set([Group.objects.get_or_create(name=role)[0] for role in ROLES])
    client.force_login(user)
    rows = crowded()
    many(SIZE)

    asked, heavy, unrolled = {}, {}, {}
    for route in sorted(set(routes()) - set(NOT_A_PAGE)):
        with CaptureQueriesContext(connection) as queries:
            answer = client.get(address(route, rows))
        if answer.status_code != 200 or answer.streaming:
            continue
        page, choices = answer.content, Choices()
        choices.feed(page.decode())
        long = {name: count for name, count in choices.counted.items() if count > MOST_CHOICES}
        long = {name: count for name, count in long.items() if (route, name) not in CLOSED}
        asked |= {route: len(queries)} if len(queries) > MOST else {}
        heavy |= {route: len(page)} if len(page) > _allowed(route) else {}
        unrolled |= {route: long} if long else {}

    assert unrolled == {}
    assert asked == {}
    assert heavy == {}
