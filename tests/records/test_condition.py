"""Condition reports and findings: begun from the last one, two axes, signed once. The scales are DOMAIN's 0–3."""

from datetime import date, timedelta

import pytest
from django.urls import reverse

from records import clock
from records.models import ConditionReport, Duty, Finding, Term
from tests.factories import make_commission, make_item, make_photo, make_report, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client):
    user = make_user("conservator", "tobias")
    client.force_login(user)
    return user


@pytest.fixture
def medal():
    return make_item("OVM.1931.0044", title="Portrait medal of Maud Ferrigan", materials="leaded bronze")


def term(label: str) -> Term:
    """A word of the vocabulary that the register brings with it."""
    return Term.objects.get(scheme="finding", group="any object", label=label)


def make_finding(report: ConditionReport, label: str = "dent", **fields) -> Finding:
    defaults = {"location": "edge, 4 h", "severity": 1, "stability": "stable", "position_count": 1}
    return Finding.objects.create(report=report, term=term(label), **defaults | fields)


def beginning(examiner, **changes) -> dict:
    return {
        "number": "CR-2026-07", "occasion": "before", "examined_on": "2026-02-03", "examiner": examiner.party.pk,
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
    assert offered["examiner"].value() == conservator.party


def test_last_report_and_commission_are_offered(client, conservator, medal):
    commission = make_commission(originals=[medal])
    make_report(medal, examined_on=date(2025, 5, 1))
    last = make_report(medal, examined_on=date(2026, 2, 3))

    offered = client.get(reverse("condition_add", args=[medal.number])).context["form"]

    assert offered["previous"].value() == last
    assert offered["commission"].value() == commission
    assert offered["occasion"].value() == "after"


def test_a_report_is_begun_with_light_and_mass(client, conservator, medal):
    answer = client.post(
        reverse("condition_add", args=[medal.number]), beginning(conservator, mass_g_0="71,36", mass_g_1="g", mass_g="71,36", mass_g_unit="g")
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
        beginning(conservator, occasion="after", examined_on="2026-02-06", previous=before.pk),
    )

    carried = ConditionReport.objects.get(number="CR-2026-07").findings.get()
    assert (carried.comparison, carried.position_count, carried.extent) == ("not_reexamined", 2, "1.5 mm")
    assert carried.first_seen_on == before.examined_on
    assert carried.photo is None


def test_a_future_day_comes_back_with_everything_that_was_typed(client, conservator, medal):
    tomorrow = clock.today() + timedelta(days=1)

    answer = client.post(reverse("condition_add", args=[medal.number]), beginning(conservator, examined_on=str(tomorrow)))

    page = answer.content.decode()
    assert answer.status_code == 422
    assert "has not come yet" in page and "raking, left" in page


def test_a_day_before_the_report_compared_with_is_refused(client, conservator, medal):
    before = make_report(medal, examined_on=date(2026, 3, 1))

    answer = client.post(reverse("condition_add", args=[medal.number]), beginning(conservator, previous=before.pk))

    assert answer.status_code == 422
    assert f"This lies before {before.number}" in answer.content.decode()


def test_light_is_required(client, conservator, medal):
    answer = client.post(reverse("condition_add", args=[medal.number]), beginning(conservator, light=""))

    assert "Say which light was used" in answer.content.decode()


# Findings


def finding(**changes) -> dict:
    return {"term": term("dent").pk, "location": "edge, 4 h", "severity": "3", "stability": "stable", "urgency": "0"} | changes


def test_a_finding_keeps_severity_and_stability_apart(client, conservator, medal):
    report = make_report(medal, signed=False)

    client.post(reverse("finding_add", args=[report.number]), finding(extent="1.5 mm"))

    kept = report.findings.get()
    assert (kept.severity, kept.stability, kept.position_count) == (3, "stable", 1)
    page = page_of(client, report)
    assert "<dt>Severity</dt><dd>3 major</dd>" in page
    assert "<dt>Stability</dt><dd>stable</dd>" in page
    assert "Local inward deformation without opening." in page


def test_stability_left_to_the_word_is_the_words_own(client, conservator, medal):
    report = make_report(medal, signed=False)

    client.post(reverse("finding_add", args=[report.number]), finding(term=term("crack").pk, stability=""))

    assert report.findings.get().stability == "possibly_active"


def test_keep_and_add_another_goes_on_with_an_empty_form(client, conservator, medal):
    report = make_report(medal, signed=False)

    answer = client.post(reverse("finding_add", args=[report.number]), finding(another="1"), follow=True)

    assert answer.redirect_chain[-1][0] == reverse("finding_add", args=[report.number])
    assert "Kept as finding 1" in answer.content.decode()
    assert answer.context["form"]["location"].value() is None


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"term": "999999"}, "Choose a word from the list"),
        ({"term": "dent"}, "Choose a word from the list"),
        ({"location": ""}, "Say where"),
        ({"severity": ""}, "Choose 1, 2 or 3."),
        ({"severity": "0"}, "0 is not one of the available choices"),
    ],
)
def test_a_finding_typed_wrongly_comes_back_with_one_sentence(client, conservator, medal, changes, sentence):
    report = make_report(medal, signed=False)

    answer = client.post(reverse("finding_add", args=[report.number]), finding(extent="3 × 2 mm", **changes))

    page = answer.content.decode()
    assert answer.status_code == 422
    assert sentence in page and "3 × 2 mm" in page


