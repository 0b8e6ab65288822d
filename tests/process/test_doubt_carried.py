"""What is not known is neither nothing nor lost on the way: ± through the figures of runs, copies, cores and baths."""

import math
import re
from datetime import date, timedelta

import pytest
from django.urls import reverse

from process.models import AnodeWeighing, BathAddition, Core, Reading, Run, Shell
from process.reports.runs import _wall_words
from process.summaries.bath_between import deposit_of
from process.summaries.bath_page import read_bath
from process.summaries.baths import bath_ledger
from process.summaries.copies import summarise as summarise_copy
from process.summaries.cores import leak_of
from process.summaries.drift import drift_of
from process.summaries.drying import drying_of_shell
from process.summaries.evidence import quantity
from process.summaries.runs import summarise
from records import clock
from records.models import DescentLink, Measurement
from tests.everything import make_core
from tests.everything import make_shell as grown_on
from tests.factories import make_bath, make_cathode, make_copy, make_item, make_mould, make_run, make_shell, make_user
from tests.process.bath_campaign import DAY, analysed, tell_of_the_campaign, typed
from tests.process.scenario_runs import at, event, failed_run, mask_run, weighed

pytestmark = pytest.mark.django_db


def look(run: Run):
    return summarise(Run.objects.with_sheet().get(pk=run.pk))


def metered(*shown: float) -> Run:
    run = make_run("D-2026-090", charge_from="meter")
    event(run, "2026-02-16 09:00", "entry", 1.0)
    for hour, meter in enumerate(shown):
        Reading.objects.create(run=run, at=at(f"2026-02-16 {10 + hour}:00"), current_a=1.0, meter_ah=meter)
    event(run, "2026-02-16 18:00", "stop", 0)
    return run


def test_a_meter_that_was_set_back_between_two_readings_proves_nothing(client):
    """2, 6, then 0 again and 3 Ah: the difference of the ends would be 1 Ah where 7 and more have passed."""
    charge = look(metered(2.0, 6.0, 0.0, 3.0)).charge

    assert charge.meter.value is None and "set back" in charge.meter.note
    assert charge.chosen is charge.sheet and charge.chosen.value == pytest.approx(9.0)
    client.force_login(make_user("technician"))
    assert "the meter was set back" in client.get(reverse("run", args=["D-2026-090"])).content.decode()


def test_a_meter_that_only_rose_counts_from_end_to_end():
    assert look(metered(2.0, 6.0, 6.0, 9.5)).charge.meter.value == pytest.approx(7.5)


def test_hydrogen_carries_the_doubt_of_charge_and_weighings():
    """V = c·(Q − m/k) by hand: 7.867 ± 0.079 Ah and 6.90 ± 0.05 g at 1.18549 g/Ah leave 2.047 ± 0.089 Ah."""
    run = failed_run()
    for each in run.events.filter(kind="entry"):
        typed(each, current_a=0.118)
    for shell in Shell.objects.all():
        typed(shell, gross_mass_g=0.05 / math.sqrt(2))

    found = look(run).hydrogen

    lost_ah = math.hypot(0.118 * 40 / 60, 0.05 / 1.185494)
    per_ah = 0.449  # L at 20 °C and 101.325 kPa: R·T/(2·F·p) by hand, as in the trade guide
    assert found.plus_minus == pytest.approx(lost_ah * per_ah, rel=1e-3)


def test_the_doubt_of_a_fill_that_was_weighed_stays_in_the_mass_foretold():
    medal = make_item("OVM.1931.0044")
    shell = make_shell(medal, "S-03", trimmed_mass_g=15.10)
    copy = make_copy("R.2026.1", shells=[shell], technique="uniface", fill_mass_g=30.0)
    making = typed(copy.making_up, fill_mass_g=0.2)

    (predicted,) = (each for each in summarise_copy(making, [], None).mass if each.label == "Mass predicted")

    assert (predicted.value, predicted.plus_minus) == pytest.approx((45.1, 0.2))


def test_a_size_foretold_without_the_shrinkage_of_the_mould_is_an_estimate_and_says_so():
    medal = make_item("OVM.1931.0044")
    Measurement.objects.create(item=medal, what="diameter", length_mm=58.40)
    cathode = make_cathode(make_run(), mould=make_mould(medal, shrinkage_pct=None))
    copy = make_copy("R.2026.1", shells=[weighed(cathode, "S-07", 12.41, 8.15)], technique="uniface")

    (predicted,) = summarise_copy(copy.making_up, [], None).size

    assert (predicted.value, predicted.kind) == (58.40, "estimated")
    assert "change of mould is not on record" in predicted.note


