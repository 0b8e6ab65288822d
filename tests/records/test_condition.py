"""Condition reports and findings: begun from the last one, two axes, signed once. The scales are DOMAIN's 0–3."""

from datetime import date, timedelta

import pytest
from django.urls import reverse

from records import clock
from records.models import ConditionReport, Duty
from tests.factories import make_commission, make_item, make_photo, make_report, make_user
from tests.records.findings import make_finding, typed_finding

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client):
    user = make_user("conservator", "tobias")
    client.force_login(user)
    return user


@pytest.fixture
def medal():
    return make_item("OVM.1931.0044", title="Portrait medal of Maud Ferrigan", materials="leaded bronze")


def beginning(examiner, **changes) -> dict:
    return {
        "number": "CR-2026-07", "occasion": "before", "examined_on": "2026-02-03", "examiner": examiner.party.name,
        "light": "raking, left",
    } | changes  # fmt: skip


def page_of(client, report: ConditionReport) -> str:
    return client.get(report.get_absolute_url()).content.decode()


# Beginning a report


def test_number_occasion_examiner_and_day_are_offered(client, conservator, medal):
    offered = client.get(reverse("condition_add", args=[medal.number])).context["form"]

    assert offered["number"].value() == f"CR-{clock.today().year}-01"
    assert offered["occasion"].value() == "before"
    assert offered["examined_on"].value() == clock.today()
    assert offered["examiner"].value() == conservator.party.name


def test_last_report_and_commission_are_offered(client, conservator, medal):
    commission = make_commission(originals=[medal])
    make_report(medal, examined_on=date(2025, 5, 1))
    last = make_report(medal, examined_on=date(2026, 2, 3))

    offered = client.get(reverse("condition_add", args=[medal.number])).context["form"]

    assert offered["previous"].value() == last.number
    assert offered["commission"].value() == commission.number
    assert offered["occasion"].value() == "after"


def test_a_report_is_begun_with_light_and_mass(client, conservator, medal):
    answer = client.post(
        reverse("condition_add", args=[medal.number]), beginning(conservator, mass_g="71,36", mass_g_unit="g")
    )

    report = ConditionReport.objects.get(number="CR-2026-07")
    assert answer.url == report.get_absolute_url()
    assert (report.light, report.examiner) == ("raking, left", conservator.party)
    assert report.mass_g == 71.36


@pytest.mark.parametrize("role", ["registrar", "technician", "curator", "reader"])
def test_only_the_conservator_writes_reports(client, medal, role):
    client.force_login(make_user(role))

    answer = client.get(reverse("condition_add", args=[medal.number]))

    assert answer.status_code == 403
    assert "conservator" in answer.content.decode()


def test_findings_are_carried_over_as_not_reexamined_and_never_as_same(client, conservator, medal):
    before = make_report(medal)
    make_finding(before, extent="1.5 mm", position_count=2)

    client.post(
        reverse("condition_add", args=[medal.number]),
        beginning(conservator, occasion="after", examined_on="2026-02-06", previous=before.number),
    )

    carried = ConditionReport.objects.get(number="CR-2026-07").findings.get()
    assert (carried.comparison, carried.position_count, carried.extent) == ("not_reexamined", 2, "1.5 mm")
    assert carried.first_seen_on == before.examined_on
    assert carried.photo is None


def test_a_future_day_comes_back_with_everything_that_was_typed(client, conservator, medal):
    tomorrow = clock.today() + timedelta(days=1)

    answer = client.post(
        reverse("condition_add", args=[medal.number]), beginning(conservator, examined_on=str(tomorrow))
    )

    page = answer.content.decode()
    assert answer.status_code == 422
    assert "has not come yet" in page and "raking, left" in page


def test_a_day_before_the_report_compared_with_is_refused(client, conservator, medal):
    before = make_report(medal, examined_on=date(2026, 3, 1))

    answer = client.post(reverse("condition_add", args=[medal.number]), beginning(conservator, previous=before.number))

    assert answer.status_code == 422
    assert f"This lies before {before.number}" in answer.content.decode()


def test_light_is_required(client, conservator, medal):
    answer = client.post(reverse("condition_add", args=[medal.number]), beginning(conservator, light=""))

    assert "Say which light was used" in answer.content.decode()


# What it amounts to


def complete(report: ConditionReport, **changes) -> dict:
    return {
        "number": report.number, "occasion": report.occasion, "examined_on": str(report.examined_on),
        "light": report.light, "examiner": report.examiner.name, "grade": "", "stability": "stable",
        "version": report.version,
    } | changes  # fmt: skip


def test_the_grade_follows_the_worst_finding(client, conservator, medal):
    report = make_report(medal, signed=False)
    make_finding(report, severity=2)
    make_finding(report, severity=1, position_count=2)

    page = page_of(client, report)

    assert "2 moderate" in page and "as the worst finding" in page


