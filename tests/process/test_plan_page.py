"""The plan of a run: computed while one types, asked about, kept with its ramp. Figures from SCENARIO 7 and 11."""

import re
from datetime import UTC, datetime

import pytest
from django.urls import reverse

from process.models import PowerUnit, RampStep, Run
from process.summaries.reckoned import reckon
from tests.factories import make_bath, make_cathode, make_item, make_mould, make_run, make_user

pytestmark = pytest.mark.django_db

AT = datetime(2026, 3, 28, 17, 0, tzinfo=UTC)  # 18:00 by the museum's clock


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    return client


@pytest.fixture
def medal():
    run = make_run(planned_current_density_a_dm2=1.5, planned_thickness_mm=0.6, planned_efficiency_pct=98.5)
    make_cathode(run, label="obverse")
    make_cathode(run, label="reverse")
    return run


def sheet(run: Run) -> Run:
    return Run.objects.with_sheet().get(pk=run.pk)


def ramp(run: Run, *steps: tuple[str, float | None, float | None, float | None]) -> None:
    for order, (words, density, current, hours) in enumerate(steps, start=1):
        RampStep.objects.create(
            run=run, order_count=order, words=words, current_density_a_dm2=density, current_a=current, time_h=hours
        )


def sent(run: Run, steps=(), **changes) -> dict[str, str]:
    """What the plan page sends."""
    data = {
        "planned_thickness_mm": "0.60", "planned_current_density_a_dm2": "1.5", "planned_efficiency_pct": "98.5",
        "reading_interval_h": "2", "distribution_source": "rule", "version": str(run.version),
        "step-TOTAL_FORMS": str(len(steps)), "step-INITIAL_FORMS": "0",
    }  # fmt: skip
    for index, step in enumerate(steps):
        data |= {f"step-{index}-{name}": value for name, value in step.items()}
    return data | changes


def test_the_page_shows_the_oracles_of_the_medal(technician, medal):
    page = technician.get(reverse("run_plan", args=[medal.number])).content.decode()

    found = reckon(sheet(medal)).plan
    assert found.charge.value == pytest.approx(36.85, abs=0.005)
    assert found.current.value == pytest.approx(1.206)
    assert found.time.value == pytest.approx(30.56, abs=0.005)
    assert "36.85\u202fAh at 1.21\u202fA: 30.6\u202fh." in page
    assert "Q = m / (k·η)" in page


def test_fault_one_fifteen_is_asked_about_in_the_other_unit(technician, medal):
    """SCENARIO 12, fault 1: 15 entered as A/dm² with 0.804 dm²."""
    answer = technician.post(reverse("run_plan", args=[medal.number]), sent(medal, planned_current_density_a_dm2="15"))

    assert answer.status_code == 422
    page = answer.content.decode()
    assert "15 A/ft² = 1.61\u2009A/dm² would be usual. Is the unit right?" in page
    assert "On this area it comes to 12.06\u202fA." in page
    medal.refresh_from_db()
    assert medal.planned_current_density_a_dm2 == 1.5


def test_a_step_of_the_ramp_is_asked_about_too_and_kept_once_it_is_said_to_be_so(technician, medal):
    url, steps = reverse("run_plan", args=[medal.number]), [{"density": "15"}]

    asked = technician.post(url, sent(medal, steps))

    assert asked.status_code == 422 and not medal.ramp_steps.exists()
    assert "Step 1 of the ramp: 15\u2009A/dm² is unusual" in asked.content.decode()
    tick = re.search(r'name="it_is_so" value="(\w+)"', asked.content.decode()).group(1)
    assert technician.post(url, sent(medal, steps, it_is_so=tick)).status_code == 302
    assert medal.ramp_steps.get().current_density_a_dm2 == 15.0


def test_a_strike_is_usual_though_the_build_would_not_be(technician, medal):
    steps = [{"words": "entry", "density": "0.12", "time": "1"}, {"density": "1.5"}]

    assert technician.post(reverse("run_plan", args=[medal.number]), sent(medal, steps)).status_code == 302


