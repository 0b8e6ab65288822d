"""A piece joins the rail while the run goes on, and one leaves it: gates, pulls, segments, corrections, striking."""

from datetime import timedelta

import pytest
from django.urls import reverse

from process.models import Cathode, Event, Pull, Run, Shell
from process.reports.segments import segments
from process.summaries.charts import run_chart
from process.summaries.runs import summarise
from records.models import UnmetGate
from tests.factories import make_cathode, make_mould, make_run, make_user
from tests.process.scenario_runs import at

pytestmark = pytest.mark.django_db
NINE = at("2026-02-16 09:00")


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    return client


@pytest.fixture
def run():
    run = make_run("D-2026-070")
    make_cathode(run, label="one", mould=make_mould())
    Event.objects.create(run=run, kind="entry", at=NINE, current_a=0.6)
    return run


def look(run):
    return summarise(Run.objects.with_sheet().get(pk=run.pk))


def hang_in(client, run, mould, hours=2.0, current="1.2", **more):
    return client.post(
        reverse("cathode_hang_in", args=[run.number]),
        {
            "label": "two", "mould": mould.item.number, "face_area_dm2": "0.289", "face_area_dm2_unit": "dm²",
            "total_area_dm2": "0.402", "total_area_dm2_unit": "dm²", "at": (NINE + timedelta(hours=hours)).isoformat(),
            "current_a": current, "current_a_unit": "A", "version": 0,
        } | more,
    )  # fmt: skip


def take_out(client, cathode, hours, current="0.6"):
    when = (NINE + timedelta(hours=hours)).isoformat()
    return client.post(
        reverse("cathode_take_out", args=[cathode.pk]),
        {"at": when, "current_a": current, "current_a_unit": "A", "version": 0,
         "token": "6f1f3b4e-8f5e-4a53-9c1f-0d7a4f0a7a12"},
    )  # fmt: skip


def test_a_closed_gate_keeps_the_piece_out_and_says_what_is_missing(technician, run):
    answer = hang_in(technician, run, make_mould(), label="a second medal")

    assert answer.status_code == 422
    page = answer.content.decode()
    assert "Record what has happened" in page and "a second medal" in page
    assert not Cathode.objects.filter(label="a second medal").exists()
    assert not Pull.objects.exists()


def test_recorded_afterwards_it_hangs_there_uses_a_pull_and_keeps_what_was_not_met(technician, run):
    mould = make_mould()

    answer = hang_in(technician, run, mould, afterwards="1")

    assert answer.status_code == 302
    cathode = run.cathodes.get(label="two")
    assert cathode.pull.mould == mould and cathode.pull.used_on == NINE.date()
    assert UnmetGate.objects.filter(subject_number=run.number).exists()
    event = run.events.get(kind="hung_in")
    assert event.cathode == cathode and event.as_typed["current_a"]["text"] == "1.2"
    assert "current_a" not in cathode.as_typed


def test_areas_shares_and_finish_follow_by_segment(technician, run):
    hang_in(technician, run, make_mould(), afterwards="1")
    Event.objects.create(run=run, kind="current", at=NINE + timedelta(hours=6), current_a=1.2)

    with_stop = look(run)

    one, two = with_stop.cathodes
    first, second = with_stop.rail.shown
    assert (first.labels, second.labels) == (("one",), ("one", "two"))
    assert second.area.value == pytest.approx(0.804)
    assert first.density.value == pytest.approx(0.6 / 0.402)
    assert one.share.value - two.share.value == pytest.approx(1.2)  # two hours of 0.6 A before the second hung there
    # Each still grows by its own half of the current; the run is over when the later one is thick enough.
    assert two.remaining.value - one.remaining.value == pytest.approx(1.2 / 0.6)
    assert with_stop.prospect.remaining.value == two.remaining.value
    assert with_stop.plan.area.value == pytest.approx(0.402)  # the plan was reckoned for what went in with the run


def test_the_same_mould_cannot_hang_there_twice_but_again_after_it_came_out(technician, run):
    mould = run.cathodes.get().mould

    refused = hang_in(technician, run, mould, afterwards="1")
    hang_in(technician, run, make_mould(), label="other", afterwards="1")
    take_out(technician, run.cathodes.get(label="one"), 3)
    again = hang_in(technician, run, mould, hours=4, afterwards="1")

    assert refused.status_code == 422 and "hangs in this run already" in refused.content.decode()
    assert again.status_code == 302


def test_a_current_is_judged_on_what_hangs_there_at_that_instant(technician, run):
    """1.9 A is 4.7 A/dm² on the first piece alone and 2.4 A/dm² on both."""
    hang_in(technician, run, make_mould(), afterwards="1")
    line = {"current_a": "1.9", "current_a_unit": "A", "version": 0}
    add = reverse("reading_add", args=[run.number])

    alone = technician.post(add, line | {"at": (NINE + timedelta(hours=1)).isoformat(),
                                         "token": "6f1f3b4e-8f5e-4a53-9c1f-0d7a4f0a7a13"})  # fmt: skip
    both = technician.post(add, line | {"at": (NINE + timedelta(hours=3)).isoformat(),
                                        "token": "6f1f3b4e-8f5e-4a53-9c1f-0d7a4f0a7a14"})  # fmt: skip

    assert alone.status_code == 422 and "0.402" in alone.content.decode()
    assert both.status_code == 302


