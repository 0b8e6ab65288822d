"""A gate stands in the way of work; what has happened all the same is recorded as it was."""

from datetime import timedelta

import pytest

from process.models import Event, Pull, Run
from records import clock
from records.models import UnmetGate
from tests.factories import make_analysis, make_bath, make_cathode, make_item, make_mould, make_report, make_run


@pytest.fixture
def run() -> Run:
    """Ready to start, but for the mould: its one pull is used."""
    original = make_item("OVM.1")
    make_report(original, "after", change="no_change")
    bath = make_bath("B-1")
    make_analysis(bath, sampled_at=clock.now() - timedelta(days=2))
    mould = make_mould(original, "M-1", pulls_allowed_count=1)
    Pull.objects.create(mould=mould, number_count=1, used_on=clock.today() - timedelta(days=9))
    run = make_run("D-1", bath=bath)
    make_cathode(run, mould=mould)
    return run


def test_a_used_up_mould_asks_for_a_concession_or_a_record_of_what_happened(phone, walk, run):
    technician = walk(phone, "technician")

    technician.go("/runs/D-1/start/")
    technician.fill({"Current": "0,12 A", "Note": "hung at nine"})
    technician.press("Start the run", refused=True)

    assert "M-1: 1 of 1 pulls used." in technician.said()
    assert "concession written by the conservator or the registrar" in technician.said()
    assert technician.field("Note").input_value() == "hung at nine"
    assert not Event.objects.exists()

    technician.press("Record what has happened")
    assert Event.objects.get().note == "hung at nine"
    assert UnmetGate.objects.get().sentence == "M-1: 1 of 1 pulls used."
    assert run.cathodes.get().pull.number_count == 2