def test_fifteen_in_the_unit_of_the_paper_sheet_is_usual(technician, medal):
    unit = {"planned_current_density_a_dm2_unit": "A/ft²"}
    answer = technician.post(
        reverse("run_plan", args=[medal.number]), sent(medal, planned_current_density_a_dm2="15", **unit)
    )

    assert answer.status_code == 302
    medal.refresh_from_db()
    assert medal.planned_current_density_a_dm2 == pytest.approx(1.6146, abs=5e-5)


def test_what_is_typed_is_computed_and_nothing_kept(technician, medal):
    steps = [{"words": "cover", "density": "0.3", "time": "2"}, {"words": "build", "density": "1.5"}]
    page = technician.post(
        reverse("run_plan_figures", args=[medal.number]), sent(medal, steps, planned_thickness_mm="0.82")
    ).content.decode()

    assert "50.36\u202fAh" in page and "in 2 steps" in page
    medal.refresh_from_db()
    assert medal.planned_thickness_mm == 0.6 and not medal.ramp_steps.exists()


def test_without_script_a_button_reckons_and_another_gives_a_row(technician, medal):
    url = reverse("run_plan", args=[medal.number])
    steps = [{"words": "cover", "density": "0.3", "time": "2"}]

    tried = technician.post(url, sent(medal, steps, reckon="1"))
    more = technician.post(url, sent(medal, steps, more="1"))

    assert tried.status_code == 200 and b'value="cover"' in tried.content
    assert b'name="step-1-words"' in more.content and b'value="cover"' in more.content
    assert not medal.ramp_steps.exists()


def test_a_ramp_is_kept_and_corrected_step_by_step(technician, medal):
    url = reverse("run_plan", args=[medal.number])
    first = [{"words": "cover", "density": "0.3", "time": "2"}, {"words": "build", "current": "1.21"}]
    assert technician.post(url, sent(medal, first)).status_code == 302
    medal.refresh_from_db()
    kept = list(medal.ramp_steps.all())
    assert [(step.words, step.current_density_a_dm2, step.current_a, step.time_h) for step in kept] == [
        ("cover", 0.3, None, 2.0), ("build", None, 1.21, None),
    ]  # fmt: skip

    second = [{"words": "cover", "density": "0.3", "time": "120", "time_unit": "min"}]
    assert technician.post(url, sent(medal, second)).status_code == 302
    assert [step.pk for step in medal.ramp_steps.all()] == [kept[0].pk]
    assert kept[0].history.count() == 2


@pytest.mark.parametrize(
    ("steps", "words"),
    [
        ([{"words": "cover", "time": "2"}], "its current density or its current, one of the two"),
        ([{"density": "1", "current": "2", "time": "2"}], "one of the two"),
        ([{"density": "0.3"}, {"density": "1.5"}], "Only the last step may be without a time"),
        ([{"density": "0", "time": "1"}], "A step without current deposits nothing"),
        ([{"density": "1", "time": "0"}], "A step lasts longer than nothing"),
        ([{"density": "90", "time": "1"}], "is not possible here"),
        ([{"density": "x", "time": "1"}], "cannot be read"),
    ],
)
def test_a_step_that_cannot_be_is_given_back_with_its_reason(technician, medal, steps, words):
    answer = technician.post(reverse("run_plan", args=[medal.number]), sent(medal, steps))

    assert answer.status_code == 422
    assert words in answer.content.decode()
    assert not medal.ramp_steps.exists()


def test_steps_that_exceed_the_charge_are_told(technician, medal):
    ramp(medal, ("long", None, 1.0, 100.0))

    page = technician.get(reverse("run_plan", args=[medal.number])).content.decode()

    assert "the steps alone exceed the planned charge; shorten the ramp" in page


def test_seventeen_hours_across_the_clock_change(technician):
    """SCENARIO 12, fault 9: D-2026-006 takes 17 h though the wall clocks say 18."""
    run = make_run(
        planned_current_density_a_dm2=1.2, planned_thickness_mm=0.25, planned_efficiency_pct=99, planned_start_at=AT
    )
    make_cathode(run, face_area_dm2=8.6, total_area_dm2=8.6)
    ramp(run, ("entry", None, 3.0, 1.0), ("cover", None, 6.0, 1.0), ("build", None, 10.3, None))

    found = reckon(sheet(run))
    page = technician.get(reverse("run_plan", args=[run.number])).content.decode()

    assert found.plan.charge.value == pytest.approx(163.406, abs=5e-4)
    assert found.plan.mass.value == pytest.approx(191.78, abs=0.005)
    assert found.plan.time.value == pytest.approx(17.0, abs=0.01)
    assert "29 Mar 2026, 11:59 +02:00" in page
    assert "The clocks go forward by 1\u00a0h in this run: 17.0\u202fh pass" in page


