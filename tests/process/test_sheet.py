"""The sheet at the bench: readings, events, corrections, and everything that a wet thumb can get wrong."""

import re
import uuid

import pytest
from django.urls import reverse

from process.models import Event, Reading
from records import clock
from tests.factories import make_mould, make_run, make_user
from tests.process.scenario_runs import at, event, reading, run_on_the_bench

pytestmark = pytest.mark.django_db


@pytest.fixture
def run(client):
    return run_on_the_bench(client)


def line(when="2026-02-16T15:00", current="1,21", **fields) -> dict:
    return {"at": when, "current_a": current, "current_a_unit": "A", "token": str(uuid.uuid4())} | fields


def post(client, run, name="reading_add", query="", **fields):
    return client.post(reverse(name, args=[run.number]) + query, line(**fields))


def test_reading_is_saved_with_a_way_to_correct_it(client, run):
    response = client.post(
        reverse("reading_add", args=[run.number]),
        line(temperature_degc="71.2", temperature_degc_unit="°F"),
        follow=True,
    )

    row = Reading.objects.get()
    assert row.current_a == 1.21
    assert row.temperature_degc == pytest.approx(21.78, abs=0.01)
    assert row.as_typed["current_a"]["text"] == "1,21"
    assert row.at == at("2026-02-16 15:00")
    assert f'href="{reverse("reading_edit", args=[row.pk])}"' in response.content.decode()


def test_last_values_and_the_time_are_filled_in(client, run):
    with clock.held_at(at("2026-02-16 11:00")):
        html = client.get(reverse("reading_add", args=[run.number])).content.decode()

    assert 'value="2026-02-16T11:00"' in html
    assert 'value="0.24"' in html
    assert 'value="21.2"' in html


def test_the_offset_stands_where_it_changes(client):
    """SCENARIO 7.6: half past one in winter time, half past three in summer time, one hour later."""
    run = make_run("D-2026-006", moulds=[make_mould()])
    client.force_login(make_user("reader"))
    event(run, "2026-03-28 18:00", "entry", 3.0)
    for when in ("2026-03-29 01:30", "2026-03-29 03:30", "2026-03-29 08:00"):
        reading(run, when, 10.3)

    page = client.get(run.get_absolute_url()).content.decode()

    times = re.findall(r"<time datetime[^>]*>(.*?)</time>", page[page.index('id="event-') :])
    assert [re.sub(r"<.*?>", "", each) for each in times][:4] == [
        "28 Mar 18:00 +01:00", "29 Mar 01:30", "03:30 +02:00", "08:00",
    ]  # fmt: skip


def test_same_reading_sent_twice_is_one_row(client, run):
    """Fault 6 of the scenario."""
    sent = line()

    for _ in range(2):
        assert client.post(reverse("reading_add", args=[run.number]), sent).status_code == 302

    assert Reading.objects.count() == 1


def test_a_reading_gone_back_to_and_changed_is_not_swallowed(client, run):
    url = reverse("reading_add", args=[run.number])
    mark = re.search(r'name="sending" value="([0-9a-f-]{36})"', client.get(url).content.decode())[1]
    typed = line("2026-02-16T10:00", "0,24", sending=mark)
    client.post(url, typed)

    changed = client.post(url, typed | {"current_a": "0,64"})
    again = {
        name: field.value() for name, field in zip(changed.context["form"].fields, changed.context["form"], strict=True)
    }
    once_more = typed | {"current_a": "0,64", "sending": again["sending"], "token": again["token"]}
    asked = client.post(url, once_more).content.decode()
    tick = re.search(r'name="it_is_so" value="(\w+)"', asked)[1]
    client.post(url, once_more | {"it_is_so": tick})

    assert changed.status_code == 422 and "was saved already, with other words" in changed.content.decode()
    assert sorted(run.readings.values_list("current_a", flat=True)) == [0.24, 0.64]


def test_a_reading_gone_back_to_and_spoilt_is_not_called_saved(client, run):
    sent = line()
    client.post(reverse("reading_add", args=[run.number]), sent)

    spoilt = client.post(reverse("reading_add", args=[run.number]), sent | {"current_a": "1,21 volts"})

    assert spoilt.status_code == 422 and "1,21 volts" in spoilt.content.decode()
    assert Reading.objects.get().current_a == 1.21


def test_same_event_sent_twice_is_one_row(client, run):
    sent = line(cause="charge")

    for _ in range(2):
        client.post(reverse("event_add", args=[run.number]) + "?kind=stop", sent)

    assert run.events.filter(kind="stop").count() == 1


@pytest.mark.parametrize(
    ("when", "words"),
    [
        ("2026-02-16T08:00", "before the run started"),
        ("2100-01-01T08:00", "has not come yet"),
        ("2026-02-30T08:00", "no such day"),
        ("2026-03-29T02:30", "did not exist"),
        ("nine o’clock", "Write day and time"),
    ],
)
def test_time_that_cannot_be_comes_back_with_one_sentence(client, run, when, words):
    page = post(client, run, when=when, note="typed before")

    html = page.content.decode()
    assert page.status_code == 422
    assert words in html
    assert "typed before" in html
    assert "1,21" in html
    assert not Reading.objects.exists()


