"""Marks held against rules. Figures: 16 CFR 304.6 (see rules.toml); proportions D/6, D/2, t/2 from memory."""

import math
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from records.marking import (
    ADVICE,
    MarkFacts,
    PieceFacts,
    advise,
    best_mark,
    judge,
    load_rules,
    punch_risk,
    sufficient,
)

# The COPY let into the coin's obverse mould: 2.0 mm high, 6.5 mm wide, 0.30 mm deep.
COIN_MARK = MarkFacts(
    "COPY",
    "obverse",
    "field",
    "mould_borne",
    "incuse",
    2.0,
    6.5,
    0.30,
    sans_serif=True,
    legible=True,
    photographed=True,
)
COIN = PieceFacts("coin", longest_mm=31.19, thickness_mm=2.0)


def outcome(rule_id: str, mark: MarkFacts, piece: PieceFacts = COIN) -> str:
    return next(verdict.outcome for verdict in judge(mark, piece) if verdict.rule.id == rule_id)


def test_the_coins_mark_passes_every_rule_about_marks_and_the_piece_is_asked_for_what_is_not_recorded():
    verdicts = judge(COIN_MARK, COIN)
    about_marks = [v for v in verdicts if v.rule.id.startswith(("museum", "icom", "us-copy"))]
    assert {verdict.outcome for verdict in about_marks} == {"pass"}
    assert {verdict.outcome for verdict in verdicts} == {"pass", "unknown"}
    assert len(verdicts) == len(load_rules())
    assert sufficient(verdicts)


def test_letters_that_need_a_lens_fail_the_museums_policy_and_unsaid_ones_stay_open():
    assert outcome("museum.legible", replace(COIN_MARK, legible=False)) == "fail"
    assert outcome("museum.legible", replace(COIN_MARK, legible=None)) == "unknown"


@pytest.mark.parametrize(
    ("longest_mm", "height_mm", "expected"),
    [
        (12.0, 2.0, "pass"),  # at 12 mm the figure and the sixth meet
        (12.0, 1.99, "fail"),
        (11.4, 1.9, "pass"),  # 11.4 / 6 = 1.9
        (11.4, 1.89, "fail"),
        (12.6, 2.0, "pass"),  # a sixth would be 2.1: the plain figure is the smaller
        (12.6, 1.99, "fail"),
        (6.0, 1.0, "pass"),
        (58.34, 1.9, "fail"),
    ],
)
def test_height_is_2_mm_or_a_sixth(longest_mm, height_mm, expected):
    assert (
        outcome("us-copy.height", replace(COIN_MARK, height_mm=height_mm), PieceFacts("coin", longest_mm)) == expected
    )


@pytest.mark.parametrize(
    ("longest_mm", "width_mm", "expected"),
    [
        (12.0, 6.0, "pass"),
        (12.0, 5.99, "fail"),
        (11.0, 5.5, "pass"),
        (11.0, 5.49, "fail"),
        (13.0, 6.0, "pass"),
    ],
)
def test_width_is_6_mm_or_a_half(longest_mm, width_mm, expected):
    assert outcome("us-copy.width", replace(COIN_MARK, width_mm=width_mm), PieceFacts("coin", longest_mm)) == expected


@pytest.mark.parametrize(
    ("thickness_mm", "depth_mm", "expected"),
    [
        (0.6, 0.30, "pass"),
        (0.6, 0.29, "fail"),
        (0.5, 0.25, "pass"),
        (0.5, 0.24, "fail"),
        (3.03, 0.29, "fail"),
    ],
)
def test_depth_is_3_tenths_or_half_of_the_thickness(thickness_mm, depth_mm, expected):
    piece = PieceFacts("coin", 31.19, thickness_mm)
    assert outcome("us-copy.depth", replace(COIN_MARK, depth_mm=depth_mm), piece) == expected


def test_without_a_diameter_only_the_plain_figure_can_pass():
    piece = PieceFacts("coin")
    assert outcome("us-copy.height", COIN_MARK, piece) == "pass"
    assert outcome("us-copy.height", replace(COIN_MARK, height_mm=1.5), piece) == "unknown"
    assert outcome("us-copy.height", replace(COIN_MARK, height_mm=None), piece) == "unknown"


def test_raised_letters_have_no_depth_to_judge_and_fail_the_face_rule():
    raised = replace(COIN_MARK, technique="raised")
    assert "us-copy.depth" not in {verdict.rule.id for verdict in judge(raised, COIN)}
    assert outcome("us-copy.face", raised) == "fail"
    assert sufficient(judge(raised, COIN))


def test_what_cannot_be_incused_may_be_imprinted():
    paper = PieceFacts("paper money", can_be_incused=False)
    assert outcome("us-copy.face", replace(COIN_MARK, technique="flat"), paper) == "pass"
    assert outcome("us-copy.face", replace(COIN_MARK, technique="flat"), COIN) == "fail"
    assert outcome("us-copy.face", replace(COIN_MARK, sans_serif=None), COIN) == "unknown"


