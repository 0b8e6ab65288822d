"""A rail whose cathodes change: segments, shares and their additivity (cases worked by hand)."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from process.chemistry.errors import ChemistryError
from process.chemistry.segments import (
    growth_deviation,
    is_uneven,
    mean_current_density,
    segments_of,
    share_over_segments,
)  # fmt: skip
from process.chemistry.shares import share_by_area
from records.units import ureg

HOUR = 3600.0


def ah(value: float):
    return ureg.Quantity(value, "A*h")


def dm2(value: float):
    return ureg.Quantity(value, "dm**2")


def test_a_rail_without_changes_is_one_segment():
    (only,) = segments_of([0, 2 * HOUR], [1.0, 0.0], 2 * HOUR, [(0, 2 * HOUR), (0, 2 * HOUR)])
    assert (only.present, only.charge_ah, only.energised_h) == ((0, 1), 2.0, 2.0)


def test_a_cathode_taken_out_cuts_the_run():
    found = segments_of([0, HOUR, 4 * HOUR], [1.2, 0.6, 0.0], 4 * HOUR, [(0, 4 * HOUR), (0, HOUR)])
    assert [(each.present, round(each.charge_ah, 6)) for each in found] == [((0, 1), 1.2), ((0,), 1.8)]


def test_shares_by_hand():
    """Two pieces of 0.4 dm² at 1.2 A for an hour, then one of them alone at 0.6 A for three: 2.4 and 0.6 Ah."""
    stays, areas = [(0, 4 * HOUR), (0, HOUR)], [dm2(0.4), dm2(0.4)]
    assert _shares([0, HOUR], [1.2, 0.6], 4 * HOUR, stays, areas) == pytest.approx([2.4, 0.6])


def _shares(times, currents, until, stays, areas) -> list[float]:
    found = segments_of(times, currents, until, stays)
    shares = []
    for index, area in enumerate(areas):
        mine = [each for each in found if index in each.present]
        wholes = [sum((areas[i] for i in each.present[1:]), start=areas[each.present[0]]) for each in mine]
        shares.append(share_over_segments(area, [ah(each.charge_ah) for each in mine], wholes).m if mine else 0.0)
    return shares


@given(
    currents=st.lists(st.floats(0, 20), min_size=2, max_size=6),
    leaves=st.lists(st.floats(0.1, 6), min_size=1, max_size=3),
    areas=st.lists(st.floats(0.05, 5), min_size=4, max_size=4),
)
def test_the_shares_of_all_pieces_are_the_charge_of_the_rail(currents, leaves, areas):
    """Charge is additive: nothing is lost and nothing counted twice, however the rail changes."""
    times = [index * HOUR for index in range(len(currents))]
    until = len(currents) * HOUR
    stays = [(0.0, until), *((0.0, min(hours * HOUR, until)) for hours in leaves)]
    shares = _shares(times, currents, until, stays, [dm2(each) for each in areas[: len(stays)]])
    assert sum(shares) == pytest.approx(sum(currents), rel=1e-9, abs=1e-9)


@given(st.floats(0, 20), st.floats(0.1, 10))
def test_segments_follow_one_another(current, leaves):
    found = segments_of([0.0, HOUR], [current, current], 10 * HOUR, [(0.0, 10 * HOUR), (0.0, leaves * HOUR)])
    assert all(one.to_s == other.from_s for one, other in pairwise(found))
    assert (found[0].from_s, found[-1].to_s) == (0.0, 10 * HOUR)


def test_one_segment_shares_like_a_plain_rail():
    plain = share_by_area(ah(36.85), dm2(0.402), [dm2(0.402), dm2(0.402)])
    assert share_over_segments(dm2(0.402), [ah(36.85)], [dm2(0.804)]).m == pytest.approx(plain.m)


def test_shares_need_an_area_for_each_segment():
    with pytest.raises(ChemistryError, match="areas"):
        share_over_segments(dm2(1), [ah(1), ah(2)], [dm2(1)])


def test_a_cathode_is_not_taken_out_before_it_was_hung_in():
    with pytest.raises(ChemistryError, match="stays"):
        segments_of([0], [1.0], HOUR, [(HOUR, 0)])


def test_nothing_written_has_no_segments():
    assert segments_of([], [], 0, []) == ()


def test_mean_density_leaves_out_the_hours_without_current():
    (only,) = segments_of([0, HOUR, 2 * HOUR], [1.2, 0.0, 1.2], 3 * HOUR, [(0, 3 * HOUR)])
    found = mean_current_density(ah(only.charge_ah), dm2(0.8), ureg.Quantity(only.energised_h, "h"))
    assert found.m == pytest.approx(1.5)


def off(masses_g, shares_ah):
    """Each piece against the mean, in per cent."""
    masses, shares = [ureg.Quantity(m, "g") for m in masses_g], [ah(q) for q in shares_ah]
    pairs = zip(masses, shares, strict=True)
    return [growth_deviation(m, q, masses, shares).m_as("pct") for m, q in pairs]


def test_a_piece_that_grew_too_little_is_found():
    """Masses 12, 12 and 9 g on equal areas: mean 11, the last one 18 % under it."""
    found = off((12, 12, 9), (1, 1, 1))
    assert [is_uneven(each / 100) for each in found] == [False, False, True]
    assert found[2] == pytest.approx((9 / 11 - 1) * 100)


def test_a_piece_that_hung_for_half_of_the_time_is_not_uneven_for_that():
    assert off((12, 6), (2, 1)) == pytest.approx([0, 0])


def test_what_all_pieces_share_is_no_doubt_of_their_difference():
    """10 % on the charge of the rail cancels out; 1 g on each of two masses of 10 g leaves 7.07 % (by hand).

    x = 2·m₁/(m₁ + m₂) − 1, so ∂x/∂m₁ = 2·m₂/(m₁ + m₂)² = 0.05 per gram, and as much for m₂: √2·0.05.
    """
    half = ureg.Quantity(ufloat(10, 1), "A*h") / 2
    masses = [ureg.Quantity(ufloat(10, 1), "g"), ureg.Quantity(ufloat(10, 1), "g")]
    doubtful = growth_deviation(masses[0], half, masses, [half, half]).m_as("pct")
    exact = growth_deviation(ureg.Quantity(11, "g"), half, [ureg.Quantity(11, "g"), ureg.Quantity(9, "g")], [half] * 2)
    assert doubtful.std_dev == pytest.approx(math.sqrt(2) * 5)
    assert exact.m_as("pct").std_dev == pytest.approx(0, abs=1e-9)


def test_a_deviation_needs_a_share_for_each_mass():
    with pytest.raises(ChemistryError, match="charges"):
        growth_deviation(ureg.Quantity(12, "g"), ah(1), [ureg.Quantity(12, "g")] * 2, [ah(1)])
