"""Planning: areas, ramps, finish and anodes (examples worked by hand; formulas are definitions)."""

import math
from datetime import UTC, datetime, timedelta, timezone

import pytest

from process.chemistry.anodes import anode_need
from process.chemistry.errors import ChemistryError
from process.chemistry.metals import ion
from process.chemistry.plan import (
    Step,
    cathode_area,
    finish_instant,
    plan_deposit,
    relief_disc_area,
    remaining_time,
    time_with_ramp,
)
from records.units import ureg

Q = ureg.Quantity
COPPER = ion("Cu2+")
RAMP = (Step(Q(0.24, "A"), Q(2, "h")), Step(Q(0.64, "A"), Q(2, "h")))


def test_area_of_a_relief_disc() -> None:
    assert relief_disc_area(Q(2, "dm")).magnitude == pytest.approx(math.pi)
    assert relief_disc_area(Q(58.4, "mm"), 1.08).m_as("cm**2") == pytest.approx(28.9, abs=0.05)


def test_cathode_area_adds_unlike_units() -> None:
    assert cathode_area([Q(40.2, "cm**2"), Q(0.402, "dm**2")]).m_as("dm**2") == pytest.approx(0.804)


def test_a_ramp_lengthens_the_run() -> None:
    time = time_with_ramp(Q(10, "A*h"), Q(2, "A"), Q(2, "h"), Q(2, "A*h"))
    assert time.m_as("h") == pytest.approx(6.0)


def test_a_ramp_that_exceeds_the_plan_is_refused() -> None:
    with pytest.raises(ChemistryError, match="ramp: the steps alone exceed the planned charge"):
        time_with_ramp(Q(1, "A*h"), Q(2, "A"), Q(2, "h"), Q(2, "A*h"))


def test_plan_with_ramp_as_the_medal_was_run() -> None:
    plan = plan_deposit(
        COPPER, area=Q(0.804, "dm**2"), thickness=Q(0.6, "mm"), density=Q(1.5, "A/dm**2"),
        efficiency=0.985, ramp=RAMP,
    )  # fmt: skip
    assert plan.ramp_charge.magnitude == pytest.approx(1.76)
    assert plan.time.magnitude == pytest.approx(4 + (36.85 - 1.76) / 1.206, abs=0.01)
    start = datetime(2026, 2, 16, 8, 0, tzinfo=UTC)
    assert plan.finish(start) == start + timedelta(hours=plan.time.magnitude)


def test_finish_is_counted_in_elapsed_time_and_given_in_utc() -> None:
    start = datetime(2026, 2, 16, 9, 0, tzinfo=timezone(timedelta(hours=1)))
    assert finish_instant(start, Q(33, "h")) == datetime(2026, 2, 17, 17, 0, tzinfo=UTC)


def test_finish_needs_a_time_zone_and_a_duration() -> None:
    with pytest.raises(ChemistryError, match="start: has no time zone"):
        finish_instant(datetime(2026, 2, 16, 9, 0), Q(33, "h"))
    with pytest.raises(ChemistryError, match="duration: cannot be negative"):
        finish_instant(datetime(2026, 2, 16, 9, 0, tzinfo=UTC), Q(-1, "h"))


def test_remaining_time_turns_negative_once_the_plan_is_exceeded() -> None:
    assert remaining_time(Q(10, "A*h"), Q(11, "A*h"), Q(2, "A")).m_as("h") == pytest.approx(-0.5)
    with pytest.raises(ChemistryError, match="current: must be more than zero"):
        remaining_time(Q(10, "A*h"), Q(5, "A*h"), Q(0, "A"))


def test_anodes_hold_three_times_the_deposit() -> None:
    assert anode_need(Q(43.03, "g")).magnitude == pytest.approx(129.09)  # common practice, from memory