@pytest.mark.parametrize(
    ("text", "expected"),
    [("COPY", "pass"), ("OVM 2026 COPY", "pass"), ("COPY OF COPY 2026", "pass"), ("Copy", "fail"),
     ("COPYRIGHT", "fail"), ("KOPIE", "fail"), ("", "unknown")],
)  # fmt: skip
def test_the_word_stands_alone_in_capitals(text, expected):
    assert outcome("us-copy.text", replace(COIN_MARK, text=text)) == expected


@pytest.mark.parametrize(
    ("change", "expected"),
    [
        ({"photographed": False}, False),
        ({"method": "ink"}, False),
        ({"method": ""}, False),
        ({"face": "edge", "position": ""}, False),
        ({"face": "reverse", "position": "edge"}, False),
        ({"face": "rim", "position": ""}, True),
        ({"face": "reverse", "position": "rim"}, True),
        ({"face": "back", "position": "rim", "method": "plate"}, True),
        ({"text": "H.W."}, False),
        ({"text": "Kopie 2026"}, True),
        ({"height_mm": None, "width_mm": None, "depth_mm": None}, True),
    ],
)
def test_the_gate_asks_for_a_permanent_photographed_mark_that_says_copy(change, expected):
    assert sufficient(judge(replace(COIN_MARK, **change), COIN)) is expected


def test_no_verdict_opens_no_gate():
    assert sufficient([]) is False
    assert best_mark([], COIN) is None


def test_an_edge_mark_is_rescued_by_a_second_mark_on_the_face():
    edge = replace(COIN_MARK, face="edge")
    mark, verdicts = best_mark([edge, COIN_MARK], COIN)
    assert mark is COIN_MARK
    assert sufficient(verdicts)


def test_coin_rules_are_silent_on_a_mask():
    asked = {verdict.rule.id for verdict in judge(COIN_MARK, PieceFacts("mask"))}
    assert "icom-4.7" in asked
    assert not any(rule_id.startswith("us-copy") for rule_id in asked)


def test_a_verdict_says_what_is_required_and_found_and_how_sure_we_are():
    verdict = next(
        v for v in judge(replace(COIN_MARK, height_mm=1.0), PieceFacts("coin", 9.0)) if v.rule.id == "us-copy.height"
    )
    assert (verdict.required, verdict.found) == ("at least 1.50 mm (1/6 of the longest chord)", "1.00 mm")
    assert verdict.sentence.endswith("The proportion is quoted from memory; read the rule’s text.")
    icom = next(v for v in judge(COIN_MARK, COIN) if v.rule.id == "icom-4.7")
    assert "from memory" in icom.sentence
    assert "not legal advice" in ADVICE


def test_no_sentence_calls_a_mark_legal():
    for verdict in [*judge(COIN_MARK, COIN), *judge(MarkFacts(), PieceFacts())]:
        assert "legal" not in verdict.sentence


def test_every_rule_has_citation_version_and_evidence():
    for rule in load_rules():
        assert rule.citation
        assert rule.text_version
        assert rule.evidence in ("seen", "from memory")
        assert rule.citation in rule.source


def test_a_museum_adds_a_rule_as_data(tmp_path: Path):
    path = tmp_path / "own.toml"
    path.write_text(
        '[[rule]]\nid = "own.big"\njurisdiction = "here"\ncitation = "house rule 9"\ntext_version = "1"\n'
        'evidence = "seen"\nchecked_on = 2026-01-05\ncheck = "height"\nat_least_mm = 4.0\n'
        'asks = "Big letters."\n'
    )
    rules = load_rules(path)
    assert rules[0].checked_on == date(2026, 1, 5)
    assert [verdict.outcome for verdict in judge(COIN_MARK, COIN, rules)] == ["fail"]


@pytest.mark.parametrize("line", ['evidence = "hearsay"', 'evidence = "seen"\nhight = 3'])
def test_a_rule_that_cannot_be_understood_is_refused(tmp_path: Path, line):
    path = tmp_path / "own.toml"
    path.write_text(f'[[rule]]\nid = "x"\n{line}\n')
    with pytest.raises(ValueError, match="Rule x"):
        load_rules(path)


@pytest.mark.parametrize("size", [0, -1.0, math.inf, math.nan])
def test_impossible_sizes_are_refused(size):
    with pytest.raises(ValueError, match="height_mm"):
        MarkFacts(height_mm=size)
    with pytest.raises(ValueError, match="longest_mm"):
        PieceFacts(longest_mm=size)


def test_a_punch_breaks_a_thin_unbacked_shell():
    # Common practice: 0.3 mm deep in an unbacked 0.4 mm shell breaks it.
    risk = punch_risk(0.3, 0.4, backed=False)
    assert risk.severity == "refuse"
    assert "Let the letters into the mould" in risk.sentence
    assert punch_risk(0.3, 0.4, backed=True) is None
    assert punch_risk(0.3, 0.6, backed=False) is None


def test_advice_before_the_mould_names_the_smallest_letters():
    note, risk = advise(PieceFacts("coin", longest_mm=9.0, thickness_mm=3.0), wall_mm=0.4)
    assert "1.50 mm high" in note.sentence
    assert "4.50 mm wide" in note.sentence
    assert "0.30 mm deep" in note.sentence
    assert risk.code == "punch.breaks"