def test_a_piece_taken_out_is_weighed_before_the_run_stops(technician, run):
    hang_in(technician, run, make_mould(), afterwards="1")
    two = run.cathodes.get(label="two")
    weigh = reverse("shell_weigh", args=[two.pk])
    mass = {"number": "S-90", "gross_mass_g": "0.70", "gross_mass_g_unit": "g", "version": 0,
            "weighed_at": (NINE + timedelta(hours=5)).isoformat()}  # fmt: skip

    too_early = technician.post(weigh, mass)
    take_out(technician, two, 3)
    weighed = technician.post(weigh, mass)

    assert too_early.status_code == 422 and "still hangs in the bath" in too_early.content.decode()
    assert weighed.status_code == 302
    one, two = look(run).cathodes
    # 0.6 Ah of copper, 1.185494 g/Ah: 0.7113 g in theory (scipy.constants and the standard atomic weight)
    assert two.efficiency.value == pytest.approx(0.70 / (0.6 * 1.185494) * 100, rel=1e-4)
    assert one.gain is None and look(run).result is None
    assert "S-90" in technician.get(run.get_absolute_url()).content.decode()


def test_the_time_of_a_hanging_in_is_corrected_with_a_reason_and_its_pull_follows(technician, run):
    hang_in(technician, run, make_mould(), afterwards="1")
    event = run.events.get(kind="hung_in")

    answer = technician.post(reverse("event_edit", args=[event.pk]), {
        "at": (NINE + timedelta(hours=26)).isoformat(), "current_a": "1.2", "current_a_unit": "A",
        "reason": "wrong day", "version": event.version,
    })  # fmt: skip

    assert answer.status_code == 302
    event.refresh_from_db()
    assert event.at == NINE + timedelta(hours=26)
    assert event.cathode.pull.used_on == (NINE + timedelta(hours=26)).date()
    assert event.history.first().history_change_reason == "wrong day"


def test_it_is_not_taken_out_before_it_was_hung_in(technician, run):
    hang_in(technician, run, make_mould(), afterwards="1")

    answer = take_out(technician, run.cathodes.get(label="two"), 1, current="0.6")

    assert answer.status_code == 422 and "was hung in at" in answer.content.decode()


def test_struck_out_it_never_hung_there_and_its_pull_is_given_back(technician, run):
    mould = make_mould()
    hang_in(technician, run, mould, afterwards="1")
    event = run.events.get(kind="hung_in")
    strike = reverse("strike", args=["event", event.pk])

    technician.post(strike, {"reason": "wrong run"})

    assert not mould.pulls.exists()
    assert [each.cathode.label for each in look(run).cathodes] == ["one"]
    assert Cathode.every.get(label="two").struck_reason == "wrong run"
    page = technician.get(run.get_absolute_url()).content.decode()
    assert "Hung in" in page and "wrong run" in page
    back = technician.post(strike, {"reason": "it did hang there"})
    assert back.status_code == 422 and "hang it in again" in back.content.decode()


def test_what_was_weighed_keeps_the_line_that_hung_it_in(technician, run):
    hang_in(technician, run, make_mould(), afterwards="1")
    two = run.cathodes.get(label="two")
    take_out(technician, two, 3)
    technician.post(reverse("shell_weigh", args=[two.pk]), {
        "number": "S-91", "gross_mass_g": "0.70", "gross_mass_g_unit": "g", "version": 0,
    })  # fmt: skip
    assert Shell.objects.filter(cathode=two).exists()

    for kind in ("hung_in", "taken_out"):
        answer = technician.post(reverse("strike", args=["event", run.events.get(kind=kind).pk]), {"reason": "no"})
        assert answer.status_code == 422 and "S-91" in answer.content.decode()


def test_a_reader_may_not_hang_anything_in(client, run):
    client.force_login(make_user("reader"))

    assert client.get(reverse("cathode_hang_in", args=[run.number])).status_code == 403


def test_the_page_of_a_plan_adds_a_cathode_and_that_of_a_run_hangs_it_in(technician, run):
    answer = technician.get(reverse("cathode_add", args=[run.number]))

    assert answer.status_code == 302 and answer.url == reverse("cathode_hang_in", args=[run.number])


def test_the_chart_draws_pieces_that_grew_alike_as_one_line_and_marks_the_change(technician, run):
    make_cathode(run, label="its twin")
    hang_in(technician, run, make_mould(), label="a very long name for a piece at the rail", afterwards="1")
    Event.objects.create(run=run, kind="stop", at=NINE + timedelta(hours=6), current_a=0)

    chart = run_chart(look(run))

    current, thickness = chart.panels
    assert [series.label for series in thickness.series] == ["one, its twin", "a very long name for a p…"]
    assert thickness.series[1].points[0] == (NINE + timedelta(hours=2), 0.0)
    assert [series.label for series in current.series] == ["current", "planned"]
    assert [event.label for event in chart.events] == ["hung in", "stop"]


def test_paper_says_what_hung_there_from_when_to_when(technician, run):
    hang_in(technician, run, make_mould(), afterwards="1")
    Event.objects.create(run=run, kind="stop", at=NINE + timedelta(hours=6), current_a=0)

    (table,) = segments(look(run))

    assert [row[:3] for row in table.rows] == [
        ("16 Feb, 09:00", "16 Feb, 11:00", "one"), ("16 Feb, 11:00", "16 Feb, 15:00", "one, two"),
    ]  # fmt: skip


def test_paper_says_nothing_of_a_rail_that_stayed_as_it_was(run):
    Event.objects.create(run=run, kind="stop", at=NINE + timedelta(hours=6), current_a=0)

    assert segments(look(run)) == []
