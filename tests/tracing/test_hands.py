"""Hands of loggers that part columns by spaces, by a sign that misleads, or that stop within a figure."""

import pytest

from process.tracing import Context, TraceRefused, argue, evaluate, sniff, survey
from tests.tracing.files import LIMIT, SCENARIO, WORDS, mapped, sampled, written

ROWS = [row.split(",") for row in SCENARIO.read_text().splitlines()]
HEAD = "timestamp,current_A\n"
MINUTES = [f"2026-03-02T14:0{minute}:00Z,0.42{minute}" for minute in range(6)]


def aligned() -> str:
    """Columns set beneath each other, as some power units print them."""
    head = "# t [s]    U [V]   I [A]\n"
    return head + "".join(f"{60 * at:8d}   0.62   {0.42 + at / 1000:7.3f}\n" for at in range(20))


@pytest.mark.parametrize("careful", [False, True])
def test_aligned_columns_are_read(tmp_path, careful):
    path = written(tmp_path, aligned())
    proposal = sniff(survey(path, LIMIT), WORDS)
    assert proposal.columns == ("t [s]", "U [V]", "I [A]")
    samples = sampled(path, careful=careful, starts_at="2026-03-02T14:00:00+00:00")
    assert samples.count == 20 and samples.currents_a[-1] == pytest.approx(0.439)
    assert samples.times_s[-1] - samples.times_s[0] == 19 * 60 and samples.line_of(0) == 2


def test_spaces_between_date_time_and_figures(tmp_path):
    rows = "".join(f"{row[0][:10]} {row[0][11:19]}  {row[1]}   {row[2]} {row[3]}\n" for row in ROWS[1:])
    path = written(tmp_path, "date time cell_V current_A bath_C\n" + rows)
    samples = sampled(path, zone="UTC")
    assert samples.count == len(ROWS) - 1 and samples.currents_a[0] == pytest.approx(0.08)


def test_a_fault_among_spaces_is_named_with_its_line(tmp_path):
    text = aligned().replace("0.425", "oops!", 1)
    with pytest.raises(TraceRefused, match=r"Line 7: “oops!”"):
        sampled(written(tmp_path, text), starts_at="2026-03-02T14:00:00+00:00")


def test_a_person_names_the_sign_where_the_look_misleads(tmp_path):
    path = written(tmp_path, "time;I [A]\n" + "".join(f"{at},5;{at},25\n" for at in range(9)))
    by_hand = sniff(survey(path, LIMIT), WORDS, delimiter=";")
    assert (by_hand.mapping.delimiter, by_hand.mapping.decimal, by_hand.columns) == (";", ",", ("time", "I [A]"))
    with pytest.raises(TraceRefused, match="parted by tab"):
        sniff(survey(path, LIMIT), WORDS, delimiter="\t")


@pytest.mark.parametrize(("last", "asked"), [("0.4", True), ("0.425", False)])
def test_a_last_figure_that_is_cut_off_is_asked_about(tmp_path, last, asked):
    text = HEAD + "\n".join([*MINUTES[:5], f"2026-03-02T14:05:00Z,{last}"])
    path = written(tmp_path, text)
    case, findings = argue(sampled(path), Context())
    found = [each for each in findings if each.kind == "cut-off"]
    assert bool(found) == asked
    if asked:
        assert found[0].sentence.startswith("Line 7, the last, has no line end") and not found[0].default
        left_out = evaluate(case, findings, {"cut-off": "exclude"})
        assert left_out.sample_count == 5


def test_a_last_line_that_is_ended_is_believed(tmp_path):
    path = written(tmp_path, HEAD + "\n".join([*MINUTES[:5], "2026-03-02T14:05:00Z,0.4"]) + "\n")
    assert [each.kind for each in argue(sampled(path), Context())[1]] == []


def test_the_headings_still_say_what_they_said(tmp_path):
    assert mapped(written(tmp_path, SCENARIO.read_text())).headers == tuple(ROWS[0])
