"""Pages of a run: list, plan, cathodes, start, outcome."""

from datetime import timedelta

import pytest
from django.urls import reverse

from process.models import Cathode, Event, Range, Run
from process.seeding import ensure_ranges
from records import clock
from records.models import UnmetGate
from tests.factories import make_analysis, make_bath, make_cathode, make_mould, make_run, make_user
from tests.process.scenario_runs import at, event, failed_run, medal_run, reading

pytestmark = pytest.mark.django_db


@pytest.fixture
def bench(client):
    """A technician at the bench, with the table of usual values filled."""
    ensure_ranges()
    client.force_login(make_user("technician", "pell"))
    return client


def plan(bath, **fields) -> dict:
    return {
        "number": "D-2026-001", "bath": bath.pk, "agitation": "quiet", "ion": "Cu2+",
        "planned_current_density_a_dm2": "1,5", "planned_current_density_a_dm2_unit": "A/dm²",
        "planned_thickness_mm": "0.6", "planned_thickness_mm_unit": "mm",
        "planned_efficiency_pct": "98.5", "reading_interval_h": "2", "reading_interval_h_unit": "h",
    } | fields  # fmt: skip


def cathode(**fields) -> dict:
    return {
        "label": "obverse", "face_area_dm2": "28.9", "face_area_dm2_unit": "cm²", "total_area_dm2": "0.402",
        "total_area_dm2_unit": "dm²", "tare_g": "", "tare_g_unit": "g", "disc_factor": "1.08",
    } | fields  # fmt: skip


def start(when="2026-02-16T09:00", current="0.24", **fields) -> dict:
    return {"at": when, "current_a": current, "current_a_unit": "A", "token": "6a1f6f3e-7d5e-4a67-9a40-1d1f7d1f0001"} | fields


def test_plan_is_kept_with_what_was_typed(bench):
    response = bench.post(reverse("run_add"), plan(make_bath()))

    run = Run.objects.get()
    assert response.url == run.get_absolute_url()
    assert run.planned_current_density_a_dm2 == 1.5
    assert run.as_typed["planned_current_density_a_dm2"]["text"] == "1,5"
    assert run.deposit_density_g_cm3 == 8.92


def test_density_that_is_usual_in_the_other_unit_is_asked_about(bench):
    """Fault 1 of the scenario: 15 was A/ft², and was set as A/dm²."""
    typed = plan(make_bath(), planned_current_density_a_dm2="15")

    page = bench.post(reverse("run_add"), typed)

    html = page.content.decode()
    assert page.status_code == 422
    assert "15 A/ft² = 1.61\u2009A/dm² would be usual. Is the unit right?" in html
    assert not Run.objects.exists()


def test_ticking_it_is_so_keeps_an_unusual_value_and_its_reason(bench):
    typed = plan(make_bath(), planned_current_density_a_dm2="15")
    form = bench.post(reverse("run_add"), typed).context["form"]
    said = form.fields["it_is_so"].widget.attrs["value"]

    bench.post(reverse("run_add"), typed | {"it_is_so": said})

    run = Run.objects.get()
    assert run.planned_current_density_a_dm2 == 15
    assert "Confirmed although unusual" in run.history.first().history_change_reason


def test_the_tick_holds_for_the_value_it_was_given_for(bench):
    typed = plan(make_bath(), planned_current_density_a_dm2="15")
    said = bench.post(reverse("run_add"), typed).context["form"].fields["it_is_so"].widget.attrs["value"]

    page = bench.post(reverse("run_add"), typed | {"planned_current_density_a_dm2": "25", "it_is_so": said})

    assert page.status_code == 422
    assert not Run.objects.exists()


@pytest.mark.parametrize(
    ("field", "text", "words"),
    [
        ("planned_efficiency_pct", "101", "not possible"),
        ("planned_current_density_a_dm2", "75", "not possible"),
        ("planned_current_density_a_dm2", "0", "more than zero"),
        ("planned_current_density_a_dm2", "1e999", "too"),
        ("planned_thickness_mm", "0.6 furlong", "furlong"),
        ("planned_thickness_mm", "9" * 65, "64"),
        ("number", "D/1", "dash"),
    ],
)
def test_wrong_plan_comes_back_with_what_was_typed(bench, field, text, words):
    page = bench.post(reverse("run_add"), plan(make_bath(), note="keep me", **{field: text}))

    html = page.content.decode()
    assert page.status_code == 422
    assert words in html
    assert text in html
    assert "keep me" in html
    assert not Run.objects.exists()


def test_taken_number_is_named(bench):
    make_run("D-2026-001")

    page = bench.post(reverse("run_add"), plan(make_bath()))

    assert "is taken" in page.content.decode()


