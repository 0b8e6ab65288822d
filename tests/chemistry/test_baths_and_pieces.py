"""Bath figures, limits, shares of a rail, and the judgement of results."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from process.chemistry.additions import at_the_mark, mass_to_add, volume_to_replace
from process.chemistry.baths import charge_per_litre
from process.chemistry.deposit import MINIMUM_SHARES, estimated_minimum
from process.chemistry.dimensions import deviation
from process.chemistry.errors import ChemistryError
from process.chemistry.judgement import Band, Weighing, has_settled, judge_efficiency
from process.chemistry.limits import Limits, Verdict, verdict
from process.chemistry.shares import share_by_area
from process.chemistry.solutions import chloride_found
from records.units import ureg

Q = ureg.Quantity
SALT = Limits("g/L", 210, 190, 230, 170, 260)
DAY = datetime(2026, 3, 30, 9, 0, tzinfo=UTC)


def weighings(*days_g: tuple[float, float]) -> list[Weighing]:
    return [Weighing(DAY + timedelta(days=day), Q(grams, "g")) for day, grams in days_g]


def test_chloride_by_silver_nitrate() -> None:
    found = chloride_found(Q(1.0, "mL"), Q(0.1, "mol/L"), Q(100, "mL"))
    assert found.m_as("mg/L") == pytest.approx(35.45)  # 35.45 g/mol × 0.1 mmol in 100 mL


def test_additions_only_go_upwards_and_dilutions_downwards() -> None:
    low, high, bath = Q(200, "g/L"), Q(210, "g/L"), Q(60, "L")
    assert mass_to_add(high, low, bath).m_as("g") == pytest.approx(600)
    assert volume_to_replace(Q(250, "g/L"), low, Q(100, "L")).m_as("L") == pytest.approx(20)
    with pytest.raises(ChemistryError, match="found: is above the target already"):
        mass_to_add(low, high, bath)
    with pytest.raises(ChemistryError, match="found: is below the target already"):
        volume_to_replace(low, high, bath)


def test_evaporation_is_allowed_for() -> None:
    assert at_the_mark(Q(220, "g/L"), Q(57, "L"), Q(60, "L")).magnitude == pytest.approx(209)


@pytest.mark.parametrize(
    ("grams", "expected"),
    [(169.9, Verdict.STOP), (170, Verdict.WARNING), (189.9, Verdict.WARNING), (190, Verdict.IN_LIMITS),
     (230, Verdict.IN_LIMITS), (230.1, Verdict.WARNING), (260, Verdict.WARNING), (2034, Verdict.STOP)],
)  # fmt: skip
def test_verdict_at_and_beside_each_limit(grams: float, expected: Verdict) -> None:
    assert verdict(Q(grams, "g/L"), SALT) is expected


def test_verdict_with_one_open_side_and_another_unit() -> None:
    chloride = Limits("mg/L", warn_above=80)
    assert verdict(Q(0.035, "g/L"), chloride) is Verdict.IN_LIMITS
    assert verdict(Q(0.090, "g/L"), chloride) is Verdict.WARNING


@pytest.mark.parametrize("found", [Q(210, "g"), Q(float("nan"), "g/L")])
def test_a_verdict_needs_a_figure_of_the_same_kind(found: Any) -> None:
    with pytest.raises(ChemistryError, match="found: "):
        verdict(found, SALT)


def test_ledger_per_litre() -> None:
    assert charge_per_litre(Q(640, "A*h"), Q(60, "L")).m_as("A*h/L") == pytest.approx(10.67, abs=5e-3)


def test_share_by_area() -> None:
    areas = [Q(28.9, "cm**2"), Q(0.578, "dm**2")]
    assert share_by_area(Q(9, "A*h"), areas[0], areas).m_as("A*h") == pytest.approx(3)


def test_an_unmeasured_minimum_is_a_range() -> None:
    low, high = (estimated_minimum(Q(0.5, "mm"), share).magnitude for share in MINIMUM_SHARES)
    assert (low, high) == pytest.approx((0.15, 0.30))


def test_deviation_from_the_prediction() -> None:
    assert deviation(Q(168.7, "mm"), Q(168.634, "mm")).m_as("pct") == pytest.approx(0.04, abs=5e-3)


@pytest.mark.parametrize(
    ("value", "band"),
    [(0.799, Band.REJECT), (0.80, Band.LOW), (0.949, Band.LOW), (0.95, Band.USUAL), (1.005, Band.USUAL),
     (1.006, Band.DOUBTFUL), (1.01, Band.DOUBTFUL), (1.011, Band.IMPOSSIBLE), (0.0, Band.REJECT)],
)  # fmt: skip
def test_bands_of_efficiency(value: float, band: Band) -> None:
    assert judge_efficiency(value) is band
    assert judge_efficiency(Q(value * 100, "pct")) is band


def test_a_core_over_100_per_cent_has_absorbed_until_it_settles() -> None:
    drying = weighings((0, 1512.0), (4, 1509.7))
    settled = weighings((0, 1507.3), (7, 1507.2))
    assert judge_efficiency(1.003, on_core=True, weighings=drying) is Band.ABSORBED
    assert judge_efficiency(1.003, on_core=True, weighings=settled) is Band.USUAL
    assert judge_efficiency(0.99, on_core=True) is Band.USUAL


def test_settling_needs_seven_days_and_two_in_ten_thousand() -> None:
    assert has_settled(weighings((0, 1000.2), (7, 1000.0)))
    assert not has_settled(weighings((0, 1000.0), (6.9, 1000.0)))
    assert not has_settled(weighings((0, 1000.0), (7, 999.7)))
    assert not has_settled(weighings((0, 1000.0), (7, 1000.0), (8, 1005.0)))


def test_weighings_need_their_offset() -> None:
    with pytest.raises(ChemistryError, match="weighings: need instants with their offset"):
        has_settled([Weighing(datetime(2026, 3, 30), Q(1, "g"))])
