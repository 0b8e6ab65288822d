"""A copy is held against its specification point by point before it is accepted."""

from datetime import date

import pytest
from django.urls import reverse

from process.models import CouponTest, Inspection, Shell, ThicknessPoint
from process.summaries.acceptance import points_of
from records.models import Item, Measurement, Specification
from tests.factories import make_commission, make_copy, make_inspection, make_item, make_mark, make_shell, make_user

pytestmark = pytest.mark.django_db

ANSWERS = {"finish_verdict": "pass", "finish_found": "even", "mark_words_verdict": "pass", "mark_words_found": ""}


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


def inspected(decision="accept", *, specified=None, **fields) -> Inspection:
    """A medal specified at 0.60 mm mean and 0.25 mm least, its copy measured at 0.33 mm."""
    medal = make_item(object_type="medal")
    Measurement.objects.create(item=medal, what="diameter", length_mm=58.40, measured_on=date(2026, 2, 3))
    commission = make_commission("RQ-1", originals=[medal])
    wanted = {"technique": "hollow", "thickness_mean_mm": 0.6, "thickness_min_mm": 0.25, "finish": "brown patina",
              "mark_words": "OVM 2026 COPY"}  # fmt: skip
    Specification.objects.create(commission=commission, item=medal, **wanted | (specified or {}))
    copy = make_copy("R.2026.1", shells=[make_shell(medal)], commission=commission)
    make_mark(copy)
    measured = {"thickness_min_mm": 0.33, "thickness_method": "micrometer", "thickness_place": "under the chin",
                "not_measured_reason": ""}  # fmt: skip
    return make_inspection(copy, decision=decision, **measured | fields)


def verdicts(inspection) -> dict[str, str]:
    return {point.code: point.verdict for point in points_of(Inspection.objects.get(pk=inspection.pk))}


def sign(client, inspection):
    return client.post(reverse("inspection_sign", args=[inspection.pk]), {"status": "accessioned"})


def answer(client, inspection, **changes):
    data = ANSWERS | {"version": Inspection.objects.get(pk=inspection.pk).version} | changes
    return client.post(reverse("inspection_answer", args=[inspection.pk]), data)


def test_each_point_says_what_is_required_and_what_was_found(conservator):
    inspection = inspected()

    page = conservator.get(reverse("inspection_points", args=[inspection.pk])).content.decode()

    assert "at least 0.25" in page and "0.33" in page and "under the chin" in page
    assert "a mean is calculated from the mass, not measured" in page
    assert verdicts(inspection) == {
        "technique": "pass", "metal": "pass", "mean": "not_measured", "least": "pass", "finish": "open",
        "mark_words": "open",
    }  # fmt: skip


def test_a_copy_is_not_accepted_before_every_point_is_answered(conservator):
    inspection = inspected()

    early = sign(conservator, inspection)
    answer(conservator, inspection)
    sign(conservator, inspection)

    assert early.status_code == 422 and "Finish, Marks to be answered" in early.content.decode()
    assert Item.objects.get(number="R.2026.1").status == "accessioned"


def test_what_is_not_met_is_said_in_words(conservator):
    inspection = inspected()

    silent = answer(conservator, inspection, finish_verdict="fail", finish_found="")

    assert silent.status_code == 422 and "Say what was found" in silent.content.decode()
    assert Inspection.objects.get().answers == {}


def test_a_point_that_is_not_met_forbids_plain_acceptance(conservator):
    inspection = inspected()
    answer(conservator, inspection, finish_verdict="fail", finish_found="patina came off at the rim")

    refused = sign(conservator, inspection)

    assert refused.status_code == 422
    assert "Finish: brown patina required, patina came off at the rim found" in refused.content.decode()
    assert Item.objects.get(number="R.2026.1").status == "workshop"


def test_a_copy_that_is_not_met_may_be_rejected(conservator):
    inspection = inspected("reject", thickness_min_mm=0.20)

    sign(conservator, inspection)

    assert Item.objects.get(number="R.2026.1").status == "evidence"


@pytest.mark.parametrize(("least", "verdict"), [(0.25, "pass"), (0.24, "fail")])
def test_the_least_thickness_is_that_of_an_instrument(conservator, least, verdict):
    assert verdicts(inspected(thickness_min_mm=least))["least"] == verdict


def test_a_thickness_that_was_not_measured_says_why(conservator):
    inspection = inspected(
        thickness_min_mm=None, thickness_method="", thickness_place="", not_measured_reason="closed before"
    )

    point = next(point for point in points_of(inspection) if point.code == "least")

    assert (point.word, point.reason) == ("not measured", "closed before")


@pytest.mark.parametrize(
    ("diameter", "verdict"),
    [(58.34, "pass"), (58.11, "pass"), (58.10, "fail"), (58.70, "fail"), (None, "not_measured")],
)
def test_size_against_the_model(conservator, diameter, verdict):
    """58.40 mm −0.5 % is 58.108 mm, +0.5 % is 58.692 mm (by hand)."""
    inspection = inspected(specified={"size_low_pct": -0.5, "size_high_pct": 0.5}, diameter_mm=diameter)

    assert verdicts(inspection)["size"] == verdict


def test_points_and_bends_are_counted(conservator):
    inspection = inspected(specified={"points_count": 2, "bends_count": 5})
    shell = Shell.objects.get()
    few = verdicts(inspection)
    for place in ("rim", "field"):
        ThicknessPoint.objects.create(shell=shell, place=place, thickness_mm=0.5, method="micrometer")
    CouponTest.objects.create(shell=shell, number="K-1", bends_count=3, layers="yes")

    then = verdicts(inspection)

    assert (few["points"], few["bends"]) == ("fail", "not_measured")
    assert (then["points"], then["bends"]) == ("pass", "fail")


def test_another_technique_than_specified(conservator):
    assert verdicts(inspected(specified={"technique": "matrix"}))["technique"] == "fail"


def test_a_specification_is_signed_once_and_stays(client):
    client.force_login(make_user("curator"))
    inspected()
    found = Specification.objects.get()

    client.post(reverse("specification_sign", args=[found.pk]), {"version": found.version})
    page = client.get(reverse("specification_edit", args=[found.pk]), follow=True).content.decode()

    found.refresh_from_db()
    assert found.signed_role == "curator" and "It is signed and stays as it is" in page


def test_a_technician_does_not_answer_the_points(client):
    client.force_login(make_user("technician"))

    assert answer(client, inspected()).status_code == 403
