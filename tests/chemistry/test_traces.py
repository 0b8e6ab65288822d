"""The logger's trace of the invented run D-2026-003: what is known, what gaps may add, what is suspected."""

import csv
from datetime import datetime
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from scipy.integrate import trapezoid

from process.chemistry.errors import ChemistryError
from process.chemistry.traces import SPIKE_FACTOR, gaps_among, meter_charge, trace_charge
from records.units import ureg

PATH = Path(__file__).parent.parent / "data" / "trace_d_2026_003.csv"
INTERVAL_S = 20 * 60
PLANNED_A = 0.42


@pytest.fixture(scope="module")
def trace() -> tuple[np.ndarray, np.ndarray]:
    with PATH.open(newline="") as lines:
        read = list(csv.DictReader(lines))
    times = [datetime.fromisoformat(line["timestamp_utc"]).timestamp() for line in read]
    return np.array(times), np.array([float(line["current_A"]) for line in read])


def test_trace_as_imported_is_wrong_by_the_slip(trace) -> None:
    assert trace_charge(*trace, INTERVAL_S).bridged.magnitude == pytest.approx(10.12, abs=5e-3)


def above_the_plan(trace) -> np.ndarray:
    return trace[1] > SPIKE_FACTOR * PLANNED_A


def test_the_decimal_slip_is_the_only_suspect(trace) -> None:
    assert trace[1][above_the_plan(trace)].tolist() == [4.2]


def test_trace_without_the_slip_bridged_or_left_open(trace) -> None:
    found = trace_charge(*trace, INTERVAL_S, exclude=above_the_plan(trace))
    assert found.duplicate_count == 1
    assert found.bridged.magnitude == pytest.approx(8.86, abs=5e-3)
    assert found.known.magnitude == pytest.approx(8.44, abs=5e-3)
    assert (found.most - found.known).magnitude == pytest.approx(0.42, abs=5e-3)
    assert [gap.to_s - gap.from_s for gap in found.gaps] == [3600]


def test_trace_agrees_with_an_independent_trapezoid(trace) -> None:
    times, currents = trace
    found = trace_charge(times, currents, interval_s=3600)
    assert found.known.m_as("A*s") == pytest.approx(trapezoid(currents, times))


def test_twice_the_interval_is_no_gap_and_a_second_more_is() -> None:
    assert trace_charge([0, 120.4], [1.0, 1.0], interval_s=60).gaps == ()
    (gap,) = trace_charge([0, 121], [1.0, 2.0], interval_s=60).gaps
    assert gap.most_ah == pytest.approx(2.0 * 121 / 3600)


def test_samples_are_put_in_order() -> None:
    assert trace_charge([120, 0, 60], [3.0, 1.0, 2.0], interval_s=60).known.m_as("A*s") == pytest.approx(240)


def test_an_empty_trace_has_no_charge() -> None:
    assert trace_charge([], [], interval_s=60).known.magnitude == 0


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (([0, 1], [1.0], 60), "currents: give one current for each instant"),
        (([0, 1], [1.0, float("nan")], 60), "trace: holds values that are no numbers"),
        (([0, 1], [1.0, 1.0], 0), "interval: must be more than zero seconds"),
        (([0, 1], [1.0, 1.0], 60, [True]), "exclude: say for each sample"),
    ],
)
def test_a_faulty_trace_is_refused(arguments: Any, message: str) -> None:
    with pytest.raises(ChemistryError, match=message):
        trace_charge(*arguments)


def test_a_meter_set_back_is_refused() -> None:
    with pytest.raises(ChemistryError, match="reading after: is below the earlier reading"):
        meter_charge(ureg.Quantity(8.9, "A*h"), ureg.Quantity(0.1, "A*h"))


def test_gaps_are_longer_than_allowed_in_whole_seconds() -> None:
    """numpy's own rounding, half to even: 120.5 s is 120 and no gap, 121.5 s is 122."""
    spans = np.array([60.0, 120.49, 120.5, 121.5, 40.0])
    assert gaps_among(spans, 120.0).tolist() == [3]
    assert gaps_among(spans[:3], 120.0).tolist() == [] == gaps_among(np.empty(0), 120.0).tolist()
