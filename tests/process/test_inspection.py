"""Inspection and acceptance: measured is measured, and no copy leaves unmarked."""

from datetime import date

import pytest
from django.urls import reverse

from process.models import Inspection, ThicknessPoint
from records.models import Concession, Item, Measurement
from tests.factories import (
    make_copy,
    make_inspection,
    make_item,
    make_mark,
    make_party,
    make_shell,
    make_user,
)  # fmt: skip

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


@pytest.fixture
def copy():
    medal = make_item("OVM.1931.0044", object_type="medal")
    Measurement.objects.create(item=medal, what="diameter", length_mm=58.40)
    Measurement.objects.create(item=medal, what="mass", mass_g=71.36)
    shell = make_shell(medal, "S-03")
    ThicknessPoint.objects.create(shell=shell, place="recess", thickness_mm=0.28, method="section")
    return make_copy("R.2026.1", shells=[shell, make_shell(medal, "S-04", side="reverse")])


def _typed(**more):
    return {
        "inspected_on": "2026-02-24", "inspector": make_party().name, "mass_g": "64.71", "diameter_mm": "58.34",
        "thickness_min_mm": "0.28", "thickness_method": "section", "decision": "accept", "look": "seam even",
    } | more  # fmt: skip


def _inspect(client, **more):
    return client.post(reverse("inspection_add", args=["R.2026.1"]), _typed(**more))


def _sign(client, inspection, **more):
    return client.post(reverse("inspection_sign", args=[inspection.pk]), {"status": "accessioned"} | more)


def test_an_inspection_is_kept_and_then_signed(conservator, copy):
    answer = _inspect(conservator)

    kept = Inspection.objects.get(copy=copy)
    assert answer["Location"] == reverse("inspection_sign", args=[kept.pk])
    assert (kept.mass_g, kept.thickness_min_mm, kept.is_signed) == (64.71, 0.28, False)


def test_the_least_measured_point_is_offered(conservator, copy):
    form = conservator.get(reverse("inspection_add", args=["R.2026.1"])).context["form"]

    assert (form.initial["thickness_min_mm"], form.initial["thickness_method"]) == (0.28, "section")


def test_a_mean_cannot_pass_for_the_measured_minimum(conservator, copy):
    """Planted fault 3 of the scenario: 0.42 mm "measured" where a point shows 0.28 mm."""
    answer = _inspect(conservator, thickness_min_mm="0.42")

    page = answer.content.decode()
    assert answer.status_code == 422 and "cannot be the least" in page and "recess" in page


def test_only_methods_that_measure_are_offered(conservator, copy):
    form = conservator.get(reverse("inspection_add", args=["R.2026.1"])).context["form"]

    assert "calculated" not in dict(form.fields["thickness_method"].choices)


def test_a_number_that_equals_the_calculated_mean_is_asked_about(conservator, copy):
    """15.10 g on 28.9 cm² of copper: 0.5858 mm (SCENARIO: expected values)."""
    ThicknessPoint.objects.all().delete()

    answer = _inspect(conservator, thickness_min_mm="0.586", thickness_method="micrometer")

    assert answer.status_code == 422 and "mean calculated from the mass" in answer.content.decode()


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"thickness_min_mm": "", "thickness_method": ""}, "thickness_min_mm"),
        ({"thickness_method": ""}, "thickness_method"),
        ({"not_measured_reason": "closed"}, "not_measured_reason"),
        ({"thickness_min_mm": "", "not_measured_reason": "closed"}, "thickness_method"),
        ({"mass_g": "0"}, "mass_g"),
        ({"mass_g": "9**9**9"}, "mass_g"),
        ({"finished_thickness_mm": "0.1"}, "thickness_min_mm"),
        ({"inspected_on": "2026-02-01"}, "inspected_on"),
        ({"decision": "concession"}, "concession"),
    ],
)
def test_bad_input_is_named_at_its_field_and_kept(conservator, copy, typed, field):
    answer = _inspect(conservator, **typed)

    assert answer.status_code == 422 and field in answer.context["form"].errors
    assert "seam even" in answer.content.decode()


def test_a_reason_stands_for_a_wall_that_could_not_be_measured(conservator, copy):
    answer = _inspect(conservator, thickness_min_mm="", thickness_method="", not_measured_reason="closed before")

    assert answer.status_code == 302


