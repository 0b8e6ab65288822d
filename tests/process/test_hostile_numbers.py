"""Numbers that no bench can have come back with a sentence."""

import pytest
from django.urls import reverse

from process.seeding import ensure_ranges
from tests.factories import make_mould, make_run, make_user

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize("field", ["face_area_dm2", "total_area_dm2"])
def test_an_area_beyond_reckoning_is_asked_about(client, field):
    ensure_ranges()
    client.force_login(make_user("technician"))
    run = make_run(moulds=[make_mould()])
    cathode = run.cathodes.get()
    form = {
        "label": "obverse", "mould": cathode.mould_id, "face_area_dm2": "0.289", "total_area_dm2": "0.402",
        "tare_g": "0", "version": cathode.version, field: "1e308",
    }  # fmt: skip

    assert client.post(reverse("cathode_edit", args=[cathode.pk]), form).status_code == 422


def test_a_mould_list_with_a_place_beyond_every_number_begins_at_the_beginning(client):
    client.force_login(make_user("technician"))

    assert client.get(reverse("mould_list") + f"?after={'9' * 24}").status_code == 200
