"""Size by generation on the page of a family: what was measured of each copy beside what its moulds foretold.

58.40 mm · (1 − 0.0008) = 58.353 mm is the worked figure of the product of linear changes, as any text on moulding
has it; the rest is reckoned by hand beside each check.
"""

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from records.family import family_of
from records.family_sizes import sizes_of
from records.models import Measurement
from tests.factories import make_copy, make_inspection, make_item, make_mark, make_user

pytestmark = pytest.mark.django_db


def measure(item, length_mm: float, kind: str = "measured") -> None:
    typed = {"length_mm": {"number": length_mm, "unit": "mm", "text": str(length_mm), "kind": kind}}
    Measurement.objects.create(item=item, what="diameter", length_mm=length_mm, as_typed=typed)


def lines(item) -> dict:
    return {line.step.item.number: line for line in sizes_of(family_of(item)).lines}


def test_a_copy_is_set_against_its_original_and_what_the_mould_foretold():
    medal = make_item("OVM.1931.0044")
    measure(medal, 58.40)
    make_inspection(make_copy("R.2026.1", model=medal), diameter_mm=58.34)

    (line,) = lines(medal).values()

    assert (line.step.against, line.generation) == ("OVM.1931.0044", 1)
    assert line.step.measured_pct == pytest.approx((58.34 / 58.40 - 1) * 100)
    assert line.step.foretold_pct == pytest.approx(-0.08)
    assert line.beyond_pct == pytest.approx((58.34 / 58.40 - 1) * 100 + 0.08)


def test_the_second_generation_is_foretold_from_its_model_and_both_are_set_against_the_first():
    medal = make_item("OVM.1931.0044")
    measure(medal, 58.40)
    first = make_copy("R.2026.1", model=medal)
    make_inspection(first, diameter_mm=58.35)
    make_inspection(make_copy("R.2026.2", model=first), diameter_mm=58.28)

    found = sizes_of(family_of(medal))

    second = found.lines[1].step
    assert second.against == "OVM.1931.0044"
    assert second.foretold_pct == pytest.approx((58.35 * (1 - 0.0008) / 58.40 - 1) * 100)
    assert found.sentences == [
        "First generation: 1 piece −0.09\u2009% against the first measured; foretold −0.08\u2009%.",
        "Second generation: 1 piece −0.21\u2009% against the first measured; foretold −0.17\u2009%.",
    ]


def test_a_quoted_size_is_never_taken_for_a_measured_one():
    medal = make_item("OVM.1931.0044")
    measure(medal, 58.40, kind="quoted")
    make_inspection(make_copy("R.2026.1", model=medal))

    assert lines(medal) == {}


def test_pieces_that_nobody_measured_are_left_out(client):
    client.force_login(make_user("reader"))
    make_copy("R.2026.1", model=make_item("OVM.1931.0044"))

    assert "have to be measured across" in client.get("/things/OVM.1931.0044/family/").content.decode()


def test_forty_copies_cost_the_page_no_more_questions_than_one(client):
    client.force_login(make_user("reader"))
    medal = make_item("OVM.1931.0044")
    measure(medal, 58.40)
    for number in range(1, 41):
        copy = make_copy(f"R.2026.{number}", model=medal)
        make_inspection(copy)
        make_mark(copy)

    with CaptureQueriesContext(connection) as asked:
        page = client.get("/things/OVM.1931.0044/family/").content.decode()

    assert "First generation: 40 pieces, on average −0.10\u2009%" in page
    assert len(asked) < 15
