"""What must hold for every trace: parts add up, order does not matter, units only scale; numpy as the outside judge."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from process.tracing import Context, Samples, argue, evaluate, reduce
from process.tracing.case import case_of
from process.tracing.evaluate import Evaluation

CURRENTS = st.lists(st.floats(0.0, 20.0, allow_subnormal=False), min_size=3, max_size=60)


def whole(times, currents, decisions=None, cuts=()) -> Evaluation:
    samples = Samples(np.asarray(times, float), np.asarray(currents, float), 2)
    case, findings = argue(samples, Context(), decisions or {}, cuts=cuts)
    kept = {each.key: "keep" for each in findings if each.kind == "spike"} | (decisions or {})
    return evaluate(case, findings, kept, cuts=cuts)


@given(CURRENTS, st.floats(0.01, 0.99))
@settings(max_examples=80, deadline=None)
def test_the_parts_of_a_split_trace_add_up(currents, share):
    times = np.arange(len(currents)) * 60.0
    edge = share * times[-1]
    before, after = whole(times, currents, cuts=[(edge, 1e12)]), whole(times, currents, cuts=[(-1e12, edge)])
    assert before.known_ah + after.known_ah == pytest.approx(whole(times, currents).known_ah, rel=1e-9, abs=1e-12)


@given(CURRENTS, st.randoms(use_true_random=False))
@settings(max_examples=80, deadline=None)
def test_the_order_of_the_rows_does_not_matter(currents, random):
    places = list(range(len(currents)))
    random.shuffle(places)
    mixed = Samples(np.array(places) * 60.0, np.array([currents[i] for i in places]), 2)
    found = evaluate(case_of(mixed), [], {})
    assert found.known_ah == pytest.approx(whole(np.arange(len(currents)) * 60.0, currents).known_ah, rel=1e-9)


@given(CURRENTS, st.sampled_from([0.001, 10.0, 1000.0]))
@settings(max_examples=80, deadline=None)
def test_a_change_of_unit_only_scales(currents, factor):
    times = np.arange(len(currents)) * 60.0
    scaled = whole(times, np.array(currents) * factor).known_ah
    assert scaled == pytest.approx(whole(times, currents).known_ah * factor, rel=1e-9, abs=1e-12)


@given(CURRENTS)
@settings(max_examples=80, deadline=None)
def test_it_is_the_trapezoid_of_numpy(currents):
    times = np.arange(len(currents)) * 60.0
    assert whole(times, currents).known_ah == pytest.approx(
        float(np.trapezoid(currents, times)) / 3600, rel=1e-9, abs=1e-12
    )


@given(CURRENTS.filter(lambda currents: len(currents) > 4))
@settings(max_examples=40, deadline=None)
def test_a_longer_silence_gives_bounds_that_hold_the_bridge(currents):
    times = np.arange(len(currents)) * 60.0
    times[len(currents) // 2 :] += 600
    found = whole(times, currents)
    bridged = sum(gap.bridged_ah for gap in found.gaps)
    assert len(found.gaps) == 1 and -1e-12 <= bridged <= found.open_ah + 1e-12


def test_a_long_trace_is_drawn_with_two_thousand_points_and_keeps_its_peaks():
    currents = np.full(1_000_000, 0.42)
    currents[123_456], currents[654_321] = 4.2, 0.0
    points = reduce(np.arange(1_000_000.0), currents, 2.0)
    values = [value for _, value in points]
    assert len(points) == 2000 and max(values) == 4.2 and min(values) == 0.0
    assert [at for at, _ in points] == sorted(at for at, _ in points)
