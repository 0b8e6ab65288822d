"""Readings pasted on a phone: what is wrong is named row by row before anything is kept; later the trail is read."""

from datetime import timedelta

import pytest
from django.utils import timezone

from process.models import Event, Reading
from process.seeding import ensure_ranges
from records import clock
from tests.factories import make_cathode, make_run


@pytest.fixture
def live():
    """In the bath for three hours, with its entry alone on the sheet."""
    ensure_ranges()
    run = make_run("D-1")
    make_cathode(run, face_area_dm2=0.578, total_area_dm2=0.804)
    at = clock.now().replace(second=0, microsecond=0) - timedelta(hours=3)
    Event.objects.create(run=run, kind=Event.Kind.ENTRY, at=at, current_a=0.24)
    return run


def row(hours_ago: float, *cells: str) -> str:
    at = timezone.localtime(clock.now().replace(second=0, microsecond=0) - timedelta(hours=hours_ago))
    return ";".join([f"{at:%d.%m.%Y %H:%M}", *cells])


def test_wrong_rows_are_named_mended_and_kept_and_a_correction_leaves_its_trail(phone, walk, live):
    person = walk(phone, "technician")
    rows = [row(4, "0,24"), row(2, "643", "0,5", "21"), row(1, "0,64", "0,5", "21")]
    person.go("/runs/D-1/readings/paste/")
    person.fill({"Rows: time, A, V, °C, Ah, note": "\n".join(rows)})
    person.press("Look at the rows")
    assert "This is before the run started" in person.text() and "643 mA would be usual" in person.text()

    rows = [row(2, "0,643", "0,5", "21"), rows[2]]
    person.fill({"Rows: time, A, V, °C, Ah, note": "\n".join(rows)})
    person.press("Look at the rows")
    person.press("Keep 2 readings")
    kept = Reading.objects.get(current_a=0.643)

    person.go(f"/readings/{kept.pk}/edit/")
    person.fill({"Current": "0,63", "Why it is corrected": "misread"})
    person.press("Keep the correction")
    person.follow("Changes of this run")
    assert "0.64\u2009A" in person.text() and "0.63\u2009A" in person.text() and "(misread)" in person.text()