def test_reader_may_look_but_not_plan(client):
    run = medal_run()
    client.force_login(make_user("reader"))

    assert client.get(run.get_absolute_url()).status_code == 200
    assert client.get(reverse("run_add")).status_code == 403
    assert client.post(reverse("run_start", args=[run.number])).status_code == 403
    assert b"Enter a reading" not in client.get(run.get_absolute_url()).content


def test_cathode_offers_pulls_left_and_takes_its_side_from_the_mould(bench):
    run, mould = make_run(), make_mould(side="reverse", pulls_allowed_count=3)

    page = bench.get(reverse("cathode_add", args=[run.number]))
    bench.post(reverse("cathode_add", args=[run.number]), cathode(mould=mould.pk))

    assert "3 of 3 pulls left" in page.content.decode()
    row = Cathode.objects.get()
    assert (row.side, row.face_area_dm2, row.tare_g) == ("reverse", 0.289, 0)


def test_face_of_a_disc_follows_from_its_diameter(bench):
    """58.4 mm with a relief factor of 1.08 make 28.9 cm² (area of a circle)."""
    run = make_run()

    typed = cathode(mould=make_mould().pk, face_area_dm2="", disc_diameter_mm="58.4", disc_diameter_mm_unit="mm")
    bench.post(reverse("cathode_add", args=[run.number]), typed)

    row = Cathode.objects.get()
    assert row.face_area_dm2 == pytest.approx(0.2893, abs=0.0001)
    assert row.evidence("face_area_dm2") == "calculated"
    assert row.plus_minus("face_area_dm2") == pytest.approx(0.0289, abs=0.0001)


def test_whole_area_smaller_than_the_face_is_refused(bench):
    run = make_run()

    page = bench.post(reverse("cathode_add", args=[run.number]), cathode(mould=make_mould().pk, total_area_dm2="0.2"))

    assert "cannot be smaller" in page.content.decode()


def test_cathode_without_mould_or_core_is_refused(bench):
    page = bench.post(reverse("cathode_add", args=[make_run().number]), cathode())

    assert "Choose the mould or the core" in page.content.decode()


def test_cathode_comes_off_the_plan_but_not_out_of_the_bath(bench):
    run = make_run(moulds=[make_mould()])
    row = run.cathodes.get()
    event(run, "2026-02-16 09:00", "entry", 0.24)

    bench.post(reverse("cathode_remove", args=[row.pk]))
    assert Cathode.objects.filter(pk=row.pk).exists()

    run.events.all().delete()
    bench.post(reverse("cathode_remove", args=[row.pk]))
    assert not Cathode.objects.filter(pk=row.pk).exists()


def test_start_waits_for_the_gates_and_shows_what_is_missing(bench):
    run = make_run(moulds=[make_mould()])

    page = bench.post(reverse("run_start", args=[run.number]), start())

    html = page.content.decode()
    assert page.status_code == 422
    assert "Record what has happened" in html
    assert "0.24" in html
    assert not Event.objects.exists()


def test_what_has_happened_is_recorded_with_its_unmet_gates(bench):
    run = make_run(moulds=[make_mould()])

    bench.post(reverse("run_start", args=[run.number]), start(afterwards="1"))

    assert run.events.get().kind == "entry"
    assert run.cathodes.get().pull.number_count == 1
    assert UnmetGate.objects.filter(subject_number=run.number).exists()
    assert "Recorded afterwards" in bench.get(run.get_absolute_url()).content.decode()


def test_start_sent_twice_uses_one_pull(bench):
    """Fault 6 of the scenario: a run that is sent twice from an offline tablet."""
    mould = make_mould()
    run = make_run(moulds=[mould])

    for _ in range(2):
        bench.post(reverse("run_start", args=[run.number]), start(afterwards="1"))

    assert run.events.count() == 1
    assert mould.pulls.count() == 1


def test_second_start_is_refused(bench):
    run = make_run(moulds=[make_mould()])
    bench.post(reverse("run_start", args=[run.number]), start(afterwards="1"))

    page = bench.post(
        reverse("run_start", args=[run.number]), start(afterwards="1", token="6a1f6f3e-7d5e-4a67-9a40-1d1f7d1f0002")
    )

    assert "The run started on 16 Feb, 09:00" in page.content.decode()


def test_stale_analysis_closes_the_bath_gate(bench):
    """Fault 12 of the scenario: an analysis of 34 days where 30 are allowed."""
    bath = make_bath()
    make_analysis(bath, "BA-02")
    run = make_run(bath=bath, moulds=[make_mould()])

    page = bench.post(reverse("run_start", args=[run.number]), start("2026-03-16T09:00"))

    assert "BA-02 of bath" in page.content.decode()
    assert "34 days old" in page.content.decode()


def test_run_page_shows_figures_working_and_the_next_step(bench):
    run = medal_run()

    html = bench.get(run.get_absolute_url()).content.decode()

    assert "36.85" in html
    assert "Q = 0.24 A × 2 h + 0.64 A × 2 h + 1.21 A × 29 h = 36.85 A·h" in html
    assert "Say how it ended" in html
    assert "<svg" in html


