"""What the sheet asks about before it keeps a line: units taken for each other, lines that contradict each other."""

import pytest

from process.models import Reading
from tests.factories import make_mould, make_run, make_user
from tests.process.scenario_runs import event, run_on_the_bench
from tests.process.test_sheet import post

pytestmark = pytest.mark.django_db


@pytest.fixture
def run(client):
    return run_on_the_bench(client)


@pytest.mark.parametrize(("typed", "unit", "hint"), [("643", "A", "643 mA"), ("0.643", "mA", "0.643 A")])
def test_amperes_and_milliamperes_taken_for_each_other(client, run, typed, unit, hint):
    html = post(client, run, current=typed, current_a_unit=unit).content.decode()

    assert f"{hint} would be usual. Is the unit right?" in html
    assert "0.00\u2009A on" not in html
    assert not Reading.objects.exists()


def test_a_reading_against_one_of_the_same_minute_is_asked_about(client, run):
    post(client, run)

    contrary = post(client, run, current="1.12")
    completing = post(client, run, current="", temperature_degc="21.9", temperature_degc_unit="°C")

    assert "a reading of this very minute says otherwise" in contrary.content.decode()
    assert completing.status_code == 302 and Reading.objects.count() == 2


def test_a_dead_entry_is_asked_about(client):
    run = make_run("D-2026-009", moulds=[make_mould()])
    client.force_login(make_user("technician"))

    page = post(client, run, "run_start", current="0")

    assert "nothing flows at entry" in page.content.decode()


def test_current_that_was_not_gone_does_not_come_back(client, run):
    sent = {"current": "0.42", "activation": "none"}

    asked = post(client, run, "event_add", "?kind=restart", **sent)
    event(run, "2026-02-16 14:00", "interruption", 0)
    right = post(client, run, "event_add", "?kind=restart", **sent)

    assert asked.status_code == 422 and right.status_code == 302
    assert "the sheet says 0.24\u2009A at 09:00 before that, so it was not gone" in asked.content.decode()


def test_current_that_is_gone_does_not_go_again(client, run):
    event(run, "2026-02-16 14:00", "interruption", 0)

    page = post(client, run, "event_add", "?kind=interruption", current="", cause="power", handling="immersed")

    assert "it was gone already" in page.content.decode()
    assert run.events.filter(kind="interruption").count() == 1
