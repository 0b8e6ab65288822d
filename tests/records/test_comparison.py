"""What became of each finding, and what a change sets going: through the pages. SCENARIO 12, fault 15."""

from datetime import date

import pytest
from django.urls import reverse

from records.models import Duty, Finding, Incident
from tests.factories import make_item, make_report, make_user
from tests.records.findings import make_finding, typed_finding

pytestmark = pytest.mark.django_db


@pytest.fixture
def tobias(client):
    user = make_user("conservator", "tobias")
    client.force_login(user)
    return user


@pytest.fixture
def after(tobias):
    """The mask after moulding: one finding was taken over from the report before."""
    mask = make_item("OVM.1907.0112", title="Face mask")
    before = make_report(mask)
    make_finding(before)
    report = make_report(mask, "after", signed=False, previous=before, examined_on=date(2026, 3, 13))
    make_finding(report, comparison="not_reexamined")
    return report


def add(client, report, **changes):
    return client.post(reverse("finding_add", args=[report.number]), typed_finding(**changes))


def test_a_flake_that_the_last_report_does_not_hold_is_new_and_not_the_same(client, after):
    refused = add(client, after, comparison="same")

    assert refused.status_code == 422
    assert "so it is new, and the owner is told of it" in refused.content.decode()
    assert after.findings.count() == 1

    assert add(client, after, comparison="new").status_code == 302
    assert after.findings.get(position_count=2).comparison == Finding.Comparison.NEW


def test_what_was_overlooked_then_is_the_same_with_words_that_show_it(client, after):
    add(client, after, comparison="same", note="Seen on the photograph of February, at the rim.")

    assert after.findings.get(position_count=2).comparison == Finding.Comparison.SAME


def test_a_finding_of_the_last_report_is_not_called_new(client, after):
    carried = after.findings.get()

    by_form = client.post(
        reverse("finding_edit", args=[carried.pk]), typed_finding(comparison="new", version=carried.version)
    )
    client.post(reverse("finding_compare", args=[carried.pk]), {"comparison": "new"})

    carried.refresh_from_db()
    assert by_form.status_code == 422
    assert "it is not new" in by_form.content.decode()
    assert carried.comparison == Finding.Comparison.NOT_REEXAMINED


def test_nothing_is_signed_of_which_nobody_said_what_became_of_it(client, after):
    make_finding(after, position_count=3, comparison="")
    after.change = "no_change"
    after.save()

    answer = client.post(reverse("condition_sign", args=[after.number]))

    assert answer.status_code == 422
    assert "Say of finding 3 what became of it" in answer.content.decode()


@pytest.fixture
def changed(client, after):
    """Signed with a change."""
    after.change, after.change_words = "changed", "Flake lost at the left temple."
    after.save()
    client.post(reverse("condition_sign", args=[after.number]))
    after.refresh_from_db()
    assert after.is_signed
    return after


def test_a_change_opens_an_incident_with_a_number_and_a_duty_to_tell_the_owner(client, changed):
    incident = changed.incident

    page = client.get(changed.get_absolute_url()).content.decode()

    assert incident.number in page
    assert "owner not told yet" in page
    assert Duty.objects.open().filter(pk=incident.duty_id, sentence__contains="Tell the owner").exists()


def test_that_the_owner_was_told_is_said_with_the_day_and_how(client, changed):
    incident = Incident.objects.get()
    url = incident.get_absolute_url()
    told = {"number": incident.number, "treatment": "", "owner_told_on": "2026-03-16", "version": incident.version}

    refused = client.post(url, told | {"owner_told_words": ""})
    assert refused.status_code == 422
    assert "Say who was told, and how" in refused.content.decode()
    assert "2026-03-16" in refused.content.decode()

    client.post(url, told | {"owner_told_words": "Curator, by letter"})
    page = client.get(changed.get_absolute_url()).content.decode()
    assert "owner told" in page
    assert "16 March 2026: Curator, by letter" in page
    assert Duty.objects.get(pk=incident.duty_id).done_on == date(2026, 3, 16)


def test_a_second_look_is_due_thirty_days_after_the_first_where_no_moulding_is_recorded(client, changed):
    """Thirty days: oil of a mould shows late (common practice)."""
    second = Duty.objects.open().get(sentence__contains="second time after moulding")

    assert second.due_on == date(2026, 4, 12)
    assert second.sentence in client.get(reverse("duty_list")).content.decode()
