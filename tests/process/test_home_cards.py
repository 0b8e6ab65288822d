"""What runs and baths put on the home page."""

import re
from datetime import UTC, date, datetime

import pytest
from django.urls import reverse

from records import clock
from tests.factories import make_analysis, make_bath, make_cathode, make_commission, make_mould, make_run, make_user
from tests.process.scenario_runs import at, event, medal_run, reading

pytestmark = pytest.mark.django_db


@pytest.fixture
def home(client):
    """The home page of a technician, as text, at a local time."""
    client.force_login(make_user("technician"))

    def read(when: str) -> str:
        with clock.held_at(at(when)):
            return client.get(reverse("home")).content.decode()

    return read


def test_planned_run_is_to_be_started(home):
    make_run("D-2026-007", planned_start_at=at("2026-02-16 09:00"))

    assert "Start D-2026-007" in home("2026-02-16 08:00")


def test_run_planned_for_no_day_is_still_named_with_its_next_step(home):
    run = make_run("D-2026-007", planned_start_at=None)

    assert "Add a cathode, D-2026-007" in home("2026-02-16 08:00")

    make_cathode(run)
    assert "Start the run, D-2026-007" in home("2026-02-16 08:00")


def test_run_without_current_comes_first(home):
    run = make_run("D-2026-007")
    event(run, "2026-02-16 09:00", "entry", 0.24)
    event(run, "2026-02-16 10:00", "interruption", 0)

    assert "No current in D-2026-007" in home("2026-02-16 11:00")


def test_run_that_has_its_charge_is_to_be_stopped(home):
    run = make_run("D-2026-007")
    make_cathode(run)
    event(run, "2026-02-16 09:00", "entry", 1.2)

    assert "Stop D-2026-007: the planned charge has passed" in home("2026-02-18 09:00")


def test_stopped_run_is_to_be_weighed(home):
    medal_run(weigh=False)

    assert "Weigh what grew on obverse, D-2026-002" in home("2026-02-18 09:00")


def test_good_run_asks_only_for_its_shells_to_be_made_up(home):
    run = medal_run()
    run.outcome = "good"
    run.save()

    page = home("2026-02-18 09:00")

    assert page.count("D-2026-002") == 1
    assert re.search(r"Make up S-\d+ and S-\d+ of D-2026-002", page)


def test_failed_run_asks_for_nothing(home):
    run = medal_run()
    run.outcome = "failed"
    run.save()

    assert "D-2026-002" not in home("2026-02-18 09:00")


def test_old_analysis_is_asked_for_by_its_days(home):
    make_analysis(make_bath("B-01"))

    assert "Analyse bath B-01" not in home("2026-03-12 09:00")
    assert "Analyse bath B-01: 31 days" in home("2026-03-13 09:00")


def test_analysis_is_asked_for_after_too_much_charge(home):
    """10 Ah/L on 60 L are 600 Ah."""
    bath = make_bath("B-01")
    make_analysis(bath, sampled_at=datetime(2026, 2, 10, 9, 0, tzinfo=UTC))
    run = make_run(bath=bath, outcome="good")
    event(run, "2026-02-11 09:00", "entry", 100.0)
    event(run, "2026-02-11 16:00", "stop", 0)

    assert "Analyse bath B-01" in home("2026-02-12 09:00")


def test_home_takes_few_queries_however_much_waits(client, django_assert_max_num_queries):
    client.force_login(make_user("technician"))
    for number in range(20):
        bath = make_bath()
        make_analysis(bath)
        run = make_run(bath=bath)
        make_cathode(run)
        event(run, "2026-02-16 09:00", "entry", 0.24)
        reading(run, "2026-02-16 10:00", 0.24, meter_ah=float(number))

    with clock.held_at(at("2026-02-16 11:00")), django_assert_max_num_queries(15):
        client.get(reverse("home"))


def test_a_mould_of_an_open_commission_is_accepted_and_then_hung(home, client):
    commission = make_commission()
    mould = make_mould(number="M-2026-01", commission=commission)

    assert "Accept mould M-2026-01" in home("2026-02-12 09:00")

    mould.accepted_on = date(2026, 2, 5)
    mould.save()
    page = home("2026-02-12 09:00")
    assert "Plan a run with mould M-2026-01" in page and "?mould=M-2026-01" in page

    make_cathode(make_run(), mould=mould)
    assert "with mould M-2026-01" not in home("2026-02-12 09:00")


def test_a_bath_without_limits_is_the_conservators_to_judge(client):
    bath = make_bath("B-01")
    for role, before in (("conservator", False), ("technician", False)):
        client.force_login(make_user(role))
        assert ("Set the limits of bath B-01" in client.get(reverse("home")).content.decode()) is before
    bath.limits.all().delete()

    for role, shown in (("conservator", True), ("technician", False)):
        client.force_login(make_user(role))
        assert ("Set the limits of bath B-01" in client.get(reverse("home")).content.decode()) is shown
