"""No page asks the database more than fifteen times, whatever hangs on it: fifty of each here."""

import pytest
from django.contrib.auth.models import Group
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from records.roles import ROLES
from tests.addresses import address, routes
from tests.crowd import crowded
from tests.factories import make_user

MOST = 15
# Route: why it is not counted here. A route that only takes forms (405) or leads elsewhere (302) is no page.
NOT_A_PAGE = {
    "photo_file": "a file; tested with the photographs",
    "photo_crop": "a file; tested with the findings on photographs",
    "condition_manifest": "a file; tested with the findings on photographs",
    "area_scan": "a file; tested with the areas",
    "apart_paper": "a file; tested with the sheet that tells two pieces apart",
    "survey_paper": "a file; tested with the round of surveys on paper",
    "document": "a file; tested with the papers",
    "label_sheet_file": "a file; tested with the tags on sheets",
    "public_photo": "a file; tested with the page that strangers read",
}

pytestmark = pytest.mark.django_db


@pytest.fixture
def everybody(client: Client) -> Client:
    """Signed in with every role, so that each page shows all it has."""
    user = make_user("conservator")
    user.groups.set([Group.objects.get_or_create(name=role)[0] for role in ROLES])
    client.force_login(user)
    return client


def test_no_page_asks_more_than_fifteen_times(everybody):
    rows = crowded()
    counted, faults = {}, {}
    for route in sorted(set(routes()) - set(NOT_A_PAGE)):
        with CaptureQueriesContext(connection) as asked:
            answer = everybody.get(address(route, rows))
        if answer.status_code not in (200, 286, 302, 405):
            faults[route] = answer.status_code
        counted[route] = len(asked)
    assert faults == {}
    assert {route: count for route, count in counted.items() if count > MOST} == {}
