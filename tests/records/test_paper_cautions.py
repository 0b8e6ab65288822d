"""What a paper warns of by the composition of a thing, and how it names a copy on every page."""

import pytest

from records.models import Item
from records.reports.composition import LEAD, cautions_of
from records.sentences import named
from records.services import papers
from tests.factories import make_item, make_party, make_report
from tests.pdf.reading import pages, text

pytestmark = pytest.mark.django_db


def issued(report) -> bytes:
    document = papers.issue(kind="condition-report", subject=report, party=make_party(), role="conservator")
    return papers.path_of(document).read_bytes()


@pytest.mark.parametrize(
    ("materials", "expected"),
    [
        ("copper shells on tin-lead solder", [LEAD]),
        ("Lead, cast", [LEAD]),
        ("copper, filled with tin-rich alloy, no lead", []),
        ("copper, lead-free filling", []),
        ("leaded bronze, cast; brown patina", []),
        ("", []),
    ],
)
def test_lead_that_the_materials_name_is_warned_of(materials, expected):
    assert cautions_of(Item(materials=materials)) == expected


def test_the_condition_report_of_a_copy_warns_of_lead_and_says_copy_on_each_page():
    copy = make_item("R.1889.7", kind="historic_copy", materials="copper shells on tin-lead solder")
    content = issued(make_report(copy, number="CR-2026-05"))
    assert "Caution Lead inside." in text(content).replace("▲ ", "")
    assert all(page.count("CR-2026-05, historic copy R.1889.7 ·") == 2 for page in pages(content))


def test_an_original_carries_no_such_word():
    original = make_item("OVM.1931.0044", materials="leaded bronze")
    content = issued(make_report(original, number="CR-2026-01"))
    assert "Lead inside" not in text(content) and named(original, "CR-2026-01") == "CR-2026-01"
    assert all("copy OVM" not in page for page in pages(content))


def test_a_plaster_core_is_named_as_part_of_a_copy():
    """A waterproofed cast of a plaster mask looks like the mask."""
    assert named(make_item("P-2026-01", kind="core")) == "part of a copy P-2026-01"
