"""The diary of a bath: ledger from each piece of work, corrections, the balance, what lies between, anodes."""

from datetime import date, timedelta

import pytest

from process.models import BathAddition, BathService
from process.summaries.analyses import analysis_summary
from process.summaries.bath_corrections import corrections_of
from process.summaries.bath_diary import diary_of
from process.summaries.bath_page import read_bath
from process.summaries.baths import bath_ledger
from tests.everything import make_core
from tests.factories import make_analysis, make_bath, make_party
from tests.process.bath_campaign import DAY, analysed, grown, tell_of_the_campaign
from tests.process.scenario_runs import medal_run

pytestmark = pytest.mark.django_db


@pytest.fixture
def campaign():
    return tell_of_the_campaign()


def test_balance_predicts_the_next_analysis_and_agrees(campaign):
    """SCENARIO 6 and 11: predicted 208.6 and 59.5 g/L (±0.3), found 209.3 and 59.1: agrees within analysis error."""
    balance = read_bath(campaign, date(2026, 4, 2)).last_balance

    assert balance.anodes.value == 347 and balance.deposits.value == pytest.approx(335.69, abs=0.01)
    assert balance.gained.value == pytest.approx(8.2, abs=0.05)
    salt, acid = balance.compared
    assert [round(each.predicted.value, 1) for each in (salt, acid)] == [208.6, 59.5]
    assert [round(each.measured.value, 1) for each in (salt, acid)] == [209.3, 59.1]
    assert [each.predicted.plus_minus for each in (salt, acid)] == pytest.approx([0.3, 0.3], abs=0.05)
    assert balance.agrees and "agrees within the error" in salt.word


def test_ledger_after_each_run_stands_between_the_analyses(campaign):
    """SCENARIO 7: 647.87 · 684.72 · 693.66 · 714.61 · 764.77 · 928.27 Ah."""
    [stretch] = read_bath(campaign, date(2026, 4, 2)).stretches

    assert (stretch.first.number, stretch.last.number) == ("BA-02", "BA-03")
    totals = [round(each.line.total_ah, 2) for each in stretch.runs]
    assert totals == [647.87, 684.72, 693.66, 714.61, 764.77, 928.27]


def test_charge_is_counted_from_each_piece_of_work(campaign):
    BathService.objects.create(bath=campaign, kind="bags", done_at=DAY + timedelta(days=30))

    since = {each.label: each.charge_ah for each in read_bath(campaign, date(2026, 4, 2)).since}

    assert since["whole ledger"] == pytest.approx(928.27, abs=0.005)
    assert since["since BA-03"] == 0
    assert since["since the anode bags were changed"] == pytest.approx(163.5)
    assert since["since it was treated with carbon"] is None


def test_a_core_that_drank_counts_by_charge_and_planned_efficiency():
    """SCENARIO 6: 194.8 g on the balance, of which 191.9 g (99 %) is taken as copper."""
    bath = make_bath()
    analysed(bath, "BA-1", DAY, 8.403, 12.28)
    analysed(bath, "BA-2", DAY + timedelta(days=9), 8.383, 12.05)
    run = grown(bath, "D-6", DAY + timedelta(days=1), 10, 16.35, 194.8, planned_efficiency_pct=99)
    cathode = run.cathodes.get()
    cathode.core, cathode.mould = make_core(cathode.mould, 1), None
    cathode.save()

    [each] = read_bath(bath, date(2026, 2, 20)).stretches[0].runs

    assert each.deposit.value == pytest.approx(191.9, abs=0.05)
    assert each.deposit.kind == "estimated" and "absorbed" in each.deposit.note


