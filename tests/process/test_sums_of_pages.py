"""Sums and lines drawn between rows and pages, each by hand: energy, coats, ± of a run that goes on, what is far."""

from datetime import date

import pytest

from process.models import FinishStep, PowerUnit, PriceList, Run
from process.summaries.analyses import analysis_summary
from process.summaries.charges import Beside
from process.summaries.copy_costs import grown_in
from process.summaries.copy_skin import depth_of
from process.summaries.costing import prices_for
from process.summaries.reckoned import reckon
from process.summaries.runs import summarise
from process.summaries.voltage import _meaning
from process.summaries.work_energy import energy_of
from records import clock
from tests.factories import make_analysis, make_bath, make_cathode, make_copy, make_mould, make_run, make_term
from tests.process.bath_campaign import typed
from tests.process.scenario_runs import at, event, reading, weighed

pytestmark = pytest.mark.django_db


def look(run: Run):
    return summarise(Run.objects.with_sheet().get(pk=run.pk))


def test_energy_is_each_voltage_times_the_charge_until_the_next():
    """1 A: 2 V for one hour, 4 V for three: 2 + 12 Wh, at 3.5 V on the mean of the charge."""
    run = make_run("D-2026-095")
    make_cathode(run)
    event(run, "2026-02-16 09:00", "entry", 1.0, voltage_v=2.0)
    reading(run, "2026-02-16 10:00", 1.0, voltage_v=4.0)
    reading(run, "2026-02-16 11:00", 1.0)  # nobody read the voltage: the last one holds
    event(run, "2026-02-16 13:00", "stop", 0)

    assert energy_of(look(run)).value == pytest.approx(0.014)


def test_the_doubt_of_a_charge_grows_while_the_run_goes_on():
    """0.01 A of one ammeter over three hours is 0.03 Ah, and 0.04 Ah an hour later."""
    run = make_run("D-2026-096")
    make_cathode(run)
    typed(event(run, "2026-02-16 09:00", "entry", 1.0), current_a=0.01)
    for hours, doubt in ((3, 0.03), (4, 0.04)):
        with clock.held_at(at(f"2026-02-16 {9 + hours}:00")):
            chosen = look(run).charge.chosen
        assert (chosen.value, chosen.plus_minus) == pytest.approx((hours, doubt))


def test_coats_of_silver_add_up():
    copy = make_copy("R.2026.9")
    silvered = make_term("finish", "silvered")
    for depth in (6, 4, None):
        FinishStep.objects.create(copy=copy, finish=silvered, thickness_um=depth, done_on=date(2026, 3, 27))

    assert depth_of(list(FinishStep.objects.all())).m_as("um") == pytest.approx(10)


@pytest.mark.parametrize(("percent", "far"), [(3.0, False), (3.01, True), (-3.0, False), (-3.01, True), (None, False)])
def test_two_evidences_more_than_three_per_cent_apart_are_looked_into(percent, far):
    """Trade guide 4.12: delivered against logger more than 3 %."""
    assert Beside("meter", "meter", None, percent, False).is_apart is far


@pytest.mark.parametrize(
    ("wagner", "said"), [(0.19, "Geometry rules"), (0.21, "share the rule"), (4.9, "share"), (5.1, "The reaction")]
)
def test_geometry_or_reaction_rules_by_the_number_of_wagner(wagner, said):
    assert said in _meaning(wagner)


@pytest.mark.parametrize(("off_pct", "far"), [(0.9, False), (1.1, True), (-0.9, False), (-1.1, True)])
def test_a_density_more_than_a_per_cent_off_its_composition_is_told(off_pct, far):
    """8.403 mL and 12.28 mL are 209.80 and 60.22 g/L: by the register's own line 0.998207 + 0.63·0.27002 g/cm³."""
    read = (0.998207 + 0.63 * 0.27002) * (1 + off_pct / 100)
    analysis = make_analysis(make_bath(), copper_titrant_ml=8.403, acid_titrant_ml=12.28, density_g_cm3=read)

    note = analysis_summary(analysis).density[1].note

    assert note.startswith("More than 1 %") is far


@pytest.mark.parametrize(("resolution_a", "state"), [(0.0119, "done"), (0.0121, "look")])
def test_a_step_of_more_than_a_twentieth_of_the_smallest_current_cannot_hold_it(resolution_a, state):
    """1 dm² at 0.24 A/dm²: 5 % are 0.012 A."""
    unit = PowerUnit.objects.create(number="PU-9", rated_a=50, rated_v=12, resolution_a=resolution_a)
    run = make_run("D-2026-097", power_unit=unit, planned_current_density_a_dm2=0.24)
    make_cathode(run, total_area_dm2=1.0, face_area_dm2=0.8)

    checks = reckon(Run.objects.with_sheet().get(pk=run.pk)).checks

    (found,) = (each for each in checks if "sets steps of" in each.sentence)
    assert found.state == state


def test_a_copy_bears_the_energy_of_its_own_shells_alone():
    """6 and 4 g grew with 14 Wh: the copy of the first shell bears 8.4 Wh."""
    run = make_run("D-2026-098")
    event(run, "2026-02-16 09:00", "entry", 1.0, voltage_v=3.5)
    event(run, "2026-02-16 13:00", "stop", 0)
    mine, _ = (
        weighed(make_cathode(run, label=label, mould=make_mould()), f"S-{label}", grams, grams - 1)
        for label, grams in (("one", 6.0), ("two", 4.0))
    )
    copy = make_copy("R.2026.8", shells=[mine], technique="uniface", afterwards=True)

    (part,) = grown_in(look(run), copy.making_up.pk)

    assert (part.mass_g, part.charge_ah, part.energy_kwh) == pytest.approx((6.0, 2.4, 0.0084))


def test_prices_hold_from_the_museum_s_own_midnight():
    """Half past midnight on 1 March in Berlin is still 28 February in UTC."""
    for day, wage in ((date(2026, 1, 1), 40), (date(2026, 3, 1), 42)):
        PriceList.objects.create(valid_from=day, labour_money_h=wage, metal_money_kg=16, energy_money_kwh=0.32)
    make_run("D-2026-099", planned_start_at=at("2026-03-01 00:30"))

    assert prices_for(Run.objects.get()).labour_money_h == 42


def test_on_a_rail_that_changed_the_shares_follow_the_chosen_charge():
    """1 A by the sheet, two hours alone and two beside a piece as large: 2 + 1 Ah; the meter counted twice as much."""
    run = make_run("D-2026-100", charge_from="meter")
    make_cathode(run, label="one", total_area_dm2=1.0, face_area_dm2=0.8)
    late = make_cathode(run, label="two", total_area_dm2=1.0, face_area_dm2=0.8)
    event(run, "2026-02-16 09:00", "entry", 1.0)
    event(run, "2026-02-16 11:00", "hung_in", 1.0, cathode=late)
    event(run, "2026-02-16 13:00", "stop", 0)
    reading(run, "2026-02-16 09:00", 1.0, meter_ah=0.0)
    reading(run, "2026-02-16 12:59", 1.0, meter_ah=8.0)

    assert [each.share.value for each in look(run).cathodes] == pytest.approx([6.0, 2.0])
