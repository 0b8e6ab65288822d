"""Readings pasted from a spreadsheet: seen first, kept once."""

import pytest
from django.urls import reverse

from process.models import Reading
from process.seeding import ensure_ranges
from tests.factories import make_user
from tests.process.trace_runs import coin_run

pytestmark = pytest.mark.django_db
HEAD = "time\tA\tV\t°C\tAh\tnote\n"
ROWS = HEAD + "2026-03-02 18:30\t0,42\t0.62\t21.9\t\tsmooth\n02.03.2026 19:00\t0.42\t0.62\t22.0\t1.05\t\n"


@pytest.fixture
def bench(client):
    client.force_login(make_user("technician"))
    return client


def paste(bench, run, rows=ROWS, **more):
    return bench.post(reverse("readings_paste", args=[run.number]), {"rows": rows} | more)


def test_the_preview_keeps_nothing(bench):
    run = coin_run()
    page = paste(bench, run)
    assert page.status_code == 200 and "Keep 2 readings" in page.text
    assert run.readings.count() == 2


def test_kept_rows_are_readings_and_a_second_sending_doubles_none(bench):
    run = coin_run()
    for _ in range(2):
        assert paste(bench, run, keep="1").status_code == 302
    added = list(run.readings.exclude(current_a=None).order_by("at"))
    assert [(f"{row.at:%H:%M}", row.current_a, row.meter_ah, row.note) for row in added] == [
        ("17:30", 0.42, None, "smooth"),
        ("18:00", 0.42, 1.05, ""),
    ]
    assert len({row.token for row in added}) == 2


def test_one_wrong_row_holds_all_back_and_is_named(bench):
    run = coin_run()
    page = paste(bench, run, ROWS + "2026-03-02 19:30\tmuch\n", keep="1")
    assert page.status_code == 422 and "is wrong" in page.text and "much" in page.text
    assert run.readings.count() == 2


def test_a_date_that_may_be_read_two_ways_is_not_guessed(bench):
    page = paste(bench, coin_run(), "03/02/2026 18:30;0.42\n")
    assert "may be read with the day or the month first" in page.text


def test_an_unusual_current_is_asked_about_and_kept_when_it_is_so(bench):
    run = coin_run()
    row = "2026-03-02 18:30;4.2;0.6\n"
    assert "is unusual" in paste(bench, run, row).text
    assert paste(bench, run, row, keep="1").status_code == 422
    assert paste(bench, run, row, keep="1", confirmed="on").status_code == 302
    assert Reading.objects.filter(run=run, current_a=4.2).exists()


def test_a_row_outside_the_run_keeps_all_back(bench):
    run = coin_run()
    page = paste(bench, run, ROWS + "2026-03-09 19:30\t0.42\n", keep="1")
    assert page.status_code == 422 and "after the run stopped" in page.text
    assert run.readings.count() == 2


def test_a_row_outside_the_run_is_named_before_anything_is_kept(bench):
    run = coin_run()
    page = paste(bench, run, ROWS + "2026-03-01 09:00;0.42\n".replace(";", "\t"))
    assert "This is before the run started" in page.text and "Keep 3 readings" not in page.text


def test_two_rows_of_one_minute_are_asked_about_unless_they_are_the_same_row(bench):
    run = coin_run()
    twice = paste(bench, run, ROWS + ROWS.removeprefix(HEAD))
    assert "Keep 2 readings" in twice.text

    other = ROWS + "2026-03-02 18:30\t0,41\t0.62\t21.9\t\t\n"
    assert "Row 2 has the same time" in paste(bench, run, other).text
    assert paste(bench, run, other, keep="1").status_code == 422 and run.readings.count() == 2
    assert paste(bench, run, other, keep="1", confirmed="on").status_code == 302 and run.readings.count() == 5


def test_a_pasted_milliampere_is_recognised(bench):
    ensure_ranges()
    page = paste(bench, coin_run(), "2026-03-02 18:30\t420\t0.62\n")
    assert "420 mA would be usual" in page.text
