"""Lists of thousands are walked from page to page, each row once; where nothing fits they say so."""

from typing import Any

import pytest
from django.test import Client
from django.urls import reverse

from process.models import Mould, Run
from records.models import Commission, Item, Party, Photo, Place
from tests.factories import make_user
from tests.many import many, many_made

pytestmark = pytest.mark.django_db
LISTS: dict[str, Any] = {
    "commission_list": Commission.objects.all,
    "copy_list": lambda: Item.objects.copies(),
    "item_list": Item.objects.all,
    "mould_list": Mould.objects.all,
    "party_list": Party.objects.all,
    "photo_list": Photo.objects.all,
    "place_list": Place.objects.all,
    "run_list": Run.objects.all,
}


@pytest.fixture
def grown(client: Client) -> Client:
    client.force_login(make_user("conservator"))
    many(400)
    many_made(120)
    return client


def _key(row: Any) -> int:
    """Some lists hand the rows themselves to their page, some what is said of them."""
    return getattr(row.get("item") if isinstance(row, dict) else getattr(row, "run", row), "pk", 0)


def test_every_long_list_is_walked_to_its_end_and_shows_each_row_once(grown):
    for route, rows in LISTS.items():
        seen, following = [], ""
        while following is not None:
            answer = grown.get(reverse(route), {"after": following} if following else {})
            found = answer.context.get("lines") or answer.context["page"].rows
            following = answer.context.get("next_key") or getattr(answer.context.get("page"), "next_key", None)
            seen += [_key(row) for row in found]
            assert ('rel="next"' in answer.content.decode()) == bool(following), route
        assert sorted(seen) == sorted(rows().values_list("pk", flat=True)), route
        assert "End of the list" in answer.content.decode(), route


def test_a_filter_holds_from_page_to_page(grown):
    first = grown.get(reverse("item_list"), {"kind": "original", "q": "series"}).context["page"]

    page = grown.get(reverse("item_list"), {"kind": "original", "q": "series", "after": first.next_key})

    assert {item.kind for item in page.context["page"].rows} == {"original"}
    assert "kind=original" in page.content.decode().split('rel="next"')[1].split(">")[0]


@pytest.mark.parametrize("route", LISTS)
def test_a_list_that_nothing_fits_says_so(client: Client, route: str):
    client.force_login(make_user("conservator"))
    many(8)
    nothing = {"q": "quite unheard of", "state": "failed", "show": "all"}

    page = client.get(reverse(route), nothing).content.decode()

    assert 'class="empty"' in page and 'class="pager"' not in page


def test_commissions_and_moulds_are_found_by_words(grown):
    asked = grown.get(reverse("commission_list"), {"show": "all", "q": "rq-2000-003"}).context["page"].rows
    taken = grown.get(reverse("mould_list"), {"q": "ovm.2000.00003"}).context["page"].rows

    assert [row.number for row in asked] == ["RQ-2000-003"]
    assert [row.item.number for row in taken] == ["M-2000-003"]


def test_what_a_place_holds_and_a_party_owns_is_listed_beyond_the_first_page(grown):
    building, lender = Place.objects.create(name="Annexe, north"), Party.objects.create(name="Greyling & Sons")
    for drawer in Place.objects.filter(name__startswith="Drawer")[:60]:
        drawer.within = building
        drawer.save()
    for item in Item.objects.filter(kind="original")[:60]:
        item.owner = lender
        item.save()

    inside, owned = grown.get(building.get_absolute_url()), grown.get(lender.get_absolute_url())

    assert "All that is inside Annexe, north" in inside.content.decode()
    assert "?owner=Greyling%20%26%20Sons" in owned.content.decode()
    listed = grown.get(reverse("place_list"), {"within": "annexe, north"}).context["page"]
    assert len(listed.rows) == 50 and listed.next_key
    assert grown.get(reverse("item_list"), {"owner": "Greyling & Sons"}).context["count"] == 60
