"""What stands behind a plan: bath load, anodes, the thinnest place, and the cost."""

from datetime import UTC, date, datetime

import pytest

from process.models import FactorSource, PriceList, RampStep, Run, ThrowTest
from process.reports.runs import facts
from process.summaries.reckoned import reckon
from process.summaries.runs import summarise
from records.models import Specification
from tests.factories import make_bath, make_cathode, make_commission, make_item, make_run

pytestmark = pytest.mark.django_db

AT = datetime(2026, 3, 28, 17, 0, tzinfo=UTC)  # 18:00 by the museum's clock


@pytest.fixture
def medal():
    run = make_run(planned_current_density_a_dm2=1.5, planned_thickness_mm=0.6, planned_efficiency_pct=98.5)
    make_cathode(run, label="obverse")
    make_cathode(run, label="reverse")
    return run


def sheet(run: Run) -> Run:
    return Run.objects.with_sheet().get(pk=run.pk)


def test_a_small_bath_and_small_anodes_are_told():
    run = make_run(bath=make_bath(volume_l=1.0), anode_mass_g=100, anode_area_dm2=0.5)
    make_cathode(run)
    make_cathode(run)

    words = " ".join(check.sentence for check in reckon(sheet(run)).checks if check.state == "look")

    assert "more than about 1 A/L" in words
    assert "Hang more" in words and "They may passivate" in words


def specified(run: Run, least: float) -> None:
    item = make_item()
    run.commission = make_commission(originals=[item])
    run.save()
    Specification.objects.create(
        commission=run.commission, item=item, technique="hollow", thickness_mean_mm=0.6, thickness_min_mm=least
    )


def test_a_minimum_that_falls_below_the_specification_names_the_mean_it_takes(medal):
    specified(medal, 0.35)
    medal.distribution_factor = 0.5
    medal.save()

    found = reckon(sheet(medal))
    sentence = next(check for check in found.checks if "thinnest place" in check.sentence)

    assert found.details.evenness.minimum.value == pytest.approx(0.3)
    assert sentence.state == "look"
    assert "Plan a mean of 0.70\u2009mm" in sentence.sentence and medal.commission.number in sentence.sentence


def test_without_a_stated_share_the_rule_of_thumb_is_a_range(medal):
    specified(medal, 0.20)

    even = reckon(sheet(medal)).details.evenness

    assert (even.minimum.kind, even.factor.kind) == ("estimated", "estimated")
    assert even.minimum.value == pytest.approx(0.27) and even.minimum.plus_minus == pytest.approx(0.09)


def test_a_throw_test_of_the_bath_gives_the_share(medal):
    medal.distribution_source, medal.nearest_mm, medal.farthest_mm = FactorSource.MEASURED, 120, 150
    medal.save()
    assert "has no throw test yet" in reckon(sheet(medal)).details.evenness.factor.note

    ThrowTest.objects.create(bath=medal.bath, tested_on=date(2026, 2, 10), near_gain_g=3.5, far_gain_g=1.0)
    even = reckon(sheet(medal)).details.evenness

    # K = 5, M = 3.5: Field 23.08 %; at 1.25 times the distance M = 1.156, the thinner half 0.928 of the mean.
    assert even.factor.value == pytest.approx(92.76, abs=0.01)
    assert even.minimum.kind == "calculated" and even.minimum.working


def test_cost_is_reckoned_from_the_prices_that_held(medal):
    for day, rate in ((date(2025, 1, 1), 30.0), (date(2026, 1, 1), 40.0), (date(2026, 12, 1), 90.0)):
        PriceList.objects.create(
            valid_from=day, labour_money_h=rate, metal_money_kg=14, energy_money_kwh=0.3, bath_money=600, failure_pct=20
        )
    medal.planned_start_at, medal.attended_h, medal.planned_voltage_v = AT, 2.0, 0.8
    medal.save()

    cost = reckon(sheet(medal)).details.costing

    assert cost.prices.labour_money_h == 40.0
    by_hand = (80 + 0.04303 * 14 + 0.8 * 36.85 / 1000 * 0.3 + 600 * 36.85 / 6000) * 1.25
    assert cost.total.value == pytest.approx(by_hand, rel=1e-3)
    assert cost.lacking == ""


def test_the_process_report_tells_the_ramp_as_it_was_planned(medal):
    for order, (amperes, hours) in enumerate(((0.24, 2.0), (0.64, 2.0), (1.21, None)), start=1):
        RampStep.objects.create(run=medal, order_count=order, current_a=amperes, time_h=hours)

    told = {fact.label: fact.value for fact in facts(summarise(sheet(medal)))}

    assert told["Ramp, planned"].replace("\u2009", " ") == "0.24 A for 2.0 h, 0.64 A for 2.0 h, then 1.21 A"
