"""Shells: weighing, correcting, measured points, and the panel on their page."""

import pytest
from django.urls import reverse

from process.models import Shell, ThicknessPoint
from process.seeding import ensure_ranges
from records.models import DescentLink, Item
from tests.factories import make_item, make_user
from tests.process.scenario_runs import coin_run, mask_run, medal_run

pytestmark = pytest.mark.django_db


@pytest.fixture
def bench(client):
    ensure_ranges()
    client.force_login(make_user("technician", "pell"))
    return client


def weighing(**fields) -> dict:
    return {
        "number": "S-03", "gross_mass_g": "22,05", "gross_mass_g_unit": "g", "gross_mass_g_margin": "0.01",
        "trimmed_mass_g": "15.10", "trimmed_mass_g_unit": "g",
    } | fields  # fmt: skip


def test_shell_gets_its_number_and_descends_from_its_mould(bench):
    run = medal_run(weigh=False)
    cathode = run.cathodes.first()

    page = bench.get(reverse("shell_weigh", args=[cathode.pk]))
    response = bench.post(reverse("shell_weigh", args=[cathode.pk]), weighing())

    shell = Shell.objects.get()
    assert 'value="S-01"' in page.content.decode()
    assert response.url == run.get_absolute_url()
    assert (shell.item.number, shell.gross_mass_g, shell.plus_minus("gross_mass_g")) == ("S-03", 22.05, 0.01)
    assert DescentLink.objects.get(target=shell.item).source == cathode.mould.item


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"gross_mass_g": "0"}, "weighs no more than the tare"),
        ({"trimmed_mass_g": "23"}, "weighs less than before"),
        ({"number": "S/3"}, "write a point or a dash"),
        ({"gross_mass_g": "heavy"}, "heavy"),
    ],
)
def test_wrong_weighing_comes_back(bench, fields, words):
    cathode = medal_run(weigh=False).cathodes.first()

    page = bench.post(reverse("shell_weigh", args=[cathode.pk]), weighing(inspection="two voids", **fields))

    html = page.content.decode()
    assert page.status_code == 422
    assert words in html
    assert "two voids" in html
    assert not Shell.objects.exists()
    assert not Item.objects.filter(kind="shell").exists()


def test_taken_number_offers_the_next_one(bench):
    make_item("S-03", kind="shell")
    cathode = medal_run(weigh=False).cathodes.first()

    page = bench.post(reverse("shell_weigh", args=[cathode.pk]), weighing())

    assert "S-04 is the next free number" in page.content.decode()


def test_weighing_sent_twice_makes_one_shell(bench):
    cathode = medal_run(weigh=False).cathodes.first()

    bench.post(reverse("shell_weigh", args=[cathode.pk]), weighing())
    page = bench.post(reverse("shell_weigh", args=[cathode.pk]), weighing(number="S-04"))

    assert page.status_code == 302
    assert Shell.objects.count() == 1


def test_run_that_goes_on_has_nothing_to_weigh(bench):
    run = medal_run(weigh=False)
    run.events.get(kind="stop").delete()

    page = bench.post(reverse("shell_weigh", args=[run.cathodes.first().pk]), weighing())

    assert "It still hangs in the bath" in page.content.decode()


def test_tare_of_a_core_is_taken_off(bench):
    cathode = mask_run().cathodes.get()

    page = bench.post(reverse("shell_weigh", args=[cathode.pk]), weighing(gross_mass_g="199.6", trimmed_mass_g=""))

    assert "tare of 1312.4 g" in page.content.decode()


def test_correction_of_a_weighing_is_kept_in_the_history(bench):
    medal_run()

    bench.post(reverse("shell_edit", args=["S-03"]), weighing(version="0", fate="kept", gross_mass_g="22.50"))

    shell = Shell.objects.get(item__number="S-03")
    assert shell.gross_mass_g == 22.5
    assert shell.history.last().gross_mass_g == 22.05


def test_measured_point_is_kept_and_a_calculated_mean_is_not_one(bench):
    """Fault 3 of the scenario: 0.42 mm was the mean, only 0.28 mm was measured."""
    coin_run()

    bench.post(
        reverse("thickness_add", args=["S-05"]),
        {"place": "between letters", "thickness_mm": "0.28", "thickness_mm_unit": "mm", "method": "section"},
    )

    point = ThicknessPoint.objects.get()
    html = bench.get(reverse("item", args=["S-05"])).content.decode()
    assert point.thickness_mm == 0.28
    assert "between letters; the only measured point" in html
    assert "Mean thickness" in html


def test_wall_of_nothing_is_refused(bench):
    coin_run()

    page = bench.post(
        reverse("thickness_add", args=["S-05"]),
        {"place": "rim", "thickness_mm": "0", "thickness_mm_unit": "mm", "method": "section"},
    )

    assert page.status_code == 422
    assert not ThicknessPoint.objects.exists()


def test_shell_page_shows_its_wall(bench, django_assert_max_num_queries):
    medal_run()

    with django_assert_max_num_queries(40):
        html = bench.get(reverse("item", args=["S-03"])).content.decode()

    assert "0.61" in html
    assert "under chin" in html
    assert "measured" in html


def test_model_shows_the_runs_of_its_moulds(bench):
    run = medal_run()
    mould = run.cathodes.first().mould
    model = mould.model
    DescentLink.objects.create(source=model, target=mould.item, transfer="moulding")

    html = bench.get(reverse("item", args=[model.number])).content.decode()

    assert "Runs in its moulds" in html
    assert run.number in html


@pytest.mark.parametrize(
    "early", [{"weighed_at": "2026-02-17T17:59"}, {"separated_on": "2026-02-16"}, {"weighed_at": "2026-02-10T09:00"}]
)
def test_nothing_is_weighed_or_taken_off_while_it_hangs_in_the_bath(bench, early):
    """SCENARIO 7.2: the run ends on 17 February 2026 at 18:00."""
    cathode = medal_run(weigh=False).cathodes.first()

    page = bench.post(reverse("shell_weigh", args=[cathode.pk]), weighing(**early))

    assert page.status_code == 422 and not Shell.objects.exists()
    assert "It came out of the bath on 17 February 2026, 18:00" in page.content.decode()


def test_more_than_the_charge_can_deposit_is_asked_about(bench):
    """36.85 Ah deposit 43.69 g of copper (Faraday, CODATA 2018; SCENARIO 11), whatever the balance says."""
    cathode = medal_run(weigh=False).cathodes.first()

    page = bench.post(reverse("shell_weigh", args=[cathode.pk]), weighing(gross_mass_g="220.5"))

    html = page.content.decode().replace("\u2009", " ")
    assert page.status_code == 422 and not Shell.objects.exists()
    assert "is 5.05 times the 43.69 g that the charge of this run can deposit" in html
    assert 'value="220.5"' in html
