"""What nobody wrote down, and what is no original: a report says so, and claims nothing else."""

import pytest

from records.models import Item
from tests.factories import make_copy
from tests.pdf.reading import text
from tests.process.scenario_runs import medal_run
from tests.process.test_process_report import concede, copy_of, pdf

pytestmark = pytest.mark.django_db


def test_of_an_empty_sheet_nothing_is_claimed():
    """A sum over nothing is no charge of 0 Ah, and nobody saw that the current was never gone."""
    copy = make_copy("R.2026.9")
    concede(copy, "C-2026-10", gate="G6", reason="Marked later.")
    words = text(pdf(copy))
    assert "Nothing is written on the sheet" in words and "Charge passed not recorded" in words
    assert "never gone" not in words and "0.00 Ah" not in words and "0.0 h" not in words
    assert "is calculated from weighing." in words


@pytest.mark.parametrize(("kind", "word"), [("original", "original"), ("historic_copy", "model")])
def test_a_copy_that_served_as_the_model_is_never_called_the_original(kind, word):
    copy = copy_of(medal_run())
    model = Item.objects.get(number="OVM.1931.0044")
    model.kind = kind
    model.save()
    words = text(pdf(copy))
    assert f"The {word} before and after moulding" in words and f"Compared with the {word}" in words
    assert "Time on the original" not in words