def test_words_for_the_kind_of_object_come_first(client, conservator, medal):
    report = make_report(medal, signed=False)

    groups = client.get(reverse("finding_add", args=[report.number])).context["form"].fields["term"].widget.groups

    assert [group for group, _ in groups][:2] == ["original: copper alloy", "any object"]


def test_a_retired_word_is_offered_only_where_it_stands(client, conservator, medal):
    report = make_report(medal, signed=False)
    old = Term.objects.create(scheme="finding", group="any object", label="verdigris", is_retired=True)
    kept = Finding.objects.create(report=report, term=old, location="field")

    assert "verdigris" not in client.get(reverse("finding_add", args=[report.number])).content.decode()
    assert "verdigris" in client.get(reverse("finding_edit", args=[kept.pk])).content.decode()


def test_a_new_finding_never_takes_the_number_of_one_in_the_last_report(client, conservator, medal):
    before = make_report(medal)
    make_finding(before, position_count=4)
    report = make_report(medal, "after", signed=False, previous=before)

    client.post(reverse("finding_add", args=[report.number]), finding(comparison="new"))

    assert report.findings.get().position_count == 5


def test_a_finding_entered_by_mistake_is_struck_out(client, conservator, medal):
    report = make_report(medal, signed=False)
    mistake = make_finding(report)

    client.post(reverse("finding_delete", args=[mistake.pk]))

    assert not report.findings.exists()
    assert Finding.history.filter(id=mistake.pk, history_type="-").exists()


def test_a_finding_of_the_last_report_needs_an_answer_instead_of_striking_out(client, conservator, medal):
    before = make_report(medal)
    make_finding(before)
    report = make_report(medal, "after", signed=False, previous=before)
    carried = make_finding(report, comparison="not_reexamined")

    answer = client.post(reverse("finding_delete", args=[carried.pk]), follow=True)

    assert report.findings.exists()
    assert "say what became of it" in answer.content.decode()


def test_same_is_said_with_one_touch_and_worse_asks_for_the_finding_again(client, conservator, medal):
    before = make_report(medal)
    report = make_report(medal, "after", signed=False, previous=before)
    same, worse = (make_finding(report, position_count=n, comparison="not_reexamined") for n in (1, 2))

    first = client.post(reverse("finding_compare", args=[same.pk]), {"comparison": "same"})
    second = client.post(reverse("finding_compare", args=[worse.pk]), {"comparison": "worse"})

    assert first.url == same.get_absolute_url()
    assert second.url == reverse("finding_edit", args=[worse.pk])
    assert sorted(report.findings.values_list("comparison", flat=True)) == ["same", "worse"]


def test_an_unknown_comparison_changes_nothing(client, conservator, medal):
    report = make_report(medal, "after", signed=False, previous=make_report(medal))
    carried = make_finding(report, comparison="not_reexamined")

    answer = client.post(reverse("finding_compare", args=[carried.pk]), {"comparison": "lost"}, follow=True)

    carried.refresh_from_db()
    assert carried.comparison == "not_reexamined"
    assert "Choose same, worse, better, treated" in answer.content.decode()


# What it amounts to


def complete(report: ConditionReport, **changes) -> dict:
    return {
        "number": report.number, "occasion": report.occasion, "examined_on": str(report.examined_on), "light": report.light,
        "examiner": report.examiner_id, "grade": "", "stability": "stable", "version": report.version,
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
    added = client.post(reverse("finding_add", args=[report.number]), finding(location="rim, 7 h"))
    client.post(reverse("finding_delete", args=[kept.pk]))
    client.post(reverse("finding_compare", args=[kept.pk]), {"comparison": "worse"})

    report.refresh_from_db()
    assert report.summary == "" and list(report.findings.values_list("comparison", flat=True)) == [""]
    assert "quite another" in edited.content.decode() and "rim, 7 h" in added.content.decode()


# Lists


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