def test_another_grade_needs_a_reason(client, conservator, medal):
    report = make_report(medal, signed=False)
    make_finding(report, severity=2)
    address = reverse("condition_edit", args=[report.number])

    refused = client.post(address, complete(report, grade="1", not_seen="the edge under the label"))
    kept = client.post(address, complete(report, grade="1", grade_reason="hidden when mounted"))

    assert refused.status_code == 422
    assert "say why" in refused.content.decode() and "the edge under the label" in refused.content.decode()
    assert kept.status_code == 302
    assert "hidden when mounted" in page_of(client, report)


def test_changed_asks_what_changed(client, conservator, medal):
    report = make_report(medal, "after", signed=False, previous=make_report(medal))

    answer = client.post(reverse("condition_edit", args=[report.number]), complete(report, change="changed"))

    assert "Say what changed" in answer.content.decode()


def test_not_reexamined_is_counted_apart_and_not_called_unchanged(client, conservator, medal):
    report = make_report(medal, "after", signed=False, previous=make_report(medal), change="no_change")
    make_finding(report, comparison="same")
    make_finding(report, comparison="not_reexamined", position_count=2)

    page = page_of(client, report)

    assert "1 same, 1 not re-examined" in page
    assert "1 of 2 findings not re-examined" in page


def test_the_mass_is_compared_with_the_last_one(client, conservator, medal):
    report = make_report(medal, "after", signed=False, previous=make_report(medal, mass_g=71.36), mass_g=71.34)

    assert "less than in" in page_of(client, report)


def test_photographs_are_chosen_among_those_of_the_thing(client, conservator, medal):
    report = make_report(medal, signed=False)
    mine, other = make_photo(medal), make_photo(make_item())
    address = reverse("condition_photos", args=[report.number])

    refused = client.post(address, {"photos": [other.pk], "version": report.version})
    client.post(address, {"photos": [mine.pk], "version": report.version})

    assert refused.status_code == 422
    assert list(report.photos.all()) == [mine]


# The signature


def test_gaps_are_listed_and_keep_the_signature_away(client, conservator, medal):
    report = make_report(medal, "after", signed=False)

    answer = client.post(reverse("condition_sign", args=[report.number]))

    report.refresh_from_db()
    assert answer.status_code == 422
    assert not report.is_signed
    assert "State whether anything changed" in answer.content.decode()


def test_no_change_cannot_be_signed_over_a_new_finding(client, conservator, medal):
    report = make_report(medal, "after", signed=False, previous=make_report(medal), change="no_change")
    make_finding(report, comparison="new")

    answer = client.post(reverse("condition_sign", args=[report.number]))

    assert answer.status_code == 422
    assert "finding 1 is new or worse" in answer.content.decode()


def test_a_signed_change_puts_telling_the_owner_on_the_list(client, conservator, medal):
    report = make_report(medal, "after", signed=False, change="changed", change_words="flake lost")

    client.post(reverse("condition_sign", args=[report.number]))

    report.refresh_from_db()
    assert (report.signed_by, report.signed_role) == (conservator.party, "conservator")
    assert Duty.objects.filter(item=medal, sentence__contains="Tell the owner").exists()


def test_what_changed_before_the_eyes_of_the_signer_is_shown_again_first(client, conservator, medal):
    report = make_report(medal, signed=False)
    seen = client.get(report.get_absolute_url()).context["seen"]
    make_finding(report)

    answer = client.post(reverse("condition_sign", args=[report.number]), {"seen": seen})

    report.refresh_from_db()
    assert not report.is_signed
    assert "read it again" in answer.content.decode()


def test_only_the_conservator_signs(client, medal):
    client.force_login(make_user("registrar"))
    report = make_report(medal, signed=False)

    assert client.post(reverse("condition_sign", args=[report.number])).status_code == 403


@pytest.mark.parametrize("name", ["condition_edit", "condition_photos", "finding_add"])
def test_a_signed_report_is_not_opened_again(client, conservator, medal, name):
    report = make_report(medal)

    answer = client.get(reverse(name, args=[report.number]), follow=True)

    assert answer.redirect_chain[-1][0] == report.get_absolute_url()
    assert "write a new report" in answer.content.decode()


def test_what_is_sent_after_the_signature_changes_nothing_and_keeps_what_was_typed(client, conservator, medal):
    report = make_report(medal)
    kept = make_finding(report)

    edited = client.post(reverse("condition_edit", args=[report.number]), complete(report, summary="quite another"))
    added = client.post(reverse("finding_add", args=[report.number]), typed_finding(location="rim, 7 h"))
    client.post(reverse("finding_delete", args=[kept.pk]))
    client.post(reverse("finding_compare", args=[kept.pk]), {"comparison": "worse"})

    report.refresh_from_db()
    assert report.summary == "" and list(report.findings.values_list("comparison", flat=True)) == [""]
    assert "quite another" in edited.content.decode() and "rim, 7 h" in added.content.decode()
