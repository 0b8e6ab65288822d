"""The day that a person set for one piece: moved with a new reason, withdrawn with one, and told in the history."""

from datetime import date

import pytest
from django.urls import reverse

from records.models import Item, SurveyDate
from records.surveys import surveyed, surveys_of
from tests.factories import make_item, make_report, make_user

pytestmark = pytest.mark.django_db
DATE = "/things/R.1889.7/survey/"


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator", "tobias"))
    return client


@pytest.fixture
def dated() -> SurveyDate:
    item = make_item("R.1889.7", kind="historic_copy")
    make_report(item, "survey", examined_on=date(2026, 3, 6))
    return SurveyDate.objects.create(item=item, due_on=date(2127, 1, 1), because="goes on tour")


def due_on() -> date:
    (found,) = surveys_of(surveyed().filter(number="R.1889.7"))
    return found.due_on


def moved(row: SurveyDate, **more: str) -> dict[str, str]:
    return {"due_on": "2027-02-01", "because": row.because, "version": str(row.version)} | more


def test_a_moved_day_needs_a_reason_of_its_own(conservator, dated):
    refused = conservator.post(DATE, moved(dated))
    kept = conservator.post(DATE, moved(dated, because="the tour begins later"))

    assert refused.status_code == 422
    assert "This was the reason for 1 January 2127: say why the day is another now." in refused.content.decode()
    assert kept.status_code == 302 and due_on() == date(2027, 2, 1)


def test_a_reason_may_be_put_better_while_the_day_stays(conservator, dated):
    answer = conservator.post(DATE, moved(dated, due_on="2036-11-01", because="a"))
    assert answer.status_code == 302
    dated.refresh_from_db()

    assert conservator.post(DATE, moved(dated, due_on="2036-11-01", because="goes on tour in May")).status_code == 302


def test_a_withdrawn_day_gives_way_to_the_table_and_stays_in_the_history(conservator, dated):
    address = reverse("survey_date_withdraw", args=["R.1889.7"])
    assert address in conservator.get(DATE).content.decode()

    refused = conservator.post(address, {"reason": "", "version": str(dated.version)})
    gone = conservator.post(address, {"reason": "the tour was called off", "version": str(dated.version)})

    assert "Say why the date no longer holds" in refused.content.decode()
    assert gone.status_code == 302
    assert not SurveyDate.objects.exists() and due_on() == date(2028, 3, 6)
    history = conservator.get("/things/R.1889.7/history/").content.decode()
    assert "date of the next survey removed" in history and "(the tour was called off)" in history


def test_a_day_that_somebody_moved_meanwhile_is_shown_before_it_is_withdrawn(conservator, dated):
    seen = str(dated.version)
    dated.because = "goes on tour in May"
    dated.save()

    answer = conservator.post(
        reverse("survey_date_withdraw", args=["R.1889.7"]), {"reason": "called off", "version": seen}
    )

    assert answer.status_code == 422 and "Someone else saved this record" in answer.content.decode()
    assert SurveyDate.objects.exists()


def test_where_no_day_was_set_there_is_none_to_withdraw(conservator):
    make_item("R.1889.7", kind="historic_copy")

    assert conservator.get(reverse("survey_date_withdraw", args=["R.1889.7"])).status_code == 404
    assert "Withdraw it" not in conservator.get(DATE).content.decode()


def test_a_reader_withdraws_nothing(client, dated):
    client.force_login(make_user("reader", "reader"))

    assert client.post(reverse("survey_date_withdraw", args=["R.1889.7"]), {"reason": "no"}).status_code == 403
    assert Item.objects.get(number="R.1889.7").survey_date == dated
