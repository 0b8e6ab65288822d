"""Pages of a run: list, plan, live page, outcome."""

from datetime import timedelta
from io import BytesIO

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from PIL import Image

from process.models import Range, Run
from process.seeding import ensure_ranges
from records import clock
from tests.factories import make_bath, make_cathode, make_mould, make_run, make_user
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
        "number": "D-2026-001", "bath": bath.number, "agitation": "quiet", "ion": "Cu2+",
        "planned_current_density_a_dm2": "1,5", "planned_current_density_a_dm2_unit": "A/dm²",
        "planned_thickness_mm": "0.6", "planned_thickness_mm_unit": "mm",
        "planned_efficiency_pct": "98.5", "reading_interval_h": "2", "reading_interval_h_unit": "h",
    } | fields  # fmt: skip


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
        ("planned_efficiency_pct", "101", "From 0 to 100"),
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


def test_run_page_shows_figures_working_and_the_next_step(bench):
    run = medal_run()

    html = bench.get(run.get_absolute_url()).content.decode()

    assert "36.85" in html
    assert "Q = 0.24 A × 2 h + 0.64 A × 2 h + 1.21 A × 29 h = 36.85 A·h" in html
    assert "Say how it ended" in html
    assert "<svg" in html


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


def test_paper_called_a_picture_is_refused_and_nothing_is_kept(bench, settings):
    run = make_run()
    file = SimpleUploadedFile("rig.jpg", b"%PDF-1.7 no picture", content_type="image/jpeg")

    page = bench.post(
        reverse("run_photo_add", args=[run.number]), {"files": file, "view": "rig", "caption": "contacts at 6 h"}
    )

    assert page.status_code == 422
    assert "contacts at 6 h" in page.content.decode()
    assert not run.photos.exists()
    assert not [path for path in settings.MEDIA_ROOT.rglob("*") if path.is_file()]


def test_photograph_of_the_rig_is_kept_with_the_run(bench):
    run = make_run()
    picture = BytesIO()
    Image.new("RGB", (64, 48), "brown").save(picture, "JPEG")

    bench.post(
        reverse("run_photo_add", args=[run.number]),
        {"files": SimpleUploadedFile("rig.jpg", picture.getvalue()), "view": "rig", "caption": "contacts at 6 h"},
    )

    assert run.photos.get().view == "rig"
    assert "contacts at 6 h" in bench.get(run.get_absolute_url()).content.decode()


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
