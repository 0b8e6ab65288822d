"""The second language of a label, and letters that are read from where a visitor stands."""

from dataclasses import replace

import pytest

from records.wording import LabelDraft, check
from records.wording.reading import reading_size, x_height_mm
from tests.records.wording_pieces import MEDAL

DRAFT = LabelDraft("Electrotype copy, 2026", "after a medal, 1624\nOriginal OVM.1931.0044", "R.2026.1")


def _codes(heading, text=""):
    return {c.code for c in check(replace(DRAFT, second_heading=heading, second_text=text), MEDAL)}


@pytest.mark.parametrize(
    ("heading", "text", "code"),
    [
        ("Medaille, 2026", "", "second.kind"), ("Galvanoplastische Kopie", "", "second.date"),
        ("Kopie, nach einer Medaille von 1624, 2026", "", "second.date"),
        ("Kopie, 2026", "Wort " * 99, "second.words"),
    ],
)  # fmt: skip
def test_the_second_language_hides_the_copy_no_more_than_the_first(heading, text, code):
    assert code in _codes(heading, text)


@pytest.mark.parametrize("heading", ["", "Galvanoplastische Kopie, 2026", "Copie galvanoplastique, 2026"])
def test_a_good_second_heading_and_none_at_all_are_passed(heading):
    assert not any(
        code.startswith("second") for code in _codes(heading, "Kupfer. Original von 1624." if heading else "")
    )


@pytest.mark.parametrize(("distance_m", "light", "x_mm"), [(1.0, "good", 4.0), (1.0, "poor", 6.0), (0.6, "good", 2.4)])
def test_letters_grow_with_the_distance(distance_m, light, x_mm):
    """AS 1319 chart: 4 mm of lower-case height a metre in good light, 6 mm in poor."""
    assert x_height_mm(distance_m, light) == pytest.approx(x_mm)
    assert reading_size(distance_m, light) * 0.486 * 25.4 / 72 == pytest.approx(x_mm)
