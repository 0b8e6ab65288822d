"""Figures of whole runs, from rows to page.

Expectations are those of the demo scenario, computed there with k = 1.185494 g/Ah (CODATA 2018 Faraday constant,
IUPAC atomic weight of copper) and ρ = 8.92 g/cm³; the oracle table is SCENARIO.md 11.
"""

from datetime import timedelta

import pytest

from process.chemistry.judgement import Band
from process.models import Run
from process.summaries.charts import run_chart
from process.summaries.runs import summarise
from records import clock
from tests.factories import make_cathode, make_run
from tests.process.scenario_runs import at, coin_run, event, failed_run, mask_run, medal_run, reading

pytestmark = pytest.mark.django_db


def look(run: Run, when: str = "2026-05-01 12:00"):
    """The summary as a page would show it at that local time."""
    with clock.held_at(at(when)):
        return summarise(Run.objects.with_sheet().get(pk=run.pk))


def test_plan_of_the_medal():
    plan = look(medal_run()).plan

    assert plan.charge.value == pytest.approx(36.85, abs=0.005)
    assert plan.current.value == pytest.approx(1.206, abs=0.0005)
    assert plan.time.value == pytest.approx(30.56, abs=0.005)
    assert plan.mass.value == pytest.approx(43.03, abs=0.005)


def test_medal_run_delivered_what_was_planned_and_the_balance_agrees():
    summary = look(medal_run())

    assert summary.charge.chosen.value == pytest.approx(36.850, abs=0.0005)
    assert summary.theory.value == pytest.approx(43.685, abs=0.001)
    assert summary.result.efficiency.value == pytest.approx(98.8, abs=0.05)
    assert summary.result.band == Band.USUAL
    assert summary.standing.code == "stopped"
    assert summary.elapsed.value == 33.0


def test_medal_shells_by_mass_thickness_face_and_rim():
    obverse, reverse = look(medal_run()).cathodes

    assert obverse.share.value == pytest.approx(18.82, abs=0.005)
    assert reverse.share.value == pytest.approx(18.03, abs=0.005)
    assert obverse.thickness.value == pytest.approx(0.6149, abs=0.00005)
    assert obverse.rate.value == pytest.approx(614.92 / 33, abs=0.005)  # µm in 33 h with current
    assert obverse.face.value == pytest.approx(0.5858, abs=0.00005)
    assert obverse.edge.value == pytest.approx(117.7, abs=0.05)


def test_least_thickness_is_measured_only_where_points_were_measured():
    obverse, reverse = look(medal_run()).cathodes

    assert (obverse.minimum.value, obverse.minimum.kind) == (0.33, "measured")
    assert reverse.minimum.kind == "estimated"
    assert obverse.thickness.kind == "calculated"


def test_failed_run_has_seven_ampere_hours_and_three_quarters_efficiency():
    summary = look(failed_run())

    assert summary.charge.chosen.value == pytest.approx(7.867, abs=0.0005)
    assert summary.theory.value == pytest.approx(9.326, abs=0.001)
    assert summary.result.efficiency.value == pytest.approx(74.0, abs=0.05)
    assert summary.result.band == Band.REJECT


def test_coin_run_was_cut_and_came_back_by_itself():
    summary = look(coin_run())

    first, second = summary.interruptions
    assert summary.charge.chosen.value == pytest.approx(8.940, abs=0.0005)
    assert summary.theory.value == pytest.approx(10.598, abs=0.001)
    assert summary.result.efficiency.value == pytest.approx(98.5, abs=0.05)
    assert summary.elapsed.value == 27.0
    assert summary.energised.value == pytest.approx(23 + 25 / 60)
    assert first.hours == pytest.approx(3 + 10 / 60)
    assert first.charge_before_ah == pytest.approx(3.92)
    assert first.depths[0].value == pytest.approx(0.185, abs=0.0005)
    assert "the current came back by itself" in first.words
    assert second.depths[0].value == pytest.approx(0.241, abs=0.0005)


def test_plan_of_the_coin():
    assert look(coin_run()).plan.charge.value == pytest.approx(8.938, abs=0.0005)


def test_clock_change_adds_no_hour():
    summary = look(mask_run())

    assert summary.elapsed.value == 17.0
    assert summary.charge.chosen.value == pytest.approx(163.500, abs=0.0005)
    assert summary.theory.value == pytest.approx(193.828, abs=0.002)
    assert summary.plan.charge.value == pytest.approx(163.406, abs=0.0005)
    assert summary.plan.mass.value == pytest.approx(191.78, abs=0.005)


@pytest.mark.parametrize(("mass_g", "efficiency_pct"), [(1512.0, 103.0), (1509.7, 101.8), (1507.2, 100.5)])
def test_core_over_a_hundred_per_cent_has_absorbed_electrolyte(mass_g, efficiency_pct):
    summary = look(mask_run(mass_g))

    assert summary.result.efficiency.value == pytest.approx(efficiency_pct, abs=0.06)
    assert summary.result.band == Band.ABSORBED
    assert "do not close" in summary.result.sentence