def test_correction_of_the_first_analysis_with_amounts_in_order():
    """SCENARIO 6: 396 g of salt; 168 g of acid, 95.4 mL of 96 %."""
    summary = analysis_summary(make_analysis(make_bath(), copper_titrant_ml=8.146, acid_titrant_ml=11.66))

    salt, acid = corrections_of(summary)

    assert salt.figures[0].value == pytest.approx(396, abs=0.01)
    assert [round(each.value, 1) for each in acid.figures] == [168.0, 95.4]
    assert "396 g" in salt.sentence and "95.4 mL" in acid.sentence and "slowly" in acid.sentence


def test_too_strong_a_bath_is_diluted_first():
    """Trade guide 4.7 B7: 60 L, 235 → 210 g/L: 6.4 L; the acid goes out with it and is made good."""
    strong = make_analysis(make_bath(), copper_titrant_ml=235 / 24.9677, acid_titrant_ml=12.24)

    dilution, acid = corrections_of(analysis_summary(strong))

    assert dilution.figures[0].value == pytest.approx(6.38, abs=0.01)
    assert acid.figures[0].value == pytest.approx((60 - 53.6) * 60, abs=1)


def test_what_was_added_is_in_the_prediction():
    """SCENARIO 6: BA-01 with 396 g and 95.4 mL should find 210 and 60."""
    bath = make_bath()
    first = analysed(bath, "BA-01", DAY, 8.146, 11.66)
    analysed(bath, "BA-02", DAY + timedelta(days=1), 8.403, 12.28)
    put = {"bath": bath, "added_at": DAY + timedelta(hours=5), "analysis": first}
    BathAddition.objects.create(kind="copper_sulphate", what="salt", mass_g=396, **put)
    BathAddition.objects.create(kind="sulphuric_acid", what="acid", volume_ml=95.4, **put)

    balance = read_bath(bath, date(2026, 2, 12)).last_balance

    assert [round(each.predicted.value, 1) for each in balance.compared] == [210.0, 60.0]


def test_evaporation_is_allowed_for_before_it_is_judged():
    """Trade guide 4.7 B8: what is found at 58.5 L is stated for the 60 L of the mark."""
    low = make_analysis(make_bath(), copper_titrant_ml=8.618, volume_now_l=58.5)

    salt = analysis_summary(low).of("copper_sulphate")

    assert salt.figure.value == pytest.approx(215.2 * 58.5 / 60, abs=0.05)
    assert "in the sample" in salt.figure.note


def test_a_diluted_sample_and_chloride_by_silver():
    """CHEMISTRY 4.3: 10 → 100 mL, 10 mL of it, 15.80 mL of 0.0500 mol/L: 197.2 g/L of salt. B4: 35.45 mg/L."""
    row = make_analysis(
        make_bath(), copper_titrant_ml=15.80, copper_titrant_mol_l=0.05, copper_sample_ml=10, copper_taken_ml=10,
        copper_flask_ml=100, chloride_titrant_ml=1, chloride_titrant_mol_l=0.1, chloride_sample_ml=100,
    )  # fmt: skip

    summary = analysis_summary(row)

    assert summary.of("copper_sulphate").figure.value == pytest.approx(197.2, abs=0.05)
    assert summary.of("chloride").figure.value == pytest.approx(35.45, abs=0.005)
    assert summary.of("chloride").figure.suffix == "_mg_l"


def test_a_hydrometer_names_its_modulus_and_is_set_against_the_titrations():
    row = make_analysis(make_bath(), hydrometer_be=20.5, hydrometer_modulus="144.3")

    read, expected = analysis_summary(row).density

    assert read.value == pytest.approx(1.1646, abs=1e-3)
    assert expected.value == pytest.approx(1.168, abs=1e-3)
    assert "cannot tell salt from acid" in expected.note and "144.3" in read.note


def test_a_run_stands_in_the_diary_with_who_ran_it():
    run = medal_run()
    run.operator = make_party("Pell Dunnock-Ashe")
    run.save()
    entry = next(each for each in diary_of(run.bath, bath_ledger(run.bath), ["run"]) if each.kind == "run")
    assert (entry.title, entry.person) == ("Run D-2026-002", "Pell Dunnock-Ashe")
