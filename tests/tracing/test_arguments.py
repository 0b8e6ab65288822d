"""Each thing that the importer argues about, on small traces: what it says, where, and what a choice does."""

import numpy as np
import pytest

from process.tracing import Context, Samples, argue, evaluate

DAY = 1_772_409_600.0  # 2026-03-02T00:00Z


def trace(currents, start=DAY, step=60.0, times=None) -> Samples:
    at = start + np.arange(len(currents)) * step if times is None else DAY + np.asarray(times, float)
    return Samples(at, np.asarray(currents, float), 2)


def run(minutes=60.0, **more) -> Context:
    return Context(**{"planned_a": 1.0, "starts_s": DAY, "stops_s": DAY + minutes * 60} | more)


def found(samples, context, decisions=None):
    return {each.kind: each for each in argue(samples, context, decisions)[1]}


def charge(samples, context, **by_kind) -> float:
    decisions = {each.key: by_kind[each.kind] for each in argue(samples, context)[1] if each.kind in by_kind}
    case, findings = argue(samples, context, decisions)
    return evaluate(case, findings, decisions, context).charge_ah


def test_a_sound_trace_is_not_argued_with():
    assert found(trace([1.0] * 61), run()) == {}
    assert charge(trace([1.0] * 61), run()) == pytest.approx(1.0)


def test_a_clock_an_hour_slow_is_seen_and_put_right():
    late = trace([1.0] * 61, start=DAY - 3600)
    clock = found(late, run())["clock"]
    assert "1 h before the run" in clock.sentence
    assert charge(late, run(), clock="shift") == pytest.approx(1.0)
    assert charge(late, run(), clock="keep") == 0.0


def test_a_clock_of_another_year_misses_the_run():
    assert "does not meet it" in found(trace([1.0] * 31, start=DAY - 3 * 365 * 86400.0), run())["clock"].sentence


def test_samples_beyond_the_stop_are_not_of_this_run():
    long = trace([1.0] * 91)
    assert found(long, run())["outside"].count == 30
    assert charge(long, run()) == pytest.approx(1.0)
    assert charge(long, run(), outside="keep") == pytest.approx(1.5)


def test_a_reversal_has_a_net_and_an_absolute_charge():
    back = trace([1.0] * 31 + [-1.0] * 30)
    assert found(back, run())["reversed"].count == 30
    assert charge(back, run(), reversed="net") == pytest.approx(0.0, abs=0.02)
    assert charge(back, run(), reversed="absolute") == pytest.approx(1.0)


def test_two_currents_of_one_instant_are_asked_about():
    twice = trace([1.0, 1.0, 1.2, 1.0], times=[0, 60, 60, 120])
    conflict = found(twice, run())["conflict"]
    assert conflict.lines == (4,) and not conflict.default
    assert charge(twice, run(), conflict="first") == pytest.approx(2 / 60)
    assert charge(twice, run(), conflict="last") == pytest.approx(2.2 / 60)


def test_a_slip_downwards_is_seen_too():
    currents = [1.0] * 61
    currents[30] = 0.1
    spike = found(trace(currents), run())["spike"]
    assert "decimal slip of 1 A" in spike.sentence
    assert charge(trace(currents), run(), spike="mend") == pytest.approx(1.0)


def test_a_current_beside_next_to_nothing_is_no_slip():
    """A logger may write 1e-308 for nothing: the ratio of the two is no number."""
    assert "decimal slip" not in found(trace([0.0, 0.001, 4.0, 1e-308]), run())["spike"].sentence


def test_many_spikes_are_decided_together():
    currents = np.ones(400)
    currents[10::20] = 5.0
    assert [each.key for each in argue(trace(currents), run(400))[1]] == ["spikes"]


def test_a_minute_without_current_is_a_note_and_more_is_an_interruption():
    for zeros, said in ((1, []), (3, ["restart", "zero"])):
        currents = np.ones(601)
        currents[300 : 300 + zeros * 20] = 0.0
        assert sorted(found(trace(currents, step=3.0), run(30))) == said


def test_leaving_a_sample_out_may_open_a_gap_which_is_then_asked():
    currents = np.ones(61)
    currents[30:33] = 5.0
    (spike,) = argue(trace(currents), run())[1]
    after = found(trace(currents), run(), {spike.key: "exclude"})
    assert after["gap"].to_s - after["gap"].from_s == 240


def test_lines_out_of_order_are_sorted_and_told():
    samples = trace([1.0, 2.0, 1.0, 1.0], times=[0, 120, 60, 180])
    assert found(samples, run())["order"].lines == (4,)
    assert charge(samples, run(), spike="keep") == pytest.approx((1.0 + 1.5 + 1.5) / 60)
