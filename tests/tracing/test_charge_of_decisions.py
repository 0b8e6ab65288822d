"""What a decision leaves of the charge: in the sum, in the charge before an interruption, and in its ±."""

import math

import numpy as np
import pytest

from process.tracing import argue, evaluate
from process.tracing.stamps import Unreadable, duration
from tests.tracing.test_arguments import DAY, run, trace

HOLED = [*range(31), *range(60, 121)]  # minutes with a sample: half an hour is missing


def decided(samples, context, cuts=(), **by_kind):
    first = argue(samples, context, cuts=cuts)[1]
    decisions = {each.key: by_kind[each.kind] for each in first if each.kind in by_kind}
    case, findings = argue(samples, context, decisions, cuts=cuts)
    return evaluate(case, findings, decisions, context, cuts)


def with_a_gap_and_an_outage():
    """1 A; no sample from minute 30 to 60; no current from minute 90 to 100."""
    currents = [0.0 if 90 <= minute <= 100 else 1.0 for minute in HOLED]
    return trace(currents, times=[minute * 60 for minute in HOLED])


@pytest.mark.parametrize(("choice", "gap_ah"), [("bridge", 0.5), ("open", 0.0), ("nothing", 0.0)])
def test_what_is_decided_of_a_gap_holds_for_the_charge_before_an_interruption_too(choice, gap_ah):
    found = decided(with_a_gap_and_an_outage(), run(120), gap=choice, zero="gone", restart="by hand")
    before = (30 + 29.5) / 60 + gap_ah
    assert found.stretches[0].charge_before_ah == pytest.approx(before)
    assert found.charge_ah == pytest.approx(before + 19.5 / 60)


def test_what_another_trace_counts_is_not_before_an_interruption_of_this_one():
    samples = trace([0.0 if 90 <= minute <= 100 else 1.0 for minute in range(121)])
    found = decided(samples, run(120), cuts=[(DAY + 600, DAY + 1800)], zero="gone", restart="by hand")
    assert found.stretches[0].charge_before_ah == pytest.approx((10 + 59.5) / 60)


def test_the_effect_of_a_choice_is_told_of_what_this_trace_counts():
    """Where another trace rules the first half, every choice is told with the rest alone."""
    currents = np.ones(121)
    currents[90] = 0.1
    cuts = [(DAY - 60, DAY + 3600)]
    (spike,) = argue(trace(currents), run(120), cuts=cuts)[1]
    assert {choice.key: choice.charge_ah for choice in spike.choices} == {
        "exclude": 1.0, "mend": 1.0, "keep": pytest.approx(1 - 0.9 / 60),
    }  # fmt: skip


def test_of_three_lines_of_one_instant_the_last_alone_counts():
    thrice = trace([1.0, 1.0, 1.0, 2.0, 2.0], times=[0, 60, 60, 60, 120])
    found = decided(thrice, run(), conflict="last", spike="keep")
    assert found.sample_count == 3 and found.charge_ah == pytest.approx((1.5 + 2.0) / 60)


def test_a_gap_in_a_reversed_stretch_is_as_wide_as_its_current():
    """Metal may have dissolved all the while: the bounds are not below nothing."""
    currents = [1.0 if minute < 20 else -0.5 for minute in HOLED]
    found = decided(trace(currents, times=[minute * 60 for minute in HOLED]), run(120), reversed="net", gap="open")
    assert found.open_ah == pytest.approx(0.25)


def test_switching_between_samples_is_a_standard_uncertainty():
    """JCGM 100:2008, 4.3.7: anywhere within ±a alike is a/√3; several switchings add up by their squares.

    1 A goes and comes between samples a minute apart, twice: a = 1 A × 1 min / 2 each time.
    """
    currents = [0.0 if 20 <= minute < 30 else 1.0 for minute in range(61)]
    found = decided(trace(currents), run(), zero="gone", restart="by hand")
    assert found.switching_ah == pytest.approx(math.sqrt(2) * (1 / 60 / 2) / math.sqrt(3))
    exact = 50 / 60  # switched off at 20 min and on at 30 min, a minute late and early at the most
    assert abs(found.charge_ah - exact) <= 2 * found.switching_ah


def test_switching_moments_at_random_scatter_as_the_figure_says():
    """1,000 runs switched off and on at random, sampled every ten minutes: the scatter is the ± (fixed numbers)."""
    draw, errors = np.random.default_rng(1624), []
    times = np.arange(0, 6 * 3600 + 1, 600.0)
    for _ in range(1000):
        off, on = draw.uniform(3600, 7200), draw.uniform(10800, 14400)
        currents = np.where((times >= off) & (times < on), 0.0, 1.0)
        found = decided(trace(currents, times=times), run(360), zero="gone", restart="by hand")
        errors.append(found.charge_ah - (6 * 3600 - (on - off)) / 3600)
    assert np.std(errors) == pytest.approx(found.switching_ah, rel=0.1)


def test_a_time_that_no_clock_counts_is_no_time():
    assert duration("26:20:00") == 94_800
    for wrong in ("26:75:00", "26:20:61"):
        with pytest.raises(Unreadable):
            duration(wrong)