def test_drift_along_the_line_carries_the_doubt_of_both_calipers(client):
    """44.82 ± 0.02 and 44.78 ± 0.02 mm: −0.09 ± 0.06 %, by hand."""
    model = make_item("R.1889.7", kind="historic_copy")
    typed(Measurement.objects.create(item=model, what="diameter", length_mm=44.82), length_mm=0.02)
    cathode = make_cathode(make_run(), mould=make_mould(model, shrinkage_pct=-0.08))
    DescentLink.objects.create(source=model, target=cathode.mould.item, transfer="moulding", side="obverse")
    copy = make_copy("R.2026.3", shells=[grown_on(cathode)], technique="uniface", afterwards=True)
    typed(Measurement.objects.create(item=copy, what="diameter", length_mm=44.78), length_mm=0.02)

    first, last = drift_of(copy, summarise_copy(copy.making_up, [], None).size)

    assert (first.measured_pct, first.measured_within_pct) == (0, None)
    assert last.measured_within_pct == pytest.approx(math.sqrt(2) * 0.02 / 44.8 * 100, rel=1e-3)
    client.force_login(make_user("curator"))
    page = re.sub("<[^>]*>|\u2009", "", client.get(copy.get_absolute_url()).content.decode())
    assert "−0.09±0.06" in page.replace(" ", "")


def test_a_leak_test_may_have_a_doubt_on_one_weighing_alone():
    core = make_core(make_mould(), 1)
    core.leak_before_g, core.leak_after_g = 1290.8, 1291.7
    typed(core, leak_before_g=0.1)

    found = leak_of(Core.objects.get())

    assert found.note.startswith("0.9") and found.plus_minus == pytest.approx(0.1 * 1291.7 / 1290.8**2 * 100)


def test_one_anode_that_was_not_weighed_leaves_the_loss_of_all_unknown():
    """A2 alone lost 171 of the 347 g: taken for all, the bath would seem to have lost 168 g of copper."""
    bath = tell_of_the_campaign()
    AnodeWeighing.objects.filter(anode__label="A1").last().delete()

    loss = read_bath(bath, date(2026, 4, 2)).last_balance.anodes

    assert loss.kind == "estimated" and "(A1)" in loss.note
    assert loss.value == pytest.approx(288.267 * 1.185494, abs=0.01)


def test_an_anode_that_was_taken_out_before_the_first_analysis_need_not_be_weighed():
    bath = tell_of_the_campaign()
    bath.anode_rows.create(label="A0", hung_on=date(2025, 9, 15), removed_on=date(2026, 2, 1))

    assert read_bath(bath, date(2026, 4, 2)).last_balance.anodes.value == 347


def test_thin_acid_weighs_less_than_strong():
    """100 mL of 50 % acid of 1.3951 g/cm³ (International Critical Tables) hold 69.8 g; as strong acid, 91.8 g."""
    bath = make_bath()
    analysed(bath, "BA-01", DAY, 8.403, 11.66)
    analysed(bath, "BA-02", DAY + timedelta(days=1), 8.403, 12.28)
    put = {"bath": bath, "added_at": DAY + timedelta(hours=5)}
    BathAddition.objects.create(kind="sulphuric_acid", what="acid", volume_ml=100, strength_pct=50, **put)

    (added,) = read_bath(bath, date(2026, 2, 12)).last_balance.added

    assert added.value == pytest.approx(69.76, abs=0.01)


def test_a_balance_without_the_burette_s_doubt_of_one_analysis_is_not_judged():
    bath = tell_of_the_campaign()
    typed(bath.analyses.get(number="BA-03"))

    assert {each.state for each in read_bath(bath, date(2026, 4, 2)).last_balance.compared} == {"open"}


