"""Surveys: by the table of intervals, by the last report, by a date of one's own; the round by place."""

from datetime import date

import pytest
from django.urls import reverse

from records import clock
from records.models import Item, SurveyDate, SurveyRule
from records.seeding import ensure_survey_rules
from records.surveys import months_after, surveyed, surveys_of
from tests.factories import make_item, make_place, make_report, make_user
from tests.records.findings import make_finding

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator", "tobias"))
    return client


@pytest.fixture(autouse=True)
def november(monkeypatch):
    """A day on which the pieces below are due, overdue or later."""
    monkeypatch.setattr("records.clock.today", lambda: date(2026, 11, 25))


def copy(number: str = "R.1889.7", **fields) -> Item:
    return make_item(number, kind="historic_copy", **fields)


def survey(item: Item):
    (found,) = surveys_of(surveyed().filter(pk=item.pk))
    return found


@pytest.mark.parametrize(
    ("day", "months", "later"),
    [
        (date(2026, 2, 16), 3, date(2026, 5, 16)),
        (date(2026, 8, 31), 6, date(2027, 2, 28)),  # February has no 31st
        (date(2026, 12, 1), 12, date(2027, 12, 1)),
        (date(2027, 11, 30), 3, date(2028, 2, 29)),  # a leap year
    ],
)
def test_months_are_counted_by_the_calendar(day, months, later):
    assert months_after(day, months) == later


def test_a_new_register_knows_three_intervals():
    """Three months for a core, six for an interrupted piece, twelve for others: common practice."""
    firsts = dict(SurveyRule.objects.values_list("history_code", "first_months_count"))

    assert firsts == {"core": 3, "interrupted": 6, "other": 12}


def test_an_interval_that_the_museum_changed_is_not_filled_in_again():
    rule = SurveyRule.objects.get(history_code="other")
    rule.later_months_count = 36
    rule.save()

    ensure_survey_rules()

    assert SurveyRule.objects.get(history_code="other").later_months_count == 36


def test_after_a_report_the_later_interval_counts():
    item = copy()
    make_report(item, "survey", examined_on=date(2026, 3, 6))

    found = survey(item)

    assert found.due_on == date(2028, 3, 6)
    assert "24 months after" in found.because


@pytest.mark.parametrize(
    ("urgency", "due_on"), [(3, date(2026, 11, 5)), (2, date(2027, 10, 5)), (1, date(2028, 10, 5))]
)
def test_what_was_urgent_is_looked_at_sooner(urgency, due_on):
    item = copy()
    report = make_report(item, "survey", examined_on=date(2026, 10, 5))
    make_finding(report, urgency=urgency)

    assert survey(item).due_on == due_on


def test_an_unsigned_report_is_no_survey_but_is_gone_on_with():
    item = copy()
    report = make_report(item, "survey", examined_on=date(2026, 11, 1), signed=False)

    found = survey(item)

    assert found.last is None
    assert found.begun == report


def test_a_date_of_ones_own_holds_until_the_next_signature():
    item = copy()
    make_report(item, "survey", examined_on=date(2026, 3, 6))
    SurveyDate.objects.create(item=item, due_on=date(2026, 12, 1), because="goes on tour", set_at=clock.now())
    assert survey(item).due_on == date(2026, 12, 1)

    later = make_report(item, "survey", examined_on=date(2026, 11, 25))
    later.signed_at = clock.now()
    later.save()

    assert survey(item).due_on == date(2028, 11, 25)


@pytest.mark.parametrize("status", ["workshop", "left", "lost", "destroyed"])
def test_what_is_not_in_the_house_is_not_surveyed(status):
    item = copy(status=status)

    assert not surveyed().filter(pk=item.pk).exists()


def test_the_round_lists_what_is_due_by_place(conservator):
    case, store = make_place("Gallery, case 4"), make_place("Store 2")
    due, other = copy(place=case), copy("R.2", place=store)
    make_report(due, "survey", examined_on=date(2024, 11, 1))
    make_report(other, "survey", examined_on=date(2026, 11, 1))

    page = conservator.get(reverse("survey_list")).content.decode()
    assert "R.1889.7" in page
    assert "overdue" in page
    assert "Gallery, case 4</h2>" in page
    assert "Store 2</h2>" not in page

    whole = conservator.get(reverse("survey_list"), {"within": "all", "place": store.pk}).content.decode()
    assert "Store 2</h2>" in whole
    assert "Gallery, case 4</h2>" not in whole


def test_the_light_of_a_round_goes_along_to_each_report(conservator):
    copy()

    page = conservator.get(reverse("survey_list"), {"light": "raking, left", "aids": "×10"}).content.decode()
    assert "occasion=survey&amp;light=raking%2C+left&amp;aids=%C3%9710" in page
    form = conservator.get(
        reverse("condition_add", args=["R.1889.7"]), {"occasion": "survey", "light": "raking, left"}
    ).context["form"]

    assert form.initial["light"] == "raking, left"
    assert form.initial["occasion"] == "survey"


def test_the_home_page_names_what_is_due_at_each_place(conservator):
    copy(place=make_place("Gallery, case 4"))

    due = reverse("survey_due")
    assert f'hx-get="{due}"' in conservator.get("/").content.decode()
    assert "Survey R.1889.7, Gallery, case 4" in conservator.get(due, headers={"HX-Request": "true"}).content.decode()
    assert "Gallery, case 4</h2>" in conservator.get(due).content.decode()


@pytest.mark.parametrize("months", ["0", "500", "x"])
def test_an_impossible_interval_is_refused_and_kept_in_the_form(conservator, months):
    rule = SurveyRule.objects.get(history_code="core")

    answer = conservator.post(
        reverse("survey_rule_edit", args=[rule.pk]),
        {"label": rule.label, "first_months_count": months, "later_months_count": 12, "version": rule.version},
    )

    assert answer.status_code == 422
    assert "Write a whole number from 1 to 120." in answer.content.decode()
    assert f'value="{months}"' in answer.content.decode()


def test_a_date_is_set_with_its_reason(conservator):
    item = copy()

    refused = conservator.post(reverse("survey_date", args=[item.number]), {"due_on": "2020-01-01", "because": "tour"})
    kept = conservator.post(reverse("survey_date", args=[item.number]), {"due_on": "2027-01-01", "because": "tour"})

    assert refused.status_code == 422
    assert "This day has passed" in refused.content.decode()
    assert kept.status_code == 302
    assert survey(item).because == "set by a person: tour"


def test_a_reader_sees_the_round_and_changes_nothing(client):
    client.force_login(make_user("reader", "reader"))
    copy()

    assert client.get(reverse("survey_list")).status_code == 200
    assert client.get(reverse("survey_date", args=["R.1889.7"])).status_code == 403


def test_fifty_copies_are_listed_with_few_questions(conservator, django_assert_max_num_queries):
    for number in range(60):
        make_report(copy(f"R.{number:03d}"), "survey", examined_on=date(2024, 1, 1))

    with django_assert_max_num_queries(15):
        page = conservator.get(reverse("survey_list"))

    assert len(page.context["page"].rows) == 50
    rest = conservator.get(reverse("survey_list"), {"after": page.context["page"].next_key})
    assert [s.item.number for s in rest.context["page"].rows] == [f"R.{n:03d}" for n in range(50, 60)]
    export = conservator.get(reverse("survey_list"), {"export": "csv"})
    assert len(b"".join(export).splitlines()) == 61
