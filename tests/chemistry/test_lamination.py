"""The rule for interruptions (rows of common practice, from memory) and the bend test of a coupon."""

import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from process.chemistry.errors import ChemistryError
from process.chemistry.lamination import HANDLINGS, Risk, RiskRow, Stoppage, judge_stoppage, passes_bend_test

FILE = Path(__file__).parents[2] / "process" / "risk_rules.toml"
SAID = {"yes": True, "no": False}


def _row(table: dict) -> RiskRow:
    asked = {"time_known": "time_is_known", "activated": "activated", "contact_lost": "contact_lost",
             "returned_by_itself": "returned_by_itself"}  # fmt: skip
    plain = {key: value for key, value in table.items() if key not in {*asked, "risk"}}
    answers = {asked[key]: SAID[value] for key, value in table.items() if key in asked}
    return RiskRow(Risk[table["risk"].upper()], **plain, **answers)


ROWS = [_row(table) for table in tomllib.loads(FILE.read_text())["rule"]]


def stopped(seconds: float, handling: str | None = "immersed", **more) -> Stoppage:
    answers = {"activated": True, "returned_by_itself": False, "contact_lost": False} | more
    return Stoppage(seconds, seconds, handling, **answers)


@pytest.mark.parametrize(
    ("stoppage", "risk"),
    [
        (stopped(30, activated=False), Risk.NOTE),
        (stopped(60, activated=False), Risk.LOW),
        (stopped(300), Risk.LOW),
        (stopped(600), Risk.LOW),
        (stopped(601), Risk.MEDIUM),
        (stopped(11400), Risk.MEDIUM),
        (stopped(11400, activated=False), Risk.HIGH),  # more than ten minutes asks for activation
        (stopped(300, activated=False, returned_by_itself=True), Risk.HIGH),
        (stopped(1500, "wet", out_of_bath_s=100), Risk.MEDIUM),
        (stopped(1500, "wet", out_of_bath_s=120), Risk.HIGH),
        (stopped(1500, "wet"), Risk.HIGH),  # nobody noted how long it was out
        (stopped(30, "dried"), Risk.HIGH),
        (stopped(30, "touched"), Risk.HIGH),
    ],
)
def test_the_rows_that_a_register_begins_with(stoppage, risk):
    assert judge_stoppage(stoppage, ROWS).risk == risk


def test_the_outage_of_the_coin_is_a_high_risk():
    """Demo run D-2026-003: 3 h 10 min in the bath, back by itself, nothing done."""
    verdict = judge_stoppage(stopped(11400, activated=False, returned_by_itself=True), ROWS)
    assert verdict.risk == Risk.HIGH
    assert [row.words for row in verdict.rows] == ["The current came back by itself, without activation"]


def test_the_most_severe_row_that_matches_wins():
    rows = [RiskRow(Risk.NOTE), RiskRow(Risk.MEDIUM, words="this"), RiskRow(Risk.LOW)]
    assert judge_stoppage(stopped(30), rows).rows[0].words == "this"


def test_where_no_row_matches_the_risk_is_high():
    verdict = judge_stoppage(stopped(30), [RiskRow(Risk.NOTE, longer_than_s=60)])
    assert (verdict.risk, verdict.rows) == (Risk.HIGH, ())


def test_a_contact_lost_for_an_unknown_time_is_high():
    known, unknown = stopped(300, contact_lost=True), Stoppage(60, 300, "immersed", None, True, False, True)
    assert judge_stoppage(known, ROWS).risk == Risk.LOW
    assert judge_stoppage(unknown, ROWS).risk == Risk.HIGH


def test_a_length_between_two_bounds_counts_as_the_worst_of_them():
    between = Stoppage(30, 700, "immersed", None, True, False, False)
    assert judge_stoppage(between, ROWS).risk == Risk.MEDIUM


@given(
    seconds=st.floats(0, 1e6),
    handling=st.sampled_from([*HANDLINGS, None]),
    activated=st.sampled_from([True, False, None]),
    returned=st.sampled_from([True, False, None]),
)
def test_an_answer_never_makes_it_worse_than_silence(seconds, handling, activated, returned):
    answered = stopped(seconds, handling, activated=activated, returned_by_itself=returned)
    silent = Stoppage(seconds, seconds)
    assert judge_stoppage(answered, ROWS).risk <= judge_stoppage(silent, ROWS).risk


@pytest.mark.parametrize(("shortest", "longest"), [(-1, 5), (5, 1), (0, float("inf")), (float("nan"), 1)])
def test_an_impossible_length_is_refused(shortest, longest):
    with pytest.raises(ChemistryError, match="stoppage"):
        judge_stoppage(Stoppage(shortest, longest), ROWS)


def test_an_unknown_handling_is_refused():
    with pytest.raises(ChemistryError, match="handling"):
        judge_stoppage(Stoppage(1, 1, "thrown"), ROWS)


@pytest.mark.parametrize(
    ("bends", "layers", "passes"), [(14, False, True), (6, False, True), (5, False, False), (14, True, False)]
)
def test_a_coupon_passes_when_it_bends_often_and_shows_no_layers(bends, layers, passes):
    assert passes_bend_test(bends, layers) is passes


def test_bends_are_counted_from_none():
    with pytest.raises(ChemistryError, match="bends"):
        passes_bend_test(-1, False)
