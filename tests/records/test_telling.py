"""Telling a copy from its model. Signs and their weight are common practice, without a published source."""

import pytest

from records.telling import CONCLUSIONS, SIGNS, Value, compare, compare_words, conclude, told_apart


def mass(first: Value | None, second: Value | None):
    return compare("mass", first, second, ("a", "b"), "g")


def test_masses_that_differ_beyond_their_bounds_tell_apart():
    found = mass(Value(71.36, 0.02, 2), Value(64.71, 0.02, 2))

    assert found.answer == "apart"
    assert found.why == "They differ by 6.65 g; the bounds together are 0.04 g."


def test_difference_of_exactly_the_bounds_does_not_tell_apart():
    assert mass(Value(10.5, 0.25), Value(10.0, 0.25)).answer == "not apart"


def test_without_a_plus_minus_the_last_digit_is_the_bound():
    # 58.40 and 58.35 mm, two decimals: 0.05 against 0.01 + 0.01
    found = compare("diameter", Value(58.40, None, 2), Value(58.35, None, 2), ("", ""), "mm")

    assert found.answer == "apart"
    assert "last digit" in found.why


@pytest.mark.parametrize(
    ("first", "second"), [(None, Value(1)), (Value(1), None), (None, None)], ids=["first", "second", "both"]
)
def test_what_was_not_measured_tells_nothing(first, second):
    assert mass(first, second).answer == "not known"


def test_a_calculated_figure_never_tells_apart():
    found = mass(Value(71.36, 0.02, 2), Value(64.43, 0.02, 2, kind="calculated"))

    assert (found.answer, found.why) == ("not known", "One of the figures is calculated: measure it.")


def test_words_are_never_judged():
    assert compare_words("edge", "seam seen", "no seam").answer == "not known"
    assert compare_words("edge", "", "no seam").why == "Not recorded of one of them."


def test_sheet_names_what_tells_apart():
    lines = [mass(Value(71.36, 0.02, 2), Value(64.71, 0.02, 2)), compare_words("edge", "", "")]

    assert told_apart(lines) == "Told apart by mass."
    assert told_apart(lines[1:]).startswith("Nothing recorded tells these two apart")


@pytest.mark.parametrize(
    ("answers", "expected"),
    [
        ({"mark": "seen", "seam": "seen"}, "marked"),
        ({"seam": "seen"}, "electrotype"),
        ({"legend": "seen", "seam": "absent"}, "doubtful"),
        (dict.fromkeys(SIGNS, "absent"), "none_seen"),
        (dict.fromkeys(list(SIGNS)[:4], "absent"), "too_little"),
        ({}, "too_little"),
    ],
)
def test_an_examination_ends_in_one_sentence_of_the_closed_list(answers, expected):
    assert conclude(answers)[0].key == expected


def test_no_conclusion_says_that_a_piece_is_an_original():
    said = " ".join(each.sentence for each in CONCLUSIONS.values())

    assert said.count("original") == said.count("does not prove an original") == 1


def test_reasons_name_what_was_not_checked():
    reasons = conclude({"seam": "seen", "mass": "absent"})[1]

    assert reasons[0] == "Seen: a seam round the edge."
    assert reasons[2].startswith("Not checked: a mark that says copy")
