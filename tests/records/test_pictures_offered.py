"""Choosing among the photographs of a piece that has many."""

import pytest
from django.urls import reverse

from records.forms.pictures import NEWEST
from tests.factories import make_item, make_photo, make_report, make_user

pytestmark = pytest.mark.django_db


def test_of_many_photographs_the_newest_are_offered_and_all_on_demand(client):
    client.force_login(make_user("conservator"))
    report = make_report(make_item("R.1"), signed=False)
    photos = [make_photo(report.item) for _ in range(NEWEST + 5)]
    report.photos.add(photos[0])
    address = reverse("condition_photos", args=[report.number])

    few, every = client.get(address).content.decode(), client.get(f"{address}?photographs=all").content.decode()

    assert few.count('name="photos"') == NEWEST + 1 and f'value="{photos[0].pk}"' in few
    assert f'value="{photos[1].pk}"' not in few and "Begin again with all of them" in few
    assert every.count('name="photos"') == NEWEST + 5
    client.post(f"{address}?photographs=all", {"photos": [photos[1].pk], "version": report.version})
    assert list(report.photos.all()) == [photos[1]]
