"""A reading while the run is live, on a phone of 360 px, with gloves: large targets, one glance, one slip mended."""

from datetime import timedelta

import pytest

from process.models import Event, Reading
from process.seeding import ensure_ranges
from records import clock
from tests.factories import make_cathode, make_run

LEAST_PX = 48
TARGETS = "main input:not([type=hidden], [type=checkbox]), main select, main button"


@pytest.fixture
def live():
    """In the bath for two hours, with nine readings on the sheet: the last line lies far down."""
    ensure_ranges()
    run, now = make_run("D-1"), clock.now()
    make_cathode(run, face_area_dm2=0.578, total_area_dm2=0.804)
    Event.objects.create(run=run, kind=Event.Kind.ENTRY, at=now - timedelta(hours=2), current_a=0.24)
    for number in range(9):
        Reading.objects.create(run=run, at=now - timedelta(minutes=100 - 10 * number), current_a=0.64, voltage_v=0.5)
    return run


def small_targets(phone) -> list[str]:
    """What a thumb would miss, by name."""
    return [
        target.get_attribute("name") or target.inner_text()
        for target in phone.locator(TARGETS).all()
        if target.is_visible() and min(target.bounding_box()[side] for side in ("width", "height")) < LEAST_PX
    ]


def in_sight(phone, selector: str) -> bool:
    box, height = phone.locator(selector).bounding_box(), phone.viewport_size["height"]
    foot = phone.locator("form.sheet-entry").bounding_box()["y"]
    return box["y"] >= 0 and box["y"] + box["height"] <= min(height, foot)


def test_a_slip_is_asked_about_at_the_top_and_mended(phone, walk, live):
    person = walk(phone, "technician")
    person.go("/runs/D-1/readings/new/")
    assert small_targets(phone) == []
    assert person.field("Current").input_value() == "0.64"

    person.fill({"Current": "12,1 A"})
    person.press("Save the reading", refused=True)
    tick, current = phone.get_by_label("It is so"), person.field("Current")
    assert tick.bounding_box()["y"] < current.bounding_box()["y"]
    assert current.input_value() == "12,1 A" and Reading.objects.count() == 9

    person.fill({"Current": "1,21 A"})
    person.press("Save the reading")
    kept = Reading.objects.get(current_a=1.21)
    assert in_sight(phone, f"#reading-{kept.pk}")


def test_the_row_at_the_foot_takes_a_reading_in_two_touches(phone, walk, live):
    person = walk(phone, "technician")
    person.go("/runs/D-1/#sheet")
    assert small_targets(phone) == []

    phone.locator("form.sheet-entry [name=current_a]").fill("0,65")
    phone.locator("form.sheet-entry button.filled").tap()
    phone.wait_for_url("**/runs/D-1/**#reading-*")

    kept = Reading.objects.get(current_a=0.65)
    assert kept.voltage_v is None  # folded away: what nobody looked at is not written
    assert in_sight(phone, f"#reading-{kept.pk}")
