"""What nobody wrote down: a report says so, and claims nothing."""

import pytest

from tests.factories import make_copy
from tests.pdf.reading import text
from tests.process.test_process_report import concede, pdf

pytestmark = pytest.mark.django_db


def test_of_an_empty_sheet_nothing_is_claimed():
    """A sum over nothing is no charge of 0 Ah, and nobody saw that the current was never gone."""
    copy = make_copy("R.2026.9")
    concede(copy, "C-2026-10", gate="G6", reason="Marked later.")
    words = text(pdf(copy))
    assert "Nothing is written on the sheet" in words and "Charge passed not recorded" in words
    assert "never gone" not in words and "0.00 Ah" not in words and "0.0 h" not in words
    assert "is calculated from weighing." in words