def test_reading_after_the_stop_is_refused(client, run):
    event(run, "2026-02-17 18:00", "stop", 0)

    page = post(client, run, when="2026-02-17T18:01")

    assert "after the run stopped (17 Feb, 18:00)" in page.content.decode()


def test_reading_before_the_start_of_the_sheet_is_refused(client):
    client.force_login(make_user("technician"))

    page = post(client, make_run())

    assert "The run has not started" in page.content.decode()


@pytest.mark.parametrize(
    ("field", "text", "words"),
    [
        ("current_a", "1e999", "too"),
        ("current_a", "-1", "not negative"),
        ("current_a", "0,35 Q", "not known here"),
        ("current_a", "1" * 65, "64"),
        ("voltage_v", "31", "not possible"),
        ("temperature_degc", "72", "72 °F"),
        ("meter_ah", "-1", "less than nothing"),
    ],
)
def test_wrong_figures_come_back_as_typed(client, run, field, text, words):
    page = post(client, run, **{field: text})

    html = page.content.decode()
    assert page.status_code == 422
    assert words in html
    assert text in html
    assert not Reading.objects.exists()


def test_current_is_judged_by_the_area_it_flows_on(client, run):
    page = post(client, run, current="11.8")

    html = page.content.decode()
    assert "11.80\u2009A on 0.804\u2009dm²" in html
    assert "14.7 A/ft²" in html
    assert not Reading.objects.exists()


def test_empty_reading_is_refused(client, run):
    page = post(client, run, current="")

    assert "write at least one figure" in page.content.decode()


def test_event_page_offers_large_choices(client, run):
    html = client.get(reverse("event_add", args=[run.number])).content.decode()

    assert "?kind=interruption" in html
    assert "?kind=entry" not in html


def test_interruption_asks_for_cause_and_what_it_did(client, run):
    page = client.post(reverse("event_add", args=[run.number]) + "?kind=interruption", line(current=""))
    post(client, run, "event_add", "?kind=interruption", current="", cause="power", handling="immersed")

    assert page.status_code == 422
    row = run.events.get(kind="interruption")
    assert (row.current_a, row.cause, row.handling) == (0.0, "power", "immersed")


def test_restart_says_whether_it_came_by_itself(client, run):
    event(run, "2026-02-16 10:00", "interruption", 0)

    post(client, run, "event_add", "?kind=restart", current="0.42", returned_by_itself="on", activation="none")

    row = run.events.get(kind="restart")
    assert (row.returned_by_itself, row.activation, row.current_a) == (True, "none", 0.42)


def test_restart_without_a_current_is_refused(client, run):
    page = post(client, run, "event_add", "?kind=restart", current="")

    assert page.status_code == 422
    assert not run.events.filter(kind="restart").exists()


def test_stop_before_the_last_entry_is_refused(client, run):
    reading(run, "2026-02-16 15:00", 1.21)

    page = post(client, run, "event_add", "?kind=stop", when="2026-02-16T14:00", cause="charge")

    assert "There are entries after this time" in page.content.decode()


def test_second_stop_is_refused(client, run):
    event(run, "2026-02-17 18:00", "stop", 0)

    page = post(client, run, "event_add", "?kind=stop", when="2026-02-17T17:00", cause="charge")

    assert "stopped already" in page.content.decode()


def test_correction_needs_a_reason_that_goes_into_the_history(client, run):
    row = reading(run, "2026-02-16 15:00", 12.1)
    corrected = line(version="0")

    refused = client.post(reverse("reading_edit", args=[row.pk]), corrected)
    client.post(reverse("reading_edit", args=[row.pk]), corrected | {"reason": "point misread"})

    assert refused.status_code == 422
    row.refresh_from_db()
    assert row.current_a == 1.21
    assert row.history.first().history_change_reason == "point misread"
    assert row.history.last().current_a == 12.1


def test_entry_is_not_moved_behind_the_first_reading(client, run):
    reading(run, "2026-02-16 10:00", 0.24)
    entry = run.events.get(kind="entry")

    page = client.post(
        reverse("event_edit", args=[entry.pk]), line("2026-02-16T11:00", "0.24", version="0", reason="clock was wrong")
    )

    assert "There are entries before this time" in page.content.decode()
    assert Event.objects.get(pk=entry.pk).at == at("2026-02-16 09:00")


def test_sheet_shows_both_kinds_of_lines_in_one_order(client, run):
    reading(run, "2026-02-16 10:00", 0.24)
    event(run, "2026-02-16 10:40", "covered")

    page = client.get(run.get_absolute_url())

    lines = page.context["summary"].sheet.lines
    assert [row.row.at for row in lines] == [at(f"2026-02-16 {t}") for t in ("09:00", "10:00", "10:40")]
    assert lines[2].charge_ah == pytest.approx(0.24 * 100 / 60)


def test_reader_cannot_write_on_the_sheet(client, run):
    client.force_login(make_user("reader"))

    assert post(client, run).status_code == 403
    assert b"sheet-entry" not in client.get(run.get_absolute_url()).content
