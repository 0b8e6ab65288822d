"""A piece of a photograph, for whoever looks closely."""

from io import BytesIO

import pytest
from django.core.files import File
from django.urls import reverse
from PIL import Image

from records.services.photographs import keep_photo
from tests.factories import make_item, make_user

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator", "tobias"))
    return client


@pytest.fixture
def photo():
    file = BytesIO()
    Image.new("RGB", (120, 100), "#8a6a4a").save(file, "JPEG")
    return keep_photo(file=File(file), name="view.jpg", item=make_item("R.1"))


def test_a_piece_of_a_photograph_is_as_sharp_as_it_was_taken(conservator, photo):
    answer = conservator.get(reverse("photo_crop", args=[photo.pk]), {"x": 10, "y": 5, "w": 40, "h": 30})

    assert Image.open(BytesIO(answer.content)).size == (40, 30)
    again = conservator.get(answer.request["PATH_INFO"] + "?x=10&y=5&w=40&h=30", HTTP_IF_NONE_MATCH=answer["ETag"])
    assert again.status_code == 304


@pytest.mark.parametrize("asked", [{"x": "left"}, {"x": 99999}, {"w": -4}])
def test_a_piece_that_is_none_is_not_found(conservator, photo, asked):
    assert conservator.get(reverse("photo_crop", args=[photo.pk]), asked).status_code == 404
