"""How long the tasks at the bench and at the object take, counted as in `test_time_budgets`, with the same budgets."""

from datetime import timedelta

import pytest

from process.models import Event, Reading, Run
from records import clock
from records.models import Finding, FindingMark
from tests.browser.test_condition_maps import at, examined
from tests.browser.test_time_budgets import Counting
from tests.browser.walking import Walker
from tests.factories import make_bath, make_cathode, make_mould, make_run

__all__ = ["examined"]  # a fixture


@pytest.fixture
def running() -> Run:
    run = make_run("D-1")
    make_cathode(run, label="obverse", mould=make_mould(number="M-1"))
    for hours, kind in ((6, "entry"), (5, "current")):
        Event.objects.create(run=run, at=clock.now() - timedelta(hours=hours), kind=kind, current_a=0.6)
    return run


def test_a_gloved_reading_takes_ten_seconds(phone, walk, running):
    """Time and person are filled in, the last current is offered: one figure, one button."""
    technician = Counting(walk(phone, "technician"))
    technician.go("/runs/D-1/")

    technician.fill({"Current": "0.61"})
    technician.press("Save")

    assert Reading.objects.get().current_a == 0.61
    assert technician.clicks == 1 and technician.fields == 1
    assert technician.seconds <= 10


def test_an_interruption_is_noted_in_half_a_minute(phone, walk, running):
    technician = Counting(walk(phone, "technician"))
    technician.go("/runs/D-1/")

    technician.follow("Enter an event")
    technician.follow("Current gone")
    technician.fill({"power failure": True, "stayed in the bath": True})
    technician.press("Save")

    assert Event.objects.get(kind="interruption").cause == "power"
    assert technician.clicks <= 3 and technician.fields == 2
    assert technician.seconds <= 30


def test_a_run_is_planned_in_two_minutes(page, walk):
    """From the mould: number, bath, metal, efficiency and density are proposed."""
    make_bath("B-1")
    make_mould(number="M-1")
    technician = Counting(walk(page, "technician"))
    technician.go("/runs/new/?mould=M-1")

    technician.fill({"Current density": "1.5", "Target mean thickness": "0.60"})
    technician.press("Keep the plan")
    technician.fill({"Label": "obverse", "Mould": "M-1", "Face area": "28.9 cm²",
                     "Whole area in the bath": "0.402"})  # fmt: skip
    technician.press("Add it")

    assert Run.objects.get().cathodes.get().mould.item.number == "M-1"
    assert technician.clicks <= 2 and technician.fields <= 6
    assert technician.seconds <= 120


def test_a_finding_with_its_place_on_the_photograph_takes_forty_seconds(page, axe, examined):
    report, _ = examined(page)
    conservator = Counting(Walker(page, axe))
    conservator.go(report.get_absolute_url())

    conservator.follow("Add a finding")
    conservator.fill({"What is seen": "edge knock", "Location": "rim, 4 h", "Extent": "1.5 mm",
                      "1 minor, cosmetic": True})  # fmt: skip
    conservator.press("Keep")
    conservator.follow(", finding 2")
    conservator.follow("Point on")
    page.locator(".layer-picture").click(position=at(page, 300, 200))
    conservator.clicks += 1
    conservator.press("Keep the drawing")

    assert FindingMark.objects.get().finding == Finding.objects.get(location="rim, 4 h")
    assert conservator.clicks <= 6 and conservator.fields <= 4
    assert conservator.seconds <= 40
