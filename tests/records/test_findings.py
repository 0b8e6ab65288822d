"""Findings of a condition report: one word, one place, two axes; carried from report to report under one number."""

import pytest
from django.urls import reverse

from records.models import ConditionReport, Finding, Term
from tests.factories import make_item, make_report, make_user
from tests.records.findings import make_finding, term, typed_finding

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client):
    user = make_user("conservator", "tobias")
    client.force_login(user)
    return user


@pytest.fixture
def medal():
    return make_item("OVM.1931.0044", title="Portrait medal of Maud Ferrigan", materials="leaded bronze")


def page_of(client, report: ConditionReport) -> str:
    return client.get(report.get_absolute_url()).content.decode()


def test_a_finding_keeps_severity_and_stability_apart(client, conservator, medal):
    report = make_report(medal, signed=False)

    client.post(reverse("finding_add", args=[report.number]), typed_finding(extent="1.5 mm"))

    kept = report.findings.get()
    assert (kept.severity, kept.stability, kept.position_count) == (3, "stable", 1)
    page = page_of(client, report)
    assert "<dt>Severity</dt><dd>3 major</dd>" in page
    assert "<dt>Stability</dt><dd>stable</dd>" in page
    assert "Local inward deformation without opening." in page


def test_stability_left_to_the_word_is_the_words_own(client, conservator, medal):
    report = make_report(medal, signed=False)

    client.post(reverse("finding_add", args=[report.number]), typed_finding(term=term("crack").pk, stability=""))

    assert report.findings.get().stability == "possibly_active"


def test_keep_and_add_another_goes_on_with_an_empty_form(client, conservator, medal):
    report = make_report(medal, signed=False)

    answer = client.post(reverse("finding_add", args=[report.number]), typed_finding(another="1"), follow=True)

    assert answer.redirect_chain[-1][0] == reverse("finding_add", args=[report.number])
    assert "Kept as finding 1" in answer.content.decode()
    assert answer.context["form"]["location"].value() == ""


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"term": "999999"}, "Choose a word from the list"),
        ({"term": "dent"}, "Choose a word from the list"),
        ({"location": ""}, "Say where"),
        ({"severity": ""}, "Choose 1, 2 or 3."),
        ({"severity": "0"}, "Choose 1, 2 or 3."),
    ],
)
def test_a_finding_typed_wrongly_comes_back_with_one_sentence(client, conservator, medal, changes, sentence):
    report = make_report(medal, signed=False)

    answer = client.post(reverse("finding_add", args=[report.number]), typed_finding(extent="3 × 2 mm", **changes))

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

    client.post(reverse("finding_add", args=[report.number]), typed_finding(comparison="new"))

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
