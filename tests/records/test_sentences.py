"""The sentence at the head of a copy's page says whose work it repeats."""

import pytest

from records.lineage import descent_of
from records.models import DescentLink
from records.sentences import sentence_of
from tests.factories import make_copy, make_item

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    "maker, told", [("Wouter Brandt", "(by Wouter Brandt, 1624)"), ("not known", "(maker not known, 1624)")]
)
def test_a_copy_names_its_original_with_maker_and_date(maker, told):
    copy = make_copy("R.2026.1", model=make_item("OVM.1931.0044", maker=maker))

    assert f"of OVM.1931.0044 {told}" in sentence_of(copy, descent_of(copy), [])


def test_a_copy_of_a_copy_names_the_original_behind_it():
    original = make_item("OVM.1931.0044", maker="Wouter Brandt")
    first = make_copy("R.2026.1", model=original)
    second = make_copy("R.2026.2", model=first)

    words = sentence_of(second, descent_of(second), [])

    assert "of R.2026.1, after the original OVM.1931.0044 (by Wouter Brandt, 1624)" in words


def test_a_historic_copy_says_what_is_known_of_an_original_that_is_not_here():
    copy = make_item("R.1889.7", kind="historic_copy")
    DescentLink.objects.create(source_words="the medal of 1702, untraced since 1811", target=copy, transfer="unknown")

    assert "after the medal of 1702, untraced since 1811" in sentence_of(copy, descent_of(copy), [])
