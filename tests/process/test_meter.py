"""What a meter shows is held against what hung in the bath and for how long."""

import pytest

from process.models import Reading
from process.seeding import ensure_ranges
from process.summaries.hanging import area_hours
from process.summaries.meter import meter_charge_ah
from process.summaries.runs import summarise
from tests.factories import make_cathode, make_run, make_user
from tests.process.scenario_runs import at, event, reading
from tests.process.test_sheet import post

pytestmark = pytest.mark.django_db
NINE, ELEVEN, ONE = (at(f"2026-02-16 {hour}:00") for hour in ("09", "11", "13"))


@pytest.fixture
def run(client):
    """1 dm² hangs from nine on, 2 dm² are hung in at eleven."""
    ensure_ranges()
    client.force_login(make_user("technician", "pell"))
    run = make_run("D-2026-002")
    make_cathode(run, label="one", total_area_dm2=1.0, face_area_dm2=0.8)
    late = make_cathode(run, label="two", total_area_dm2=2.0, face_area_dm2=1.6)
    event(run, "2026-02-16 09:00", "entry", 0.24)
    event(run, "2026-02-16 11:00", "hung_in", 0.9, cathode=late)
    return run


def hung(run, begin, end) -> float:
    return area_hours(run.cathodes.all(), run.events.all(), begin, end)


def test_each_piece_counts_for_as_long_as_it_hung(run):
    assert hung(run, NINE, ELEVEN) == pytest.approx(2.0)
    assert hung(run, NINE, ONE) == pytest.approx(4.0 + 4.0)
    assert hung(run, ELEVEN, ONE) == pytest.approx(2.0 + 4.0)


def test_a_piece_that_was_taken_out_counts_no_more(run):
    event(run, "2026-02-16 12:00", "taken_out", 0.6, cathode=run.cathodes.get(label="one"))
    assert hung(run, NINE, ONE) == pytest.approx(3.0 + 4.0)


def test_no_time_is_no_charge(run):
    assert hung(run, NINE, NINE) == 0


def test_a_meter_that_shows_more_than_can_have_flowed_is_asked_about(client, run):
    """8 dm²·h to one o'clock: 893 Ah would be over 100 A/dm², a slip of the point of 8.93."""
    sent = {"when": "2026-02-16T13:00", "current": "0,9", "meter_ah_unit": "Ah"}

    asked = post(client, run, meter_ah="893", **sent)
    right = post(client, run, meter_ah="8,93", **sent)

    assert asked.status_code == 422 and "is more than this run can have taken" in asked.content.decode()
    assert 'value="893"' in asked.content.decode()
    assert right.status_code == 302 and Reading.objects.get().meter_ah == 8.93


def test_a_meter_that_fell_is_asked_about(client, run):
    reading(run, "2026-02-16 12:00", 0.9, meter_ah=1.2)

    asked = post(client, run, when="2026-02-16T13:00", current="0,9", meter_ah="0,3", meter_ah_unit="Ah")

    assert asked.status_code == 422
    assert "the meter stood at 1.20\u2009Ah before that. Was it set back?" in asked.content.decode()


def test_a_meter_set_back_is_counted_stretch_by_stretch(client, run):
    """5 to 8 and, set back within a minute, 0 to 6 are 9 Ah; the difference of the ends would be 1."""
    for hour, count in (("10:00", 5.0), ("11:00", 8.0), ("11:00", 0.0), ("13:00", 6.0)):
        reading(run, f"2026-02-16 {hour}", 0.9, meter_ah=count)

    page = client.get(run.get_absolute_url()).content.decode().replace("\u2009", " ")

    assert meter_charge_ah(run) == 9.0
    assert "Q = (8 − 5) + (6 − 0) A·h" in page and "It was set back 1 time," in page


def test_meter_and_sheet_are_compared_over_the_time_in_which_the_meter_was_read(client, run):
    """0.9 A from eleven on: from noon to two o'clock 1.8 Ah by the sheet, whatever it counts before and after."""
    reading(run, "2026-02-16 12:00", 0.9, meter_ah=100.0)
    reading(run, "2026-02-16 14:00", 0.9, meter_ah=101.8)
    event(run, "2026-02-16 20:00", "stop", 0)

    meter = next(each for each in summarise(run).charge.beside if each.code == "meter")

    assert meter.figure.value == pytest.approx(1.8)
    assert meter.apart_pct == pytest.approx(0.0, abs=1e-9) and meter.apart_words == "+0.0\u2009%"