def test_a_size_far_from_the_prediction_is_asked_about(conservator, copy):
    answer = _inspect(conservator, diameter_mm="85.34")

    assert answer.status_code == 422 and "foretell" in answer.content.decode()


def test_a_marked_copy_is_accepted_with_name_role_and_the_way_it_is_held(conservator, copy):
    make_mark(copy)
    inspection = make_inspection(copy)

    answer = _sign(conservator, inspection, status="handling")

    inspection.refresh_from_db()
    copy.refresh_from_db()
    assert answer.status_code == 302
    assert (inspection.signed_role, copy.status, inspection.accepts) == ("conservator", "handling", True)


def test_what_was_measured_becomes_the_copys_measurements(conservator, copy):
    make_mark(copy)
    _inspect(conservator, mass_g="64,71")

    _sign(conservator, Inspection.objects.get())

    rows = {row.what: row for row in Measurement.objects.filter(item=copy)}
    assert (rows["mass"].mass_g, rows["diameter"].length_mm) == (64.71, 58.34)
    assert rows["mass"].as_typed["mass_g"]["text"] == "64,71" and rows["mass"].evidence("mass_g") == "measured"


def test_without_a_mark_acceptance_is_blocked_and_cannot_be_recorded_afterwards(conservator, copy):
    inspection = make_inspection(copy)

    answer = _sign(conservator, inspection)
    forced = _sign(conservator, inspection, afterwards="1")

    page = answer.content.decode()
    assert answer.status_code == forced.status_code == 422
    assert "no permanent, photographed mark" in page and 'name="afterwards"' not in page
    assert f"{reverse('concession_add')}?gate=G6&amp;check=permanent+mark&amp;item=R.2026.1" in page
    assert not Inspection.objects.get().is_signed and Item.objects.get(pk=copy.pk).status == "workshop"
    assert not Measurement.objects.filter(item=copy).exists()


@pytest.mark.parametrize("mark", [{"photo": None}, {"method": "ink"}, {"purpose": "maker"}])
def test_an_unphotographed_temporary_or_other_mark_is_not_enough(conservator, copy, mark):
    make_mark(copy, **mark)

    assert _sign(conservator, make_inspection(copy)).status_code == 422


def _concession(copy, gate="G6"):
    given = Concession.objects.create(
        number=f"C-{gate}",
        gate=gate,
        given_on=date(2026, 2, 24),
        given_by=make_party(),
        given_role="conservator",
        reason="thin wall",
    )
    given.items.set([copy])
    return given


def test_a_concession_lets_it_pass(conservator, copy):
    inspection = make_inspection(copy, decision="concession", concession=_concession(copy))

    assert _sign(conservator, inspection).status_code == 302


def test_a_concession_for_another_piece_does_not(conservator, copy):
    other = _concession(make_copy("R.2026.2"))
    make_mark(copy)

    answer = _sign(conservator, make_inspection(copy, decision="concession", concession=other))

    assert answer.status_code == 422 and "is not for" in answer.content.decode()


def test_a_rejected_copy_is_kept_as_evidence(conservator, copy):
    _sign(conservator, make_inspection(copy, decision="reject"))

    assert Item.objects.get(pk=copy.pk).status == "evidence"


def test_a_signed_inspection_stays_as_it_is(conservator, copy):
    make_mark(copy)
    inspection = make_inspection(copy)
    _sign(conservator, inspection)

    answer = conservator.post(reverse("inspection_edit", args=[inspection.pk]), _typed(mass_g="1"))

    assert answer.status_code == 302
    assert Inspection.objects.get().mass_g == 64.71


def test_a_historic_copy_is_flagged_and_not_inspected(conservator):
    make_item("R.1889.7", kind="historic_copy")

    answer = conservator.get(reverse("inspection_add", args=["R.1889.7"]), follow=True)

    assert "flagged" in answer.content.decode() and not Inspection.objects.exists()


def test_a_technician_neither_inspects_nor_signs(client, copy):
    client.force_login(make_user("technician"))
    inspection = make_inspection(copy)

    assert client.get(reverse("inspection_add", args=["R.2026.1"])).status_code == 403
    assert _sign(client, inspection).status_code == 403