def test_a_skin_on_a_rail_that_changed_has_one_efficiency_on_every_page():
    """A core hangs 2 h alone, then 2 h beside a second piece of its size: 2 + 1 of 4 Ah are its own."""
    run = make_run("D-2026-091")
    core = make_core(make_mould(), 1)
    one = make_cathode(run, label="core", mould=None, core=core, total_area_dm2=1.0, face_area_dm2=1.0, tare_g=100.0)
    two = make_cathode(run, label="late", total_area_dm2=1.0, face_area_dm2=0.8)
    event(run, "2026-02-16 09:00", "entry", 1.0)
    event(run, "2026-02-16 11:00", "hung_in", 1.0, cathode=two)
    event(run, "2026-02-16 13:00", "stop", 0)
    shell = weighed(one, "S-11", 103.5, weighed_at=at("2026-02-17 09:00"))

    alone = drying_of_shell(shell).last.efficiency
    (of_the_run,) = look(run).dryings

    assert alone.value == pytest.approx(3.5 / (1.185494 * 3) * 100)
    assert of_the_run.last.efficiency.value == pytest.approx(alone.value)


def test_what_stays_in_a_core_is_known_no_better_than_the_efficiency_taken():
    """1 % of 193.83 g either way alike is 1.12 g (JCGM 100, 4.3.7): 2.91 ± 1.12 g, and not 2.91 g."""
    run = mask_run(mass_g=1507.2)

    (drying,) = look(run).dryings

    assert drying.residue.value == pytest.approx(2.91, abs=0.005)
    assert drying.residue.plus_minus == pytest.approx(193.828 * 0.01 / math.sqrt(3), rel=1e-3)


def test_the_wall_of_a_core_that_drank_is_told_by_its_charge_and_not_by_the_balance():
    (mask,) = look(mask_run(mass_g=1507.2)).cathodes

    words = _wall_words(mask)

    assert mask.thickness.kind == "estimated"
    assert "calculated from 163.50 ampere-hours;" in words or words.endswith("calculated from 163.50 ampere-hours.")


def test_a_deposit_that_nobody_could_weigh_brings_its_doubt_into_the_balance():
    """A core of 163.5 Ah, taken at 99 %: 191.89 ± 1.12 g."""
    bath = make_bath()
    run = mask_run(mass_g=1507.2)
    run.bath = bath
    run.save()

    (line,) = bath_ledger(bath)
    deposit = deposit_of(line, tuple(run.cathodes.all()))

    assert (deposit.value, deposit.plus_minus) == pytest.approx((191.89, 1.119), abs=0.001)


def test_anodes_that_were_not_weighed_lose_within_their_usual_band():
    """98 to 103 % of 341.74 g: half the width is 8.54 g, one standard uncertainty 4.93 g."""
    bath = tell_of_the_campaign()
    AnodeWeighing.objects.filter(anode__label="A1").last().delete()

    loss = read_bath(bath, date(2026, 4, 2)).last_balance.anodes

    assert loss.plus_minus == pytest.approx(288.267 * 1.185494 * 0.025 / math.sqrt(3), rel=1e-4)


def test_one_row_makes_one_doubtful_number():
    cathode = typed(make_cathode(make_run(), total_area_dm2=0.402), total_area_dm2=0.014)
    one, again = quantity(cathode, "total_area_dm2"), quantity(cathode, "total_area_dm2")
    assert (one - again).m.std_dev == 0
    cathode.total_area_dm2 = 0.5
    assert quantity(cathode, "total_area_dm2").m.nominal_value == 0.5


def test_hours_still_to_run_doubt_the_area_of_the_rail_and_not_each_area_anew():
    """Two pieces of 1 ± 0.1 dm² at 1 A: t = (c·ΣA − Q)/I after the first hangs with the second, c = ρ·d/(k·η).

    c = 8.92·0.6·10/(1.185494·0.985) = 45.83 Ah/dm², so ± is 45.83·√2·0.1 h; by hand, JCGM 100, 5.1.2.
    """
    run = make_run("D-2026-092", planned_thickness_mm=0.6, planned_efficiency_pct=98.5)
    pieces = [make_cathode(run, label=label, total_area_dm2=1.0, face_area_dm2=0.8) for label in ("one", "two")]
    for each in pieces:
        typed(each, total_area_dm2=0.1)
    event(run, "2026-02-16 09:00", "entry", 1.0)
    event(run, "2026-02-16 10:00", "hung_in", 1.0, cathode=pieces[1])
    with clock.held_at(at("2026-02-16 10:30")):
        late = look(run).cathodes[1].remaining

    per_dm2 = 8.92 * 0.6 * 10 / (1.185494 * 0.985)
    assert late.value == pytest.approx(per_dm2 * 2 - 0.5, rel=1e-4)
    assert late.plus_minus == pytest.approx(per_dm2 * math.sqrt(2) * 0.1, rel=1e-3)
