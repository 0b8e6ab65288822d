"""Every address: a stranger is shown the door, a reader changes nothing."""

import pytest
from django.db.models import Model
from django.test import Client

from tests.addresses import ADDRESSES, address, routes
from tests.conventions.models import MODELS
from tests.everything import one_of_each
from tests.factories import make_user

# Route: why a stranger is answered.
OPEN = {
    "sign_in": "the door itself",
    "health": "whoever watches the server asks it; it says nothing else",
    "public_copy": "whoever scans the code on a copy learns that it is one",
    "public_photo": "the one photograph that was released",
}
# Route: why a reader may send a form there.
HARMLESS = {
    "sign_in": "a person signed in is led home",
    "sign_out": "everybody may leave",
    "public_copy": "a page that takes no form",
    "public_photo": "a file; it takes no form",
}
LOOKING = {
    "condition_annotations",
    "condition_manifest",
    "condition_map",
    "photo_pair",
    "survey_due",
    "survey_paper",
    "photo_crop",
    "vocabulary_skos",
    "home",
    "search",
    "lookup",
    "health",
    "item",
    "item_history",
    "run_history",
    "family",
    "examination_list",
    "examination",
    "apart_choice",
    "apart",
    "apart_paper",
    "thing_limits",
    "photo",
    "photo_file",
    "job",
    "commission",
    "consent",
    "risk",
} | {
    "concession",
    "condition",
    "document",
    "handover",
    "copy_costs",
    "commission_costs",
    "party",
    "place",
    "bath",
    "bath_diary",
    "copy_walls",
    "mixture",
    "shell_evidence",
    "bath_balance",
    "failure",
    "run",
    "run_figures",
    "inspection_points",
    "cathode_area",
    "trace",
    "trace_file",
    "area_scan",
    "label_edit",
    "mark_plan",
    "original_marks",
}

pytestmark = pytest.mark.django_db


def counts() -> dict[type[Model], int]:
    return {model: model.objects.count() for model in MODELS}


def test_every_page_has_a_sample_address():
    assert set(routes()) - set(ADDRESSES) == set(), "add the new page to tests/addresses.py"
    assert set(ADDRESSES) - set(routes()) == set(), "tests/addresses.py names a page that is gone"


@pytest.mark.parametrize("method", ["get", "post"])
def test_a_stranger_is_shown_the_door(client: Client, method):
    rows = one_of_each()
    answered = {}
    for route in set(routes()) - set(OPEN):
        where = address(route, rows)
        answer = getattr(client, method)(where)
        if answer.status_code != 302 or not answer["Location"].startswith("/sign-in/?next="):
            answered[route] = answer.status_code
    assert answered == {}


@pytest.mark.parametrize("route", OPEN)
def test_the_open_pages_answer_a_stranger(client: Client, route):
    nothing_released = 404 if route == "public_photo" else 200
    assert client.get(address(route, one_of_each())).status_code == nothing_released


def test_a_reader_is_refused_at_every_form_and_changes_nothing(client: Client):
    rows = one_of_each()
    client.force_login(make_user("reader"))
    before = counts()
    forms = {route for route in routes() if not route.endswith("_list")} - LOOKING - set(HARMLESS)
    answered = {}
    for route in sorted(forms):
        status = client.post(address(route, rows)).status_code
        if status != 403:
            answered[route] = status
    assert answered == {}
    assert counts() == before


def test_a_reader_may_look_at_everything(client: Client):
    rows = one_of_each()
    client.force_login(make_user("reader"))
    pages = {route for route in routes() if route.endswith("_list") or route in LOOKING} - {
        "photo_file",
        "photo_crop",
        "document",
        "trace_file",
        "area_scan",
    }
    answered = {route: client.get(address(route, rows)).status_code for route in sorted(pages)}
    # 286: the fragment of a run that has stopped tells the page to ask no more.
    assert {route: status for route, status in answered.items() if status not in (200, 286)} == {}
