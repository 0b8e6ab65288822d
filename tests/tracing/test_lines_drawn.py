"""Where the importer draws its lines: just inside and just outside of each."""

import math

import numpy as np
import pytest

from process.tracing.errors import TraceRefused
from process.tracing.stamps import Unreadable, stamp
from tests.tracing.files import sampled, written
from tests.tracing.test_arguments import DAY, found, run, trace
from tests.tracing.test_charge_of_decisions import decided

HOUR_US = 3_600_000_000


@pytest.mark.parametrize(
    ("written", "hour"),
    [("12:30:00 AM", 0.5), ("1:00:00 AM", 1), ("11:59:60 AM", None), ("12:30:00 PM", 12.5), ("1:00:00 PM", 13),
     ("11:00:00 p.m.", 23), ("13:00:00 PM", None), ("0:30:00 AM", None)],
)  # fmt: skip
def test_noon_and_midnight_of_a_clock_of_twelve_hours(written, hour):
    if hour is None:
        with pytest.raises(Unreadable):
            stamp(f"3/2/1970 {written}", "mdy")
    else:
        assert stamp(f"1/1/1970 {written}", "mdy") == (hour * HOUR_US, None)


@pytest.mark.parametrize(("offset", "seconds"), [("-03:30", -12_600), ("+01:00", 3600), ("-05", -18_000), ("Z", 0)])
def test_an_offset_west_of_greenwich_is_less_than_nothing(offset, seconds):
    assert stamp(f"1970-01-01T00:00:00{offset}", "ymd") == (0, seconds)


def test_a_step_across_a_gap_is_no_moment_of_switching():
    """It is the gap that is asked about."""
    times = [*range(0, 601, 60), *range(3600, 4201, 60)]
    currents = [1.0] * 11 + [0.5] * 11
    assert decided(trace(currents, times=times), run(70), gap="open").switching_ah == 0


@pytest.mark.parametrize(("seconds", "interrupted"), [(60, False), (61, True)])
def test_a_minute_without_current_is_no_interruption_and_a_second_more_is(seconds, interrupted):
    times = [0, 10, 20, 20 + seconds, 30 + seconds, 40 + seconds]
    kinds = found(trace([1.0, 1.0, 0.0, 1.0, 1.0, 1.0], times=times), run())
    assert ("zero" in kinds) is interrupted


def test_the_charge_before_an_interruption_carries_the_doubt_of_its_moment():
    """1 A, last seen a minute before it was gone: a minute over √12 (JCGM 100:2008, 4.3.7)."""
    currents = [0.0 if 20 <= minute < 30 else 1.0 for minute in range(61)]
    (gone,) = decided(trace(currents), run(), zero="gone", restart="by hand").stretches
    assert gone.before_spread_ah == pytest.approx(1 / 60 / math.sqrt(12))


@pytest.mark.parametrize(("amperes", "suspected"), [(1.5, False), (1.51, True)])
def test_more_than_half_as_much_again_as_planned_is_suspected(amperes, suspected):
    currents = [1.0] * 61
    currents[30] = amperes
    assert ("spike" in found(trace(currents), run())) is suspected


@pytest.mark.parametrize(("amperes", "is_slip"), [(10.7, True), (10.9, False), (9.3, True), (9.1, False)])
def test_a_decimal_slip_lies_within_eight_per_cent_of_ten_times(amperes, is_slip):
    currents = [1.0] * 61
    currents[30] = amperes
    assert ("decimal slip" in found(trace(currents), run())["spike"].sentence) is is_slip


@pytest.mark.parametrize(("count", "is_slip"), [(5, True), (6, False)])
def test_six_samples_in_a_row_are_another_current_and_no_slip(count, is_slip):
    currents = [1.0] * 61
    currents[30 : 30 + count] = [10.0] * count
    assert ("decimal slip" in found(trace(currents), run())["spike"].sentence) is is_slip


@pytest.mark.parametrize(("early_s", "asked"), [(-590.0, False), (-610.0, True)])
def test_ten_minutes_are_the_least_that_a_clock_is_said_to_be_wrong(early_s, asked):
    """A sample every ten seconds, so that the length of an interval forgives nothing."""
    early = trace([1.0] * 361, start=DAY + early_s, step=10.0)
    assert ("clock" in found(early, run())) is asked


@pytest.mark.parametrize("minutes", [15, 45, 60, 330])
def test_a_wrong_zone_is_put_right_by_quarters_of_an_hour(minutes):
    late = trace([1.0] * 361, start=DAY + minutes * 60 + 20, step=10.0)
    assert found(late, run())["clock"].number == -minutes * 60


@pytest.mark.parametrize(("minutes", "told"), [(4, False), (6, True)])
def test_five_minutes_of_the_future_are_forgiven(minutes, told):
    """While the run goes on nothing but the present ends it."""
    context = run(stops_s=None, now_s=DAY + 3600)
    kinds = found(trace(np.ones(61 + minutes)), context)
    assert ("outside" in kinds) is told


@pytest.mark.parametrize(("unit", "seconds"), [("ms", 0.001), ("s", 1.0), ("min", 60.0), ("h", 3600.0)])
def test_a_time_since_the_start_is_read_in_its_unit(tmp_path, unit, seconds):
    lines = "".join(f"{count},1.0\n" for count in range(11))
    read_back = sampled(written(tmp_path, f"elapsed_{unit},current_A\n" + lines),
                        elapsed_unit=unit, starts_at="2026-03-02T00:00:00+00:00")  # fmt: skip
    assert read_back.times_s[-1] - read_back.times_s[0] == pytest.approx(10 * seconds)


@pytest.mark.parametrize(("misplaced", "refused"), [(3, False), (4, True)])
def test_one_line_in_a_hundred_may_stand_out_of_order(misplaced, refused):
    times = list(range(0, 300 * 60, 60))
    for place in range(10, 10 + 20 * misplaced, 20):
        times[place], times[place + 1] = times[place + 1], times[place]
    if refused:
        with pytest.raises(TraceRefused, match="4 times in all"):
            found(trace([1.0] * 300, times=times), run(300))
    else:
        assert found(trace([1.0] * 300, times=times), run(300))["order"].count == 3
