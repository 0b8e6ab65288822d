"""Each row on money and hallmarks, at its figures and on both sides of them.

Sources: Reg. (EC) 2182/2004 as amended by 46/2009, Annex II; MünzG § 11; Forgery and Counterfeiting Act 1981;
Hallmarking Act 1973 (2007 text); 16 CFR 304. Exceptions of Art. 3 and how they combine: from memory.
"""

import pytest

from records.marking import MarkFacts, PieceFacts, judge, load_rules
from records.marking.questions import CHECKS

COPY = MarkFacts("COPY", "obverse", "field", "mould_borne", "incuse", 2.0, 6.5, 0.3, True, True, True)
RULES = {rule.id: rule for rule in load_rules()}
# Every row of the table of rules that the register was made from.
ROWS = [
    "us-copy.scope", "us-copy.text", "us-copy.face", "us-copy.height", "us-copy.width", "us-copy.depth", "eu-2182.use",
    "eu-2182.band", "eu-2182.near", "eu-2182.metal", "eu-2182.exc", "de-muenzg-11", "uk-fca-1981", "uk-hallmark-1",
    "uk-hallmark-5", "uk-hallmark-6", "uk-hallmark-ex", "ca-cc-448", "au-1981", "icom-4.7",
]  # fmt: skip


def outcome(rule_id, mark=COPY, *, alone=False, **facts):
    rules = [RULES[rule_id]] if alone else load_rules()
    found = judge(mark, PieceFacts(**{"object_class": "coin"} | facts), rules)
    return next((verdict.outcome for verdict in found if verdict.rule.id == rule_id), "silent")


def test_every_row_is_there_with_citation_version_and_evidence():
    assert set(ROWS) <= RULES.keys()
    for rule in RULES.values():
        assert rule.jurisdiction and rule.citation and rule.text_version and rule.evidence in rule.source


@pytest.mark.parametrize(
    ("longest_mm", "edge_pct", "expected"),
    [
        (18.99, 9.0, "pass"), (19.00, 9.0, "fail"), (28.00, 9.0, "fail"), (28.01, 9.0, "pass"),
        (20.00, 6.99, "pass"), (20.00, 7.00, "fail"), (20.00, 12.00, "fail"), (20.00, 12.01, "pass"),
        (31.20, None, "pass"), (20.00, None, "unknown"), (None, None, "unknown"),
    ],
)  # fmt: skip
def test_the_band_is_19_to_28_mm_with_an_edge_of_7_to_12_per_cent(longest_mm, edge_pct, expected):
    edge_mm = edge_pct and longest_mm * edge_pct / 100
    assert outcome("eu-2182.band", alone=True, longest_mm=longest_mm, edge_mm=edge_mm) == expected


NEAR = [(19.45, 20.05, 1.63, 2.23), (21.95, 22.55, 1.84, 2.44), (22.95, 23.55, 2.03, 2.63), (23.95, 24.55, 2.08, 2.68),
        (25.45, 26.05, 1.90, 2.50)]  # fmt: skip


@pytest.mark.parametrize(("low", "high", "edge_low", "edge_high"), NEAR)
def test_the_finer_table_catches_its_corners_and_nothing_beyond(low, high, edge_low, edge_high):
    def near(longest_mm, edge_mm):
        return outcome("eu-2182.near", longest_mm=longest_mm, edge_mm=edge_mm)

    assert {near(d, e) for d in (low, high) for e in (edge_low, edge_high)} == {"fail"}
    beyond = [(low - 0.01, edge_low), (high + 0.01, edge_high), (low, edge_low - 0.01), (high, edge_high + 0.01)]
    assert {near(d, e) for d, e in beyond} == {"pass"}


@pytest.mark.parametrize(
    ("longest_mm", "pct", "moment", "expected"),
    [
        (19.00, 14, None, "fail"), (21.94, 18, None, "fail"), (21.94, 18.1, None, "pass"), (21.94, 13.9, None, "pass"),
        (21.94, 5, 3.0, "pass"), (21.95, 5, 3.0, "fail"), (21.95, 5, 0.9, "pass"), (21.95, 5, 7.1, "pass"),
        (21.95, 5, None, "unknown"), (24.55, 4.5, 1.0, "fail"), (24.55, 6.5, 7.0, "fail"), (24.55, 6.6, 3.0, "pass"),
        (24.56, 14.9, None, "unknown"), (24.56, 15, None, "fail"), (26.05, 18, None, "fail"),
        (26.06, 18, None, "pass"), (28.00, 15, None, "fail"), (28.01, 15, None, "pass"), (25.0, 100, None, "pass"),
        (18.99, 16, None, "pass"), (25.0, None, None, "unknown"),
    ],
)  # fmt: skip
def test_metals_of_euro_coins_are_known_by_their_conductivity(longest_mm, pct, moment, expected):
    assert outcome("eu-2182.metal", longest_mm=longest_mm, conductivity_pct=pct, moment_uvs_cm=moment) == expected


@pytest.mark.parametrize(
    ("facts", "expected"),
    [
        ({"metal": "gold", "fineness_permille": 375}, "pass"), ({"metal": "gold", "fineness_permille": 374}, "fail"),
        ({"metal": "silver", "fineness_permille": 500}, "pass"),
        ({"metal": "silver", "fineness_permille": 499}, "fail"),
        ({"metal": "platinum", "fineness_permille": 850}, "pass"),
        ({"metal": "platinum", "fineness_permille": 849}, "fail"),
        ({"metal": "copper", "hole_mm": 6.0}, "fail"), ({"metal": "copper", "hole_mm": 6.1}, "pass"),
        ({"metal": "copper", "corner_count": 6}, "pass"), ({"metal": "copper", "corner_count": 7}, "fail"),
        ({"metal": "silver"}, "unknown"), ({}, "unknown"),
    ],
)  # fmt: skip
def test_the_exceptions_of_article_3(facts, expected):
    assert outcome("eu-2182.exc", **facts) == expected


