"""What hangs on the rail, and the gates before the current is switched on."""

import pytest
from django.urls import reverse

from process.models import Cathode, Event
from process.seeding import ensure_ranges
from records.models import UnmetGate
from tests.factories import make_analysis, make_bath, make_mould, make_run, make_user
from tests.process.scenario_runs import event

pytestmark = pytest.mark.django_db


@pytest.fixture
def bench(client):
    """A technician at the bench, with the table of usual values filled."""
    ensure_ranges()
    client.force_login(make_user("technician", "pell"))
    return client


def cathode(**fields) -> dict:
    return {
        "label": "obverse", "face_area_dm2": "28.9", "face_area_dm2_unit": "cm²", "total_area_dm2": "0.402",
        "total_area_dm2_unit": "dm²", "tare_g": "", "tare_g_unit": "g", "disc_factor": "1.08",
    } | fields  # fmt: skip


def start(when="2026-02-16T09:00", current="0.24", **fields) -> dict:
    return {
        "at": when,
        "current_a": current,
        "current_a_unit": "A",
        "token": "6a1f6f3e-7d5e-4a67-9a40-1d1f7d1f0001",
    } | fields


def test_cathode_offers_pulls_left_and_takes_its_side_from_the_mould(bench):
    run, mould = make_run(), make_mould(side="reverse", pulls_allowed_count=3)

    page = bench.get(reverse("cathode_add", args=[run.number]), {"mould": mould.item.number})
    bench.post(reverse("cathode_add", args=[run.number]), cathode(mould=mould.item.number))

    assert "3 of 3 pulls left" in page.content.decode()
    row = Cathode.objects.get()
    assert (row.side, row.face_area_dm2, row.tare_g) == ("reverse", 0.289, 0)


def test_face_of_a_disc_follows_from_its_diameter(bench):
    """58.4 mm with a relief factor of 1.08 make 28.9 cm² (area of a circle)."""
    run = make_run()

    typed = cathode(
        mould=make_mould().item.number, face_area_dm2="", disc_diameter_mm="58.4", disc_diameter_mm_unit="mm"
    )
    bench.post(reverse("cathode_add", args=[run.number]), typed)

    row = Cathode.objects.get()
    assert row.face_area_dm2 == pytest.approx(0.2893, abs=0.0001)
    assert row.evidence("face_area_dm2") == "calculated"
    assert row.plus_minus("face_area_dm2") == pytest.approx(0.0289, abs=0.0001)


def test_whole_area_smaller_than_the_face_is_refused(bench):
    run = make_run()

    page = bench.post(
        reverse("cathode_add", args=[run.number]), cathode(mould=make_mould().item.number, total_area_dm2="0.2")
    )

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


def test_empty_run_invites_a_cathode(bench):
    html = bench.get(make_run().get_absolute_url()).content.decode()

    assert "No cathode yet" in html
    assert "Add a cathode" in html
