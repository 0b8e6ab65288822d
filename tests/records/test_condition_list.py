"""The list of condition reports, its export, and how much the pages ask of the database."""

import pytest
from django.urls import reverse

from tests.factories import make_item, make_photo, make_report, make_user
from tests.records.findings import make_finding

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client):
    user = make_user("conservator", "tobias")
    client.force_login(user)
    return user


@pytest.fixture
def medal():
    return make_item("OVM.1931.0044", title="Portrait medal of Maud Ferrigan", materials="leaded bronze")


def test_the_list_is_filtered_by_occasion_signature_and_grade(client, conservator, medal):
    make_report(medal, number="CR-A")
    worse = make_report(medal, "after", number="CR-B", signed=False)
    make_finding(worse, severity=2)

    def shown(**query):
        return [report.number for report in client.get(reverse("condition_list"), query).context["page"].rows]

    assert shown() == ["CR-B", "CR-A"]
    assert shown(occasion="before") == ["CR-A"]
    assert shown(signed="no") == ["CR-B"]
    assert shown(grade="2") == ["CR-B"]
    assert shown(grade="0") == ["CR-A"]
    assert shown(q="ferrigan") == ["CR-B", "CR-A"]


def test_the_export_carries_what_is_shown(client, conservator, medal):
    make_report(medal, number="CR-A")
    make_report(medal, "after", number="CR-B", signed=False)

    lines = b"".join(client.get(reverse("condition_list"), {"signed": "yes", "export": "csv"})).decode().splitlines()

    assert len(lines) == 2
    assert lines[1].startswith("CR-A,OVM.1931.0044,")


def test_pages_ask_few_questions_with_fifty_records(client, conservator, medal, django_assert_max_num_queries):
    before = make_report(medal)
    report = make_report(medal, "after", signed=False, previous=before)
    for number in range(1, 51):
        make_finding(before, position_count=number, photo=make_photo(medal))
        make_finding(report, position_count=number, photo=make_photo(medal), comparison="not_reexamined")
        make_report(make_item(), previous=before)

    for address in (
        report.get_absolute_url(), reverse("condition_list"), reverse("finding_add", args=[report.number]),
        reverse("condition_add", args=[medal.number]), reverse("condition_edit", args=[report.number]),
        reverse("condition_photos", args=[report.number]),
    ):  # fmt: skip
        with django_assert_max_num_queries(15):
            assert client.get(address).status_code == 200
