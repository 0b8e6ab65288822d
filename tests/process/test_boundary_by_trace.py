"""How deep a boundary lies follows the evidence that was chosen for the charge: the sheet may not have seen it."""

import math

import pytest

from process.models import Run
from process.summaries.runs import summarise
from tests.everything import make_trace
from tests.factories import make_cathode, make_run
from tests.process.scenario_runs import at, event, weighed

pytestmark = pytest.mark.django_db
GONE, BACK = at("2026-03-03 02:20"), at("2026-03-03 05:40")


@pytest.fixture
def run():
    """The sheet says 0.42 A throughout, 27 h: 11.34 Ah. The logger saw none from 02:20 to 05:20."""
    run = make_run("D-2026-061")
    weighed(make_cathode(run, total_area_dm2=0.28, face_area_dm2=0.162), "S-05", 10.44)
    event(run, "2026-03-02 15:00", "entry", 0.42)
    event(run, "2026-03-03 18:00", "stop", 0.0)
    return run


def traced(run: Run, charge_ah: float = 10.01, before_ah: float = 4.69, **columns):
    trace = make_trace(run)
    trace.state, trace.known_ah, trace.switching_ah = "accepted", charge_ah, 0.06
    trace.starts_at, trace.ends_at = at("2026-03-02 15:00"), at("2026-03-03 18:00")
    trace.stretches = [
        {"last_on_s": GONE.timestamp() - 1200, "from_s": GONE.timestamp(), "to_s": BACK.timestamp() - 1200,
         "back_s": BACK.timestamp(), "restart": "silent", "charge_before_ah": before_ah, "back_a": 0.42,
         "before_spread_ah": 0.04}
    ]  # fmt: skip
    for name, value in columns.items():
        setattr(trace, name, value)
    trace.save()
    return trace


def look(run: Run, charge_from: str):
    run.charge_from = charge_from
    run.save()
    return summarise(Run.objects.with_sheet().get(pk=run.pk))


def test_a_boundary_that_only_the_logger_saw_lies_by_the_logger_s_charge(run):
    """10.44 g on 0.28 dm² at 8.92 g/cm³ are 0.4180 mm; 4.69 of 10.01 Ah lie before it: 0.1958 mm."""
    traced(run)
    summary = look(run, "trace")
    (found,) = summary.interruptions
    depth = found.boundaries[0].depth
    assert depth.value == pytest.approx(0.41800 * 4.69 / 10.01, abs=1e-5)
    assert depth.plus_minus == pytest.approx(0.418 * 0.04 / 10.01, rel=1e-3)
    assert "charge of the trace" in depth.note
    assert found.charge_before_ah == pytest.approx(4.69)


def test_with_the_sheet_chosen_the_sheet_says_how_deep(run):
    """4.76 Ah by 02:20, 11.34 Ah in all."""
    traced(run)
    (found,) = look(run, "sheet").interruptions
    assert found.boundaries[0].depth.value == pytest.approx(0.41800 * 4.76 / 11.34, abs=1e-5)
    assert found.charge_before_ah == pytest.approx(4.76)


def test_what_earlier_traces_counted_lies_before_it(run):
    """Two files of one run: 4 Ah in the first, 0.69 Ah of the second before the current went."""
    early = traced(run, 4.0, sha256="1" * 64, stretches=[])
    early.starts_at, early.ends_at = at("2026-03-02 15:00"), at("2026-03-03 01:00")
    early.save()
    traced(run, 6.01, 0.69, starts_at=at("2026-03-03 01:00"))
    summary = look(run, "trace")
    assert summary.interruptions[0].charge_before_ah == pytest.approx(4.69)
    assert summary.charge.chosen.plus_minus == pytest.approx(math.hypot(0.06, 0.06))  # each logger switched by itself


def test_two_traces_that_overlap_leave_the_depth_to_the_sheet(run):
    traced(run, 4.0, sha256="1" * 64, stretches=[])
    traced(run, 6.01, 0.69, starts_at=at("2026-03-03 01:00"))
    (found,) = look(run, "trace").interruptions
    assert found.charge_before_ah == pytest.approx(4.76)


def test_the_charge_of_a_trace_carries_the_doubt_of_its_switching_moments(run):
    """0.06 Ah of 10.01: it goes on into the efficiency, 10.44 g over 1.185494 g/Ah."""
    traced(run)
    summary = look(run, "trace")
    assert summary.charge.chosen.plus_minus == pytest.approx(0.06)
    assert "switching moments" in summary.charge.chosen.note
    assert summary.result.efficiency.value == pytest.approx(10.44 / (1.185494 * 10.01) * 100, rel=1e-6)
    assert summary.result.efficiency.plus_minus == pytest.approx(summary.result.efficiency.value * 0.06 / 10.01)
