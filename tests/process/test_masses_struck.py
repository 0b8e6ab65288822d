"""Wrong weighings are struck out with a reason: kept, shown, and counted nowhere until the piece is weighed again."""

import pytest
from django.urls import reverse

from process.models import Run, Shell, Weighing
from process.services.cores import keep_weighing
from process.summaries.runs import summarise
from tests.factories import make_user
from tests.process.scenario_runs import at, mask_run, medal_run

pytestmark = pytest.mark.django_db


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    return client


def look(number):
    return summarise(Run.objects.with_sheet().get(number=number))


def strike(client, kind, number="S-03", reason="weighed with the clip"):
    return client.post(reverse("mass_strike", args=[number, kind]), {"reason": reason})


def test_a_struck_mass_is_kept_and_shown_and_the_balance_waits_for_another(technician):
    medal_run()

    answer = strike(technician, "shell")

    assert answer.status_code == 302
    shell = Shell.objects.get(item__number="S-03")
    assert shell.gross_mass_g is None
    row = Weighing.every.get(item=shell.item)
    assert (row.mass_g, row.kind, row.struck_reason) == (22.05, "shell", "weighed with the clip")
    assert not shell.item.weighings.exists()
    summary = look("D-2026-002")
    assert summary.result is None and summary.cathodes[0].gain is None
    page = technician.get(shell.get_absolute_url()).content.decode()
    assert "weighed with the clip" in page and "22.05" in page and "Weigh it again" in page


def test_weighed_again_it_counts_again_and_the_struck_one_cannot_come_back(technician):
    medal_run()
    strike(technician, "shell")
    shell = Shell.objects.get(item__number="S-03")
    row = Weighing.every.get(item=shell.item)

    technician.post(reverse("shell_edit", args=["S-03"]), {
        "gross_mass_g": "22.01", "gross_mass_g_unit": "g", "trimmed_mass_g": "15.10", "trimmed_mass_g_unit": "g",
        "fate": "kept", "version": shell.version,
    })  # fmt: skip
    back = technician.post(reverse("strike", args=["weighing", row.pk]), {"reason": "it was right"})

    assert look("D-2026-002").result.gain.value == pytest.approx(22.01 + 21.13)
    assert back.status_code == 422 and "weighed again since" in back.content.decode()


@pytest.mark.parametrize(("kind", "field"), [("shell", "gross_mass_g"), ("trimmed", "trimmed_mass_g")])
def test_put_back_it_stands_where_it_stood(technician, kind, field):
    medal_run()
    before = getattr(Shell.objects.get(item__number="S-03"), field)
    strike(technician, kind)
    row = Weighing.every.get(kind=kind)

    technician.post(reverse("strike", args=["weighing", row.pk]), {"reason": "the clip was off"})

    assert getattr(Shell.objects.get(item__number="S-03"), field) == before
    assert look("D-2026-002").result is not None


def test_without_its_tare_nothing_is_known_of_the_gain(technician):
    run = medal_run()
    cathode = run.cathodes.get(label="obverse")
    cathode.tare_g = 4.1
    cathode.save()

    strike(technician, "tare")

    assert look("D-2026-002").cathodes[0].gain is None
    assert Weighing.every.get(kind="tare").mass_g == 4.1


def test_of_a_drying_core_the_last_weighing_that_stands_is_its_mass(technician):
    mask_run(1512.0)
    shell = Shell.objects.get(item__number="S-11")
    shell.weighed_at = at("2026-03-30 10:00")
    shell.save()
    late = keep_weighing(weighing=Weighing(item=shell.item, kind="skin", at=at("2026-04-03 10:00"), mass_g=1905.7))
    assert Shell.objects.get(pk=shell.pk).gross_mass_g == 1905.7

    technician.post(reverse("strike", args=["weighing", late.pk]), {"reason": "digits turned round"})

    assert Shell.objects.get(pk=shell.pk).gross_mass_g == 1512.0
    page = technician.get(shell.get_absolute_url()).content.decode()
    assert "digits turned round" in page and "1905.7" in page


def test_a_reader_strikes_nothing_out(client):
    medal_run()
    client.force_login(make_user("reader"))

    assert strike(client, "shell").status_code == 403