def test_a_coarse_unit_cannot_hold_the_entry_current(technician):
    """DOMAIN P9: a 50 A unit cannot hold 0.08 A."""
    unit = PowerUnit.objects.create(number="PU-2", rated_a=50, rated_v=12, resolution_a=0.1, after_failure="resumes")
    run = make_run(
        planned_current_density_a_dm2=1.5, planned_thickness_mm=0.42, planned_efficiency_pct=99, power_unit=unit
    )
    make_cathode(run, face_area_dm2=0.162, total_area_dm2=0.28)
    ramp(run, ("entry", None, 0.08, 1.5), ("cover", None, 0.2, 1.5))

    found = {check.sentence: check.state for check in reckon(sheet(run)).checks}

    step = "PU-2 sets steps of 0.100\u2009A, 125\u2009% of 0.08\u2009A: it cannot hold 0.08\u2009A"
    assert found[f"{step} (5 % is the most). Choose a finer unit."] == "look"
    assert any("resumes by itself" in words for words in found)
    assert any("not checked within a year" in words for words in found)


def test_more_than_the_unit_gives_is_blocked(medal):
    unit = PowerUnit.objects.create(number="PU-3", rated_a=1, rated_v=2)
    medal.power_unit = unit
    medal.save()

    assert reckon(sheet(medal)).checks[0].state == "blocked"


def test_a_started_run_keeps_its_plan(technician, medal):
    medal.events.create(kind="entry", at=AT, current_a=0.24)

    page = technician.get(reverse("run_plan", args=[medal.number]))
    answer = technician.post(reverse("run_plan", args=[medal.number]), sent(medal, planned_thickness_mm="0.9"))

    assert b"the plan stands" in page.content and b"Keep the plan" not in page.content
    assert answer.status_code == 422 and "its plan stands" in answer.content.decode()


def test_a_reader_sees_the_plan_and_cannot_change_it(client, medal):
    client.force_login(make_user("reader"))

    assert client.get(reverse("run_plan", args=[medal.number])).status_code == 200
    assert client.post(reverse("run_plan", args=[medal.number]), sent(medal)).status_code == 403


def test_without_a_cathode_the_page_says_what_is_missing(technician):
    run = make_run()

    assert b"Nothing hangs on the rail yet" in technician.get(reverse("run_plan", args=[run.number])).content


def test_earlier_runs_of_the_same_model_stand_beside_the_plan(technician):
    mould = make_mould()
    failed = make_run(outcome="failed", outcome_words="Dark powder, trees on both rims.")
    make_cathode(failed, mould=mould)
    run = make_run()
    make_cathode(run, mould=make_mould(mould.model))

    page = technician.get(reverse("run_plan", args=[run.number])).content.decode()

    assert failed.number in page and "trees on both rims" in page


def test_four_sections_of_one_copy_are_planned_on_one_rail(technician):
    """Pieces of several metres are grown in sections and joined (common practice, no published source)."""
    model = make_item(title="Relief of the harbour, four metres")
    run = make_run(
        bath=make_bath(volume_l=2000),
        planned_current_density_a_dm2=2,
        planned_thickness_mm=2.0,
        planned_efficiency_pct=98,
    )
    for section in ("first", "second", "third", "fourth"):
        mould = make_mould(model)
        make_cathode(run, label=f"{section} section", mould=mould, face_area_dm2=95, total_area_dm2=100)

    plan = reckon(sheet(run)).plan

    assert plan.area.value == pytest.approx(400) and plan.current.value == pytest.approx(800)
    assert plan.mass.value == pytest.approx(10 * 8.92 * 400 * 2)
    assert plan.time.value == pytest.approx(plan.charge.value / 800)
    assert technician.get(reverse("run_plan", args=[run.number])).status_code == 200