def test_empty_run_invites_a_cathode(bench):
    html = bench.get(make_run().get_absolute_url()).content.decode()

    assert "No cathode yet" in html
    assert "Add a cathode" in html


def test_live_figures_are_sent_while_it_runs_and_end_with_the_run(bench):
    run = medal_run(weigh=False)
    ended = bench.get(reverse("run_figures", args=[run.number]))
    run.events.get(kind="stop").delete()

    with clock.held_at(at("2026-02-17 18:00")):
        live = bench.get(reverse("run_figures", args=[run.number]))

    assert ended.status_code == 286
    assert live.status_code == 200
    assert 'hx-swap-oob="true"' in live.content.decode()
    assert "36.85" in live.content.decode()


def test_long_run_page_takes_few_queries(bench, django_assert_max_num_queries):
    run = medal_run(weigh=False)
    for hour in range(50):
        reading(run, f"2026-02-17 0{hour % 9}:{hour:02d}", 1.21)

    with django_assert_max_num_queries(15):
        bench.get(run.get_absolute_url())


def test_list_of_fifty_takes_few_queries(bench, django_assert_max_num_queries):
    bath = make_bath()
    for number in range(52):
        run = make_run(f"D-2026-{number:03d}", bath=bath)
        make_cathode(run)
        event(run, "2026-02-16 09:00", "entry", 0.24)

    with django_assert_max_num_queries(15):
        page = bench.get(reverse("run_list"))

    assert len(page.context["lines"]) == 50
    assert page.context["next_key"]


def test_list_is_filtered_and_exported_as_shown(bench):
    bath = make_bath()
    failed = failed_run(bath)
    failed.outcome = "failed"
    failed.save()
    medal_run()

    page = bench.get(reverse("run_list"), {"state": "failed", "export": "csv"})

    text = b"".join(page.streaming_content).decode()
    assert "D-2026-001" in text
    assert "D-2026-002" not in text
    assert "Efficiency (%)" in text


def test_failed_run_keeps_its_shells_as_evidence(bench):
    run = failed_run()

    bench.post(reverse("run_judge", args=[run.number]), {"outcome": "failed", "outcome_words": "15 A/ft² set as A/dm²"})

    run.refresh_from_db()
    assert run.outcome == "failed"
    assert {each.shell.fate for each in run.cathodes.all()} == {"scrap"}


def test_failure_without_its_lesson_is_asked_for_it(bench):
    run = failed_run()

    page = bench.post(reverse("run_judge", args=[run.number]), {"outcome": "failed", "outcome_words": ""})

    assert "only worth its lesson" in page.content.decode()


def test_run_in_the_bath_cannot_be_judged(bench):
    run = make_run()
    event(run, "2026-02-16 09:00", "entry", 0.24)

    page = bench.post(reverse("run_judge", args=[run.number]), {"outcome": "good", "outcome_words": ""})

    assert "stop it first" in page.content.decode()


def test_home_offers_the_next_reading_and_the_growth(bench):
    run = make_run("D-2026-007", moulds=[make_mould()])
    event(run, "2026-02-16 12:00", "entry", 0.24)

    with clock.held_at(at("2026-02-16 13:00")):
        html = bench.get(reverse("home")).content.decode()

    assert "Enter the 14:00 reading of D-2026-007" in html
    assert "In the bath now" in html


def test_search_goes_to_a_run_by_its_number(bench):
    run = medal_run()

    assert bench.get(reverse("search"), {"q": "d-2026-002"}).url == run.get_absolute_url()


def test_two_people_at_one_plan_do_not_overwrite_each_other(bench):
    run = make_run("D-2026-001", planned_start_at=clock.now() + timedelta(days=1))
    first = plan(run.bath, version="0", charge_from="sheet")
    bench.post(reverse("run_edit", args=[run.number]), first | {"note": "mine"})

    page = bench.post(reverse("run_edit", args=[run.number]), first | {"note": "yours"})

    run.refresh_from_db()
    assert run.note == "mine"
    assert "Someone else saved this record" in page.content.decode()


def test_meter_needs_a_reason(bench):
    run = make_run("D-2026-001")

    page = bench.post(reverse("run_edit", args=[run.number]), plan(run.bath, version="0", charge_from="meter"))

    assert "why the meter is believed" in page.content.decode()


def test_table_of_usual_values_is_the_museums(bench):
    row = Range.objects.get(field="current_density_a_dm2", step="quiet")
    row.usual_high = 20
    row.save()

    bench.post(reverse("run_add"), plan(make_bath(), planned_current_density_a_dm2="15"))

    assert Run.objects.get().planned_current_density_a_dm2 == 15