def test_a_size_in_the_band_is_excused_by_an_exception_or_by_both_finer_tables():
    inside = {"longest_mm": 21.0, "edge_mm": 2.0}
    assert outcome("eu-2182.band", **inside, metal="copper", conductivity_pct=16) == "fail"
    assert outcome("eu-2182.band", **inside, metal="silver", fineness_permille=925) == "pass"
    assert outcome("eu-2182.band", **inside, metal="copper", conductivity_pct=100) == "pass"
    assert outcome("eu-2182.band", longest_mm=20.0, edge_mm=2.0, metal="copper", conductivity_pct=100) == "fail"


def test_outside_the_band_no_exception_is_asked_for():
    assert outcome("eu-2182.exc", longest_mm=58.4, edge_mm=3.0, metal="copper") == "pass"
    assert outcome("eu-2182.exc", longest_mm=21.0, edge_mm=2.0, metal="copper") == "fail"


@pytest.mark.parametrize(
    ("words", "expected"),
    [("10 EURO", "fail"), ("Euro cent", "fail"), ("5 €", "fail"), ("EUROPA 1571", "pass"), ("", "unknown")],
)
def test_no_euro_in_the_words(words, expected):
    assert outcome("eu-2182.use", inscription=words) == expected


@pytest.mark.parametrize(
    ("text", "year", "expected"),
    [("COPY", 1900, "pass"), ("Kopie", 1900, "pass"), ("H.W.", 1849, "pass"), ("H.W.", 1850, "fail"),
     ("H.W.", None, "unknown"), ("", 1900, "unknown")],
)  # fmt: skip
def test_withdrawn_coins_need_the_word_or_an_original_from_before_1850(text, year, expected):
    assert outcome("de-muenzg-11", MarkFacts(text), original_year=year) == expected


@pytest.mark.parametrize("rule_id", ["uk-fca-1981", "ca-cc-448"])
def test_current_money_is_warned_about_whatever_the_mark(rule_id):
    found = [outcome(rule_id, is_current=current) for current in (True, False, None)]
    assert found == ["fail", "pass", "unknown"]
    assert outcome(rule_id, object_class="medal", is_current=True) == "silent"


def test_one_sided_shells_of_current_coins_are_named():
    verdict = next(
        v for v in judge(COPY, PieceFacts("coin", one_sided=True, is_current=True)) if v.rule.id == "uk-fca-1981"
    )
    assert "one-sided piece, current money" in verdict.sentence


def test_a_likeness_to_a_coin_is_never_passed_by_figures():
    assert [outcome("au-1981", is_current=current) for current in (True, False)] == ["fail", "unknown"]


@pytest.mark.parametrize(
    ("plated", "largest", "expected"),
    [(12.0, 12.0, "pass"), (11.9, 12.0, "fail"), (None, 12.0, "fail"), (None, None, "unknown")],
)
def test_plated_is_lettered_as_large_as_the_rest(plated, largest, expected):
    assert outcome("uk-hallmark-1", skin="silver", plated_pt=plated, largest_pt=largest) == expected
    assert outcome("uk-hallmark-1") == "pass"


@pytest.mark.parametrize(
    ("facts", "expected"),
    [
        ({"hallmarked": True, "skin": "silver", "coating_um": 2.0}, "pass"),
        ({"hallmarked": True, "skin": "silver", "coating_um": 2.1}, "fail"),
        ({"hallmarked": True, "skin": "silver"}, "unknown"),
        ({"hallmarked": True, "suppressed": True, "coating_um": 10.0}, "pass"),
        ({"hallmarked": False, "coating_um": 10.0}, "pass"), ({}, "unknown"),
    ],
)  # fmt: skip
def test_a_hallmarked_piece_is_coated_with_2_um_at_most(facts, expected):
    assert outcome("uk-hallmark-5", **facts) == expected


@pytest.mark.parametrize(
    ("facts", "expected"),
    [
        ({"hallmarked": False}, "pass"), ({"hallmarked": True}, "unknown"), ({}, "unknown"),
        ({"hallmarked": True, "suppressed": False}, "fail"), ({"hallmarked": True, "suppressed": True}, "fail"),
        ({"hallmarked": True, "suppressed": True, "suppression_photographed": True}, "pass"),
    ],
)  # fmt: skip
def test_no_hallmark_is_carried_over(facts, expected):
    assert outcome("uk-hallmark-6", **facts) == expected


@pytest.mark.parametrize(
    ("metal", "mass_g", "expected"),
    [("gold", 0.99, "pass"), ("gold", 1.0, "fail"), ("silver", 4.99, "pass"), ("silver", 5.0, "fail"),
     ("platinum", 0.49, "pass"), ("platinum", 0.5, "fail"), ("silver", None, "unknown"), ("copper", 1.0, "silent")],
)  # fmt: skip
def test_exempt_weights(metal, mass_g, expected):
    assert outcome("uk-hallmark-ex", metal=metal, mass_g=mass_g) == expected


def test_every_rule_asks_a_question_that_is_answered():
    assert {rule.check for rule in RULES.values()} <= CHECKS.keys()
