"""Numbers that no bench can have come back with a sentence."""

import uuid

import pytest
from django.urls import reverse

from process.seeding import ensure_ranges
from tests.factories import make_bath, make_mould, make_run, make_user
from tests.process.scenario_runs import event

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize("field", ["face_area_dm2", "total_area_dm2"])
def test_an_area_beyond_reckoning_is_asked_about(client, field):
    ensure_ranges()
    client.force_login(make_user("technician"))
    run = make_run(moulds=[make_mould()])
    cathode = run.cathodes.get()
    form = {
        "label": "obverse", "mould": cathode.mould.item.number, "face_area_dm2": "0.289", "total_area_dm2": "0.402",
        "tare_g": "0", "version": cathode.version, field: "1e308",
    }  # fmt: skip

    assert client.post(reverse("cathode_edit", args=[cathode.pk]), form).status_code == 422


@pytest.mark.parametrize("field", ["tare_g", "coat_distance_mm", "disc_diameter_mm"])
def test_a_cathode_measured_below_nothing_is_sent_back(client, field):
    ensure_ranges()
    client.force_login(make_user("technician"))
    cathode = make_run(moulds=[make_mould()]).cathodes.get()
    form = {
        "label": "obverse", "mould": cathode.mould.item.number, "face_area_dm2": "0.289", "total_area_dm2": "0.402",
        "version": cathode.version, field: "-1",
    }  # fmt: skip

    answer = client.post(reverse("cathode_edit", args=[cathode.pk]), form)

    assert answer.status_code == 422 and "look at the sign" in answer.content.decode()


def test_a_mould_list_with_a_place_beyond_every_number_begins_at_the_beginning(client):
    client.force_login(make_user("technician"))

    assert client.get(reverse("mould_list") + f"?after={'9' * 24}").status_code == 200


def test_a_relief_with_less_than_a_flat_surface_is_sent_back(client):
    """Nought would else be taken for “not said”, and the usual factor reckoned with in its place."""
    ensure_ranges()
    client.force_login(make_user("technician"))
    cathode = make_run(moulds=[make_mould()]).cathodes.get()
    address = reverse("area_add", args=[cathode.pk, "disc"])
    form = {"words": "face", "diameter_mm": "58.4", "diameter_mm_unit": "mm", "pieces_count": "1", "relief_factor": "0"}

    answer = client.post(address, form)

    assert answer.status_code == 422 and "no less surface than a flat disc" in answer.content.decode()


def test_a_meter_that_no_current_can_have_driven_is_asked_about(client):
    ensure_ranges()
    client.force_login(make_user("technician"))
    run = make_run(moulds=[make_mould()])
    event(run, "2026-02-16 09:00", "entry", 0.24)
    form = {"at": "2026-02-16T15:00", "meter_ah": "99999", "meter_ah_unit": "Ah", "token": str(uuid.uuid4())}

    answer = client.post(reverse("reading_add", args=[run.number]), form)

    assert answer.status_code == 422 and "more than this run can have taken" in answer.content.decode()
    assert not run.readings.exists()


def test_a_far_cathode_that_gained_more_is_asked_about(client):
    ensure_ranges()
    client.force_login(make_user("technician"))
    bath = make_bath()
    form = {"tested_on": "2026-02-10", "near_mm": "50", "far_mm": "250", "near_gain_g": "0.2", "far_gain_g": "0.6"}

    answer = client.post(reverse("throw_test_add", args=[bath.number]), form)

    assert answer.status_code == 422 and "changed over" in answer.content.decode()


def test_a_titration_without_titrant_is_asked_about(client):
    ensure_ranges()
    client.force_login(make_user("technician"))
    bath = make_bath()
    form = {
        "number": "BA-90", "sampled_at": "2026-02-10T09:00", "copper_method": "EDTA", "copper_titrant_ml": "0",
        "copper_titrant_mol_l": "0.1", "copper_sample_ml": "1",
    }  # fmt: skip

    answer = client.post(reverse("analysis_add", args=[bath.number]), form)

    assert answer.status_code == 422 and "0 g/L" in answer.content.decode().replace("\u202f", " ")


@pytest.mark.parametrize(("field", "typed"), [("contact_h", "-1"), ("working_temperature_degc", "999999")])
def test_a_number_that_no_mould_has_is_sent_back(client, field, typed):
    client.force_login(make_user("technician"))
    mould = make_mould()
    form = {"material": "silicone", "fate": "in store", "version": mould.version, field: typed}

    answer = client.post(reverse("mould_edit", args=[mould.item.number]), form)

    assert answer.status_code == 422 and field in answer.context["form"].errors
