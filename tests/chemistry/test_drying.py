"""A core that drank: every figure of the demo's drying curve, and what holds for any series."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from process.chemistry.drying import (
    agreement_within,
    apparent_efficiency,
    gain_over,
    ready_mass,
    residue,
    settled_since,
    settles_at_the_earliest,
    uptake,
)  # fmt: skip
from process.chemistry.errors import ChemistryError
from process.chemistry.judgement import SETTLED_SPAN, Weighing, has_settled, is_dry
from process.chemistry.metals import ion
from records.units import ureg

Q = ureg.Quantity
COPPER = ion("Cu2+")
START = datetime(2026, 3, 30, 8, tzinfo=UTC)
# Invented scenario, section 7.6: mass, gain and apparent efficiency at each weighing.
CURVE = [(0, 1512.0, 199.6, 103.0), (4, 1509.7, 197.3, 101.8), (8, 1508.3, 195.9, 101.1),
         (13, 1507.3, 194.9, 100.6), (17, 1507.2, 194.8, 100.5)]  # fmt: skip


def series(*days_g: tuple[float, float]) -> list[Weighing]:
    return [Weighing(START + timedelta(days=day), Q(grams, "g")) for day, grams in days_g]


def test_the_core_before_the_bath():
    assert uptake(Q(1138.0, "g"), Q(1290.8, "g")).m_as("pct") == pytest.approx(13.4, abs=0.05)
    assert uptake(Q(1290.8, "g"), Q(1291.7, "g")).m_as("pct") == pytest.approx(0.07, abs=0.005)
    assert ready_mass(Q(1290.8, "g"), Q(21.6, "g")).m == pytest.approx(1312.4)


@pytest.mark.parametrize(("mass_g", "gain_g", "percent"), [row[1:] for row in CURVE])
def test_each_weighing_of_the_curve(mass_g, gain_g, percent):
    gain = gain_over(Q(mass_g, "g"), Q(1312.4, "g"))

    assert gain.m == pytest.approx(gain_g, abs=0.05)
    assert apparent_efficiency(COPPER, gain, Q(163.5, "A*h")).m_as("pct") == pytest.approx(percent, abs=0.05)


def test_what_stayed_inside_if_the_deposit_is_taken_at_99_percent():
    assert residue(COPPER, Q(194.8, "g"), Q(163.5, "A*h"), 0.99).m == pytest.approx(2.9, abs=0.05)


def test_four_days_are_no_week():
    """1507.3 and 1507.2 g agree within 0.02 %, but lie four days apart: closed too early."""
    weighings = series(*((day, grams) for day, grams, *_ in CURVE))

    assert settled_since(weighings) is None
    assert settles_at_the_earliest(weighings) == START + timedelta(days=13) + SETTLED_SPAN
    assert agreement_within(Q(1507.2, "g")).m == pytest.approx(0.30, abs=0.005)


def test_a_week_later_it_would_have_been_known():
    weighings = series((13, 1507.3), (17, 1507.2), (20, 1507.1))

    assert settled_since(weighings) == weighings[0]


def test_one_weighing_proves_nothing():
    assert settled_since(series((0, 1507.2))) is None
    assert settles_at_the_earliest(series((0, 1507.2))) == START + SETTLED_SPAN


def test_instants_without_a_zone_are_refused():
    naive = Weighing(datetime(2026, 4, 16), Q(1507.2, "g"))
    with pytest.raises(ChemistryError, match="offset"):
        settled_since([naive])


SERIES = st.lists(
    st.tuples(st.floats(0, 60), st.floats(1500, 1501)).map(lambda each: (round(each[0], 2), round(each[1], 2))),
    min_size=1, max_size=8, unique_by=lambda each: each[0],
)  # fmt: skip


@given(SERIES)
def test_settled_since_and_has_settled_say_the_same_whatever_the_order(days_g):
    weighings = series(*days_g)

    assert (settled_since(weighings) is not None) == has_settled(weighings)
    assert has_settled(weighings) == has_settled(list(reversed(weighings)))


@given(st.floats(1, 5000), st.floats(0, 5000), st.floats(0.1, 1000), st.floats(0.5, 1))
def test_residue_vanishes_where_the_gain_is_the_metal(ready_g, gain_g, charge_ah, efficiency):
    mass = Q(ready_g + gain_g, "g")
    gain = gain_over(mass, Q(ready_g, "g"))
    apparent = apparent_efficiency(COPPER, gain, Q(charge_ah, "A*h"))
    left = residue(COPPER, gain, Q(charge_ah, "A*h"), efficiency)

    expected = (apparent.m_as("") - efficiency) * COPPER.equivalent.m_as("g/(A*h)") * charge_ah
    assert left.m == pytest.approx(expected, abs=1e-6 * max(1, ready_g + gain_g))


@pytest.mark.parametrize(("hours", "last_g", "dry"), [(24, 1137.1, True), (24, 1136.9, False), (23, 1138.2, False)])
def test_a_core_is_dry_when_a_day_changes_it_by_less_than_a_thousandth(hours, last_g, dry):
    """EN ISO 12570: constant mass is a change of less than 0.1 % in 24 h (from memory)."""
    begin = datetime(2026, 3, 25, 9, tzinfo=UTC)
    weighings = [
        Weighing(begin, Q(1138.2, "g")), Weighing(begin + timedelta(hours=hours), Q(last_g, "g"))
    ]  # fmt: skip

    assert is_dry(weighings) is dry


def test_what_agrees_with_a_weighing_of_long_ago_may_be_settled_by_the_next_at_once():
    """Weighed on days 0 and 5 alike, on day 6 lighter, on day 20 as at first: 7 days after day 0 are long past."""
    weighings = series((0, 1500.0), (5, 1500.0), (6, 1490.0), (20, 1500.0))
    assert settles_at_the_earliest(weighings) == START + timedelta(days=20)
