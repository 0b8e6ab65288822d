"""Files that are no traces: a sentence that says what is wrong and in which line."""

import re

import pytest

from process.tracing import AskFirst, TraceRefused, argue, sniff, survey
from tests.tracing.files import LIMIT, RUN, SCENARIO, WORDS, mapped, sampled, written

HEAD = "timestamp,current_A\n"


def refusal(folder, text, encoding="utf-8", limit=LIMIT, **answers) -> str:
    path = written(folder, text, encoding)
    with pytest.raises(TraceRefused) as caught:
        survey(path, limit)
        argue(sampled(path, **answers), RUN, elapsed=mapped(path, **answers).time_kind == "elapsed")
    return str(caught.value)


def lines(*rows: str, end: str = "\n") -> str:
    return HEAD + "\n".join(rows) + end


FOUR = tuple(f"2026-03-02T14:0{minute}:00Z,0.42" for minute in range(4))
BAD = {
    "empty": ("", "the file is empty"),
    "one row": (lines(FOUR[0]), "one? sample|1 sample"),
    "words": ("nothing to see\nhere at all\n", "no table of samples"),
    "no current": ("timestamp,state\n2026-03-02T14:00:00Z,on\n2026-03-02T14:01:00Z,on\n", "no (table|column|current)"),
    "NaN": (lines(*FOUR, "2026-03-02T14:04:00Z,NaN", "2026-03-02T14:05:00Z,0.42"), "Line 6: “NaN”"),
    "infinity": (lines(*FOUR, "2026-03-02T14:04:00Z,inf"), "Line 6: “inf”"),
    "beyond floats": (lines(*FOUR, "2026-03-02T14:04:00Z,1e999"), "Line 6"),
    "an offset is missing": (lines(*FOUR, "2026-03-02T14:04:00,0.42", FOUR[3]), "Line 6: the time has no offset"),
    "offsets mixed": (
        lines(*FOUR, "2026-03-02T17:04:00+03:00,0.42", "2026-03-02T14:05:00Z,0.42"),
        "Line 7: the offset from UTC changes back and forth",
    ),
    "a year that was not": (lines(*(row.replace("2026", "0000") for row in FOUR)), "before 1900 or after 2199"),
    "cut off": (lines(*FOUR, "2026-03-02T14:0", end=""), "Line 6: the last line was cut off"),
    "a line too short": (lines(*FOUR[:2], "2026-03-02T14:02:30Z", *FOUR[2:]), "Line 4: has 1 column where"),
    "no such day": (lines(*FOUR, "2026-02-30T14:04:00Z,0.42"), "Line 6.*no day or time that exists"),
    "decimal comma among points": (lines(*FOUR[:3], '2026-03-02T14:03:00Z,"0,42"'), "Line 5.*decimal point"),
}


@pytest.mark.parametrize("name", BAD)
def test_it_is_refused_with_its_line(tmp_path, name):
    text, said = BAD[name]
    message = refusal(tmp_path, text)
    assert re.search(said, message, re.IGNORECASE), message


def test_times_that_run_backwards_are_refused(tmp_path):
    rows = [
        f"2026-03-02T{hour:02d}:{minute:02d}:00Z,0.42"
        for hour in (9, 10, 11, 12, 1, 2, 1, 2, 1, 2)
        for minute in (0, 30)
    ]
    assert "Line 10: the time goes back by 11 h 30 min" in refusal(tmp_path, lines(*rows))


def test_a_counter_that_starts_again_is_refused(tmp_path):
    text = "elapsed s,current_A\n" + "".join(f"{at},0.4\n" for at in (0, 60, 120, 0, 60, 120))
    message = refusal(tmp_path, text, starts_at="2026-03-02T14:00:00+00:00")
    assert message.startswith("Line 5: the time goes back by 120 s") or "2 min" in message


def test_binary_and_workbooks_are_refused(tmp_path):
    assert "not text" in refusal(tmp_path, bytes(range(256)) * 8)
    assert "workbook" in refusal(tmp_path, b"PK\x03\x04" + b"\x00" * 100)


def test_a_million_columns_are_refused_at_once(tmp_path):
    assert "Line 1" in refusal(tmp_path, ",".join(["a"] * 1_000_000) + "\n" + ",".join(["1"] * 1_000_000) + "\n")
    assert "columns" in refusal(tmp_path, ",".join(["a"] * 300) + "\n" + "2026-03-02T14:00:00Z" + ",1" * 299 + "\n")


def test_over_the_limit_is_refused(tmp_path):
    assert "more than the 0.0 MB" in refusal(tmp_path, SCENARIO.read_text(), limit=1000)


def test_lines_without_a_current_are_left_out_and_named(tmp_path):
    samples = sampled(written(tmp_path, lines(*FOUR, "2026-03-02T14:04:00Z,", "2026-03-02T14:05:00Z,0.42")))
    assert (samples.count, samples.blank_lines) == (5, (6,))
    assert samples.line_of(4) == 7


def test_an_unknown_header_is_asked_for_and_not_guessed(tmp_path):
    path = written(tmp_path, "timestamp,quux\n2026-03-02T14:00:00Z,420\n2026-03-02T14:01:00Z,421\n")
    proposal = sniff(survey(path, LIMIT), WORDS)
    assert {question.field for question in proposal.questions} == {"current_column", "current_unit"}
    with pytest.raises(AskFirst, match="which column is the current"):
        sampled(path)
