"""Baths: titrations worked out and judged, standing of an analysis, the ledger."""

import re
from datetime import UTC, date, datetime

import pytest
from django.urls import reverse

from process.forms.bath_limits import ORDER
from process.models import BathAnalysis, BathLimit, Event, Reading
from process.summaries.baths import analysis_standing, analysis_summary, bath_ledger
from tests.factories import NINE, make_analysis, make_bath, make_run, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    return client


def analysis_data(**changes) -> dict:
    return {
        "number": "BA-01",
        "sampled_at": "2026-02-09T10:00",
        "copper_titrant_ml": "8.146",
        "copper_titrant_ml_unit": "mL",
        "copper_titrant_mol_l": "0.1",
        "copper_titrant_mol_l_unit": "mol/L",
        "copper_sample_ml": "1",
        "copper_sample_ml_unit": "mL",
        "acid_titrant_ml": "11.66",
        "acid_titrant_ml_unit": "mL",
        "acid_titrant_mol_l": "1",
        "acid_titrant_mol_l_unit": "mol/L",
        "acid_sample_ml": "10",
        "acid_sample_ml_unit": "mL",
    } | changes


def test_titration_volumes_become_grams_per_litre():
    """Expected values: DOMAIN 4.7 B1 and B3, a worked example of this project's trade guide."""
    analysis = make_analysis(make_bath(), copper_titrant_ml=8.146, acid_titrant_ml=11.66)

    copper, acid = analysis_summary(analysis).found

    assert copper.figure.value == pytest.approx(203.4, abs=0.05)
    assert acid.figure.value == pytest.approx(57.2, abs=0.05)
    assert "51.8\u2009g/L of copper" in copper.figure.note  # 0.2545 of 203.4: trade guide, B2
    assert "8.146" in copper.figure.working.substitution


@pytest.mark.parametrize(("titrant_ml", "state"), [(8.403, "done"), (7.4, "look"), (6.5, "blocked"), (10.6, "blocked")])
def test_limits_judge_target_warning_and_stop(titrant_ml, state):
    analysis = make_analysis(make_bath(), copper_titrant_ml=titrant_ml)

    assert analysis_summary(analysis).found[0].state == state


def test_technician_enters_an_analysis_and_sees_it_worked_out(technician):
    bath = make_bath("B-01")

    page = technician.post(reverse("analysis_add", args=["B-01"]), analysis_data(), follow=True).content.decode()

    assert BathAnalysis.objects.get(bath=bath).copper_titrant_ml == 8.146
    assert "203.4" in page and "57.2" in page


def test_a_slipped_decimal_is_refused_before_it_is_kept(technician):
    """2034 g/L cannot dissolve: the result is impossible although the volume looks possible."""
    make_bath("B-01")

    answer = technician.post(reverse("analysis_add", args=["B-01"]), analysis_data(copper_titrant_ml="81.46"))

    assert answer.status_code == 422
    assert "is not possible" in answer.content.decode() and "81.46" in answer.content.decode()
    assert not BathAnalysis.objects.exists()


def test_an_analysis_without_a_titration_is_sent_back(technician):
    make_bath("B-01")

    answer = technician.post(
        reverse("analysis_add", args=["B-01"]), analysis_data(copper_titrant_ml="", acid_titrant_ml="")
    )

    assert answer.status_code == 422 and "at least one titration" in answer.content.decode()


def test_an_analysis_gets_too_old():
    bath = make_bath()
    make_analysis(bath, sampled_at=datetime(2026, 2, 10, 9, 0, tzinfo=UTC))

    assert analysis_standing(bath, date(2026, 3, 12)).holds
    late = analysis_standing(bath, date(2026, 3, 16))
    assert not late.holds and "34 days old" in late.sentence


def test_a_bath_without_analysis_is_not_fit_for_a_start():
    assert "has no analysis" in analysis_standing(make_bath(), date(2026, 3, 12)).sentence


def test_an_analysis_without_limits_makes_no_bath_fit():
    bath = make_bath("B-01")
    make_analysis(bath)
    bath.limits.all().delete()

    standing = analysis_standing(bath, date(2026, 2, 11))

    assert not standing.holds and "set the limits of the bath" in standing.sentence


def test_the_ledger_adds_each_run_to_the_opening_charge():
    bath = make_bath(opening_charge_ah=640.0)
    run = make_run(bath=bath)
    Event.objects.create(run=run, kind="entry", at=NINE, current_a=2.0)
    Reading.objects.create(run=run, at=NINE.replace(hour=10), current_a=1.0)
    Event.objects.create(run=run, kind="stop", at=NINE.replace(hour=11), current_a=0.0)

    [line] = bath_ledger(bath)

    assert (line.charge_ah, line.total_ah) == (5.0, 645.0)
    assert line.per_litre_ah_l == pytest.approx(10.75)


def test_crossed_limits_are_sent_back(client):
    client.force_login(make_user("conservator"))
    make_bath("B-01")
    url = reverse("limit_edit", args=["B-01", "copper_sulphate"])
    version = BathLimit.objects.get(constituent="copper_sulphate").version

    answer = client.post(
        url,
        {
            "target_g_l": "210",
            "target_g_l_unit": "g/L",
            "warn_low_g_l": "230",
            "warn_low_g_l_unit": "g/L",
            "version": version,
        },
    )

    assert answer.status_code == 422 and "The bounds cross" in answer.content.decode()


def test_a_new_acid_copper_bath_is_offered_the_usual_bounds(client):
    """Workshop practice, no published source; other metals are offered nothing."""
    client.force_login(make_user("conservator"))
    copper, silver = make_bath("B-01"), make_bath("B-02", ion="Ag+")
    BathLimit.objects.all().delete()

    offered = client.get(reverse("limit_edit", args=[copper.number, "sulphuric_acid"])).context["form"]
    nothing = client.get(reverse("limit_edit", args=[silver.number, "sulphuric_acid"])).context["form"]

    assert [offered[name].value() for name in ORDER] == [35, 50, 60, 75, 100]
    assert not any(nothing[name].value() is not None for name in ORDER)
    assert not BathLimit.objects.exists()


def test_bath_page_asks_few_questions_of_the_database(technician, django_assert_max_num_queries):
    bath = make_bath("B-01")
    for number in range(50):
        make_analysis(bath, sampled_at=NINE.replace(minute=number))
        Event.objects.create(run=make_run(bath=bath), kind="entry", at=NINE.replace(minute=number), current_a=1.0)

    with django_assert_max_num_queries(15):
        assert technician.get(bath.get_absolute_url()).status_code == 200


def test_unknown_constituent_has_no_limits_page(client):
    client.force_login(make_user("conservator"))
    make_bath("B-01")

    assert client.get(reverse("limit_edit", args=["B-01", "gold"])).status_code == 404


def test_home_asks_the_technician_for_an_analysis_that_is_due(technician):
    make_bath("B-07")

    assert "Analyse bath B-07" in technician.get(reverse("home")).content.decode()


def test_chloride_limits_are_shown_in_milligrams_per_litre(technician):
    bath = make_bath("B-01")
    BathLimit.objects.create(bath=bath, constituent="chloride", warn_high_g_l=0.08)

    page = technician.get(bath.get_absolute_url()).content.decode()

    assert "look above 80\u2009mg/L" in re.sub(r"<.*?>", "", page)
