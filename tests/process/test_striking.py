"""A row that should never have been written is struck out: kept and shown, counted no more, and put back if need be."""

import pytest
from django.core.exceptions import ValidationError
from django.urls import reverse

from process.models import Event, Reading, Run, ThicknessPoint
from process.services.runs import add_event, add_reading
from process.summaries.copy_parts import part_of
from process.summaries.runs import summarise
from records.models import Measurement
from tests.factories import make_item, make_mould, make_party, make_run, make_shell, make_user
from tests.process.scenario_runs import at, event, reading

pytestmark = pytest.mark.django_db


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician", "pell"))
    return client


@pytest.fixture
def run():
    """1 A for ten hours; a slip of 2 A at three o'clock counts five hours of it twice."""
    run = make_run("D-2026-002", moulds=[make_mould()])
    event(run, "2026-02-16 09:00", "entry", 1.0)
    reading(run, "2026-02-16 14:00", 2.0)
    event(run, "2026-02-16 19:00", "stop", 0.0)
    return run


def strike(client, kind, row, reason="a reading of another run"):
    return client.post(reverse("strike", args=[kind, row.pk]), {"reason": reason})


def charge_of(run: Run) -> float:
    return summarise(Run.objects.with_sheet().get(pk=run.pk)).sheet.charge.until_ah


def test_a_struck_reading_counts_no_more_and_stays_on_the_sheet(technician, run):
    assert charge_of(run) == pytest.approx(15)  # 5 h · 1 A + 5 h · 2 A

    answer = strike(technician, "reading", Reading.objects.get())

    assert answer["Location"] == f"{run.get_absolute_url()}#sheet"
    assert charge_of(run) == pytest.approx(10)  # 10 h · 1 A
    page = technician.get(run.get_absolute_url()).content.decode()
    assert "a reading of another run" in page and "Struck out by Pell" in page
    assert Reading.history.first().history_change_reason == "struck out: a reading of another run"


def test_the_efficiency_changes_with_a_struck_reading(technician, run):
    make_shell(cathode=run.cathodes.get(), gross_mass_g=11.7)
    before = summarise(Run.objects.with_sheet().get(pk=run.pk)).result.efficiency.value

    strike(technician, "reading", Reading.objects.get())

    after = summarise(Run.objects.with_sheet().get(pk=run.pk)).result.efficiency.value
    assert after == pytest.approx(before * 1.5)  # the same mass by two thirds of the charge


def test_a_reading_put_back_counts_again(technician, run):
    row = Reading.objects.get()
    strike(technician, "reading", row)

    answer = technician.get(reverse("strike", args=["reading", row.pk]))
    assert "Put it back" in answer.content.decode()
    strike(technician, "reading", row, "it was this run after all")

    assert charge_of(run) == pytest.approx(15)


def test_striking_needs_a_reason_and_a_writer(technician, client, run):
    row = Reading.objects.get()

    assert strike(technician, "reading", row, " ").status_code == 422
    client.force_login(make_user("reader"))
    assert strike(client, "reading", row).status_code == 403
    assert Reading.objects.get() == row


def test_the_entry_stays_and_so_does_a_stop_after_which_a_shell_was_weighed(technician, run):
    make_shell(number="S-77", cathode=run.cathodes.get())
    entry, stop = Event.objects.order_by("at")

    assert "The run begins with this line" in strike(technician, "event", entry).content.decode()
    assert "S-77 was weighed after this stop" in strike(technician, "event", stop).content.decode()
    assert Event.objects.count() == 2


def test_a_stop_struck_out_lets_the_run_go_on_until_the_right_one(technician, run):
    strike(technician, "event", run.events.get(kind="stop"), "the other rail was stopped")

    assert run in Run.objects.going_on()
    add_event(run=run, at=at("2026-02-16 21:00"), kind="stop", cause="charge")
    assert charge_of(run) == pytest.approx(19)  # 5 h · 1 A + 7 h · 2 A
    struck = Event.every.get(struck_at__isnull=False)
    assert "The run has another stop" in strike(technician, "event", struck).content.decode()


def test_a_reading_is_not_put_back_beyond_the_stop(technician, run):
    stop, row = run.events.get(kind="stop"), Reading.objects.get()
    strike(technician, "reading", row)
    stop.at = at("2026-02-16 12:00")
    stop.save()

    assert "after the run stopped" in strike(technician, "reading", row).content.decode()


def test_a_struck_line_is_not_written_again_by_the_form_that_wrote_it(technician, run):
    row = Reading.objects.get()
    strike(technician, "reading", row)

    assert add_reading(run=run, at=row.at, current_a=2.0, token=row.token) == row
    assert not Reading.objects.exists()


def test_a_struck_point_is_not_the_thinnest(technician):
    shell = make_shell()
    for place, thickness in (("chin", 0.02), ("field", 0.41)):
        ThicknessPoint.objects.create(shell=shell, place=place, thickness_mm=thickness, method="micrometer")

    strike(technician, "thickness", ThicknessPoint.objects.get(place="chin"), "dirt under the anvil")

    assert part_of(shell).least.value == pytest.approx(0.41)
    page = technician.get(shell.get_absolute_url()).content.decode()
    assert "dirt under the anvil" in page and "chin" in page


def test_a_struck_measurement_stays_on_the_page_and_in_no_relation(technician):
    item = make_item()
    row = Measurement.objects.create(item=item, what="mass", mass_g=71.36, measured_by=make_party())

    strike(technician, "measurement", row, "another medal lay on the scales")

    assert not item.measurements.exists() and not Measurement.objects.exists()
    page = technician.get(item.get_absolute_url()).content.decode()
    assert "another medal lay on the scales" in page and "71.36" in page
    assert technician.get(reverse("measurement_edit", args=[row.pk])).status_code == 404


def test_rows_that_cannot_be_struck_are_not_found(technician):
    assert technician.get(reverse("strike", args=["commission", 1])).status_code == 404


def test_a_run_cannot_end_twice_by_putting_back(run):
    """The database itself counts only the lines that stand."""
    stop = run.events.get(kind="stop")

    with pytest.raises(ValidationError):
        Event(run=run, kind="stop", at=stop.at).full_clean()