def test_charge_shows_its_sum():
    working = look(medal_run()).charge.chosen.working

    assert working.substitution == "Q = 0.24 A × 2 h + 0.64 A × 2 h + 1.21 A × 29 h = 36.85 A·h"


def test_run_in_the_bath_expects_its_finish_at_the_present_current():
    run = medal_run(weigh=False)
    run.events.get(kind="stop").delete()
    for later in run.readings.filter(at__gt=at("2026-02-17 08:00")):
        later.delete()

    summary = look(run, "2026-02-17 08:00")

    assert summary.standing.code == "running"
    assert summary.charge.chosen.value == pytest.approx(24.75)
    assert summary.prospect.finish_at - at("2026-02-17 08:00") == pytest.approx(
        timedelta(hours=10), abs=timedelta(minutes=1)
    )
    assert summary.cathodes[0].share.value == pytest.approx(24.75 / 2)
    assert summary.cathodes[0].thickness.label == "Mean thickness so far"


def test_reading_is_due_after_the_interval_and_late_after_two():
    run = make_run(reading_interval_h=2)
    make_cathode(run)
    event(run, "2026-02-16 09:00", "entry", 0.24)

    states = [look(run, f"2026-02-16 {when}").prospect for when in ("10:59", "11:00", "13:01")]

    assert [each.is_due for each in states] == [False, True, True]
    assert [each.is_late for each in states] == [False, False, True]
    assert states[0].next_reading_at == at("2026-02-16 11:00")


def test_nothing_flows_after_an_interruption():
    run = make_run()
    make_cathode(run)
    event(run, "2026-02-16 09:00", "entry", 1.0)
    reading(run, "2026-02-16 10:00", 1.0)
    event(run, "2026-02-16 10:00", "interruption", 0)

    summary = look(run, "2026-02-16 14:00")

    assert summary.standing.code == "interrupted"
    assert summary.charge.chosen.value == pytest.approx(1.0)
    assert summary.prospect.finish_at is None


def test_change_of_current_that_nobody_wrote_down_is_flagged():
    run = make_run()
    make_cathode(run)
    event(run, "2026-02-16 09:00", "entry", 1.0)
    reading(run, "2026-02-16 11:00", 1.1)

    summary = look(run, "2026-02-16 12:00")

    assert [line.row.current_a for line in summary.drifts] == [1.1]
    assert summary.charge.doubt_ah == pytest.approx(0.2)


def test_meter_is_chosen_with_a_reason_and_stands_beside_the_sheet():
    run = medal_run(weigh=False)
    run.charge_from, run.charge_reason = "meter", "sheet incomplete"
    run.save()
    reading(run, "2026-02-16 09:00", 0.24, meter_ah=100.0)
    reading(run, "2026-02-17 18:00", 0, meter_ah=136.5)

    charge = look(run).charge

    assert charge.chosen.value == pytest.approx(36.5)
    assert charge.sheet.value == pytest.approx(36.85)
    assert [each.apart_pct for each in charge.beside][-1] == pytest.approx(0.96, abs=0.005)  # the sheet, of 36.5 Ah


def test_plus_minus_of_ammeter_area_and_balance_are_carried():
    run = medal_run()
    for row in [*run.events.all(), *run.readings.all()]:
        row.as_typed = {"current_a": {"plus_minus": 0.01}}
        row.save()
    for cathode in run.cathodes.all():
        cathode.as_typed = {"total_area_dm2": {"plus_minus": 0.04}}
        cathode.save()

    summary = look(run)

    assert summary.charge.chosen.plus_minus == pytest.approx(0.33)  # 0.01 A over 33 h, one ammeter
    assert summary.cathodes[0].thickness.plus_minus == pytest.approx(0.0612, abs=0.0005)  # 10 % of the area
    assert summary.result.efficiency.plus_minus == pytest.approx(0.885, abs=0.005)


def test_chart_shows_current_in_steps_thickness_as_calculated_and_what_happened():
    chart = run_chart(look(coin_run()))

    current, thickness = chart.panels
    assert current.series[0].step
    assert current.series[0].points[-1] == (at("2026-03-03 18:00"), 0.0)
    assert thickness.series[0].calculated
    assert thickness.series[0].points[-1][1] == pytest.approx(0.418, abs=0.0005)  # 10.44 g on 0.280 dm²
    assert thickness.targets[0].value == 0.42
    assert [event.label for event in chart.events][:2] == ["current gone", "current back"]


def test_nothing_to_draw_before_the_start():
    assert run_chart(look(make_run())) is None


def test_run_without_cathodes_or_readings_is_planned_and_empty():
    summary = look(make_run())

    assert summary.standing.code == "planned"
    assert summary.plan is None
    assert summary.cathodes == ()
    assert summary.charge.chosen.value == 0


def test_summary_takes_few_queries(django_assert_max_num_queries):
    run = medal_run()

    with django_assert_max_num_queries(8):
        look(run)
