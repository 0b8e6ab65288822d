"""What is added to a signed condition report stands beneath it, under a name and a day of its own."""

from datetime import date

import pytest
from django.urls import reverse

from records.checks import condition_before
from records.gates import Subject
from records.models import Addendum
from tests.factories import NINE, make_item, make_party, make_photo, make_report, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


@pytest.fixture
def report():
    return make_report(make_item("OVM.1931.0044"), examiner=make_party(), occasion="before", signed=True)


def _add(client, report, **more):
    address = reverse("addendum_add", args=[report.number])
    return client.post(address, {"words": "The photographs lay on the camera until today."} | more)


def test_a_photograph_forgotten_before_the_signature_is_added_under_a_name(conservator, report):
    photo = make_photo(report.item, taken_at=NINE)
    version = report.version

    answer = _add(conservator, report, photos=[photo.pk])

    added = Addendum.objects.get()
    page = conservator.get(report.get_absolute_url()).content.decode()
    report.refresh_from_db()
    assert answer.status_code == 302 and "Added after the signature" in page and added.words in page
    assert (list(added.photos.all()), added.signed_role, added.is_signed) == ([photo], "conservator", True)
    assert report.version == version and not report.photos.filter(pk=photo.pk).exists()


def test_the_gate_before_moulding_sees_photographs_that_were_added(conservator, report):
    report.photos.clear()
    photo = make_photo(report.item, taken_at=NINE)
    subject, on = Subject(report.item, report.item.number, (report.item,)), date(2026, 12, 1)
    before = condition_before(subject, on).met

    _add(conservator, report, photos=[photo.pk])

    assert (before, condition_before(subject, on).met) == (False, True)


def test_a_report_that_is_not_signed_is_completed_instead(conservator):
    report = make_report(make_item(), examiner=make_party(), signed=False)

    answer = _add(conservator, report)

    assert answer.status_code == 302 and not Addendum.objects.exists()


def test_only_a_conservator_adds(client, report):
    client.force_login(make_user("technician"))

    assert _add(client, report).status_code == 403
    assert "Add what is missing" not in client.get(report.get_absolute_url()).content.decode()
