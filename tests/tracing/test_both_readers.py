"""The fast reader and the careful one say the same of every file, sound or not; the careful one is the measure."""

import random
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from process.tracing import Mapping, Samples, TraceRefused, read, sniff, survey
from process.tracing import reading as reading_module
from process.tracing.samples import span_of
from tests.tracing.files import LIMIT, WORDS, written

START = datetime(2026, 3, 13, 0, 0)
STAMPS = {
    "iso": lambda at: f"{at:%Y-%m-%dT%H:%M:%S}Z", "fraction": lambda at: f"{at:%Y-%m-%d %H:%M:%S}.50",
    "offset": lambda at: f"{at:%Y-%m-%dT%H:%M:%S}+01:00", "points": lambda at: f"{at:%d.%m.%Y %H:%M:%S}",
    "twelve hours": lambda at: f"{at:%m/%d/%Y %I:%M:%S %p}", "short": lambda at: f"{at.day}/3/26 {at.hour}:{at:%M}",
    "elapsed": lambda at: str((at - START).seconds), "epoch": lambda at: str(int(at.timestamp())),
}  # fmt: skip
CELLS = [
    "", "NaN", "inf", "1e400", "abc", '"0.42"', " 0.42 ", "0,42", "+0.42", "1_000", "0x10", ".5", "5.", "−0.42", "1E+2",
    "0.4 2", "null", "#N/A", "00.42", "0.42A", "٣", "1d0", "true", "1,000.5",
]  # fmt: skip
TIMES = [
    "", "epoch", "infinity", "-infinity", "now", "2026-02-30T00:00:00Z", "2026-03-13T24:00:00Z", "2026-03-13 24:00:01",
    "13.03.2026 24:00:00", "2026-03-13T00:00:60Z", "2026-03-13 00:00:00+01", "2026-03-13T00:00:00+02:00", "0_1",
    "9999-12-31T23:59:59Z", "2026-03-13T00:00:02", '"2026-03-13T00:00:02Z"', " 2026-03-13T00:00:02Z ", "00:00:02",
]  # fmt: skip
LINES = ["", "  ", "# a word", ",,,", "0.1", '"', "\x1a"]


def a_trace(chance: random.Random, style: str) -> str:
    """Thirty lines with up to two things that do not belong there."""
    mark = chance.choice(",;\t")
    comma = mark != "," and chance.random() < 0.5
    rows = []
    for number in range(30):
        figures = [f"{0.42 + number / 1e4:.4f}", "0.6180", f"{22 + number / 100:.2f}"]
        figures = [each.replace(".", ",") for each in figures] if comma else figures
        rows.append([STAMPS[style](START + timedelta(minutes=number)), *figures])
    for _ in range(chance.choice([0, 1, 1, 2])):
        _spoil(chance, chance.choice(rows))
    lines = [mark.join(["elapsed s" if style == "elapsed" else "time", "current_A", "cell_V", "bath_C"])]
    return "\n".join([*lines, *(mark.join(row) for row in rows)]) + chance.choice(["\n", ""])


def _spoil(chance: random.Random, row: list[str]) -> None:
    at = chance.randrange(len(row))
    how = chance.randrange(6)
    if how == 0:
        row[:] = [chance.choice(LINES)]
    elif how == 1:
        row.append(chance.choice(["", " ", "0.1"]))
    elif how == 2:
        row.pop()
    else:
        row[at] = chance.choice(TIMES if at == 0 else CELLS)


def answered(path: Path) -> Mapping:
    found = sniff(survey(path, LIMIT), WORDS).mapping
    return replace(
        found, zone=found.zone or "UTC", starts_at=found.starts_at or "2026-03-13T00:00:00Z",
        date_order=found.date_order or "dmy", elapsed_unit=found.elapsed_unit or "s",
        current_column=1 if found.current_column is None else found.current_column, current_unit="A",
    )  # fmt: skip


def said_of(path: Path, mapping: Mapping, *, careful: bool) -> Samples | int | str:
    """The samples, or the line that is refused."""
    try:
        return read(survey(path, LIMIT), mapping, careful=careful)
    except TraceRefused as refused:
        return refused.line or str(refused)


def listed(found: Samples) -> list:
    return [
        found.times_s.tolist(), found.currents_a.tolist(), found.blank_lines, found.cut_off, found.line_of(0),
        found.line_of(found.count - 1), span_of(found.voltages_v), span_of(found.temperatures_degc),
    ]  # fmt: skip


@given(st.randoms(use_true_random=False), st.sampled_from(sorted(STAMPS)))
@settings(max_examples=300, deadline=None, derandomize=True)
def test_both_read_the_same_or_refuse_the_same_line(tmp_path_factory, chance, style):
    path = written(tmp_path_factory.mktemp("trace"), a_trace(chance, style))
    try:
        mapping = answered(path)
    except TraceRefused:
        return  # no table is found in it: there is nothing to be read
    fast, careful = (said_of(path, mapping, careful=each) for each in (False, True))
    same = listed(fast) == listed(careful) if isinstance(fast, Samples) and isinstance(careful, Samples) else None
    assert same or fast == careful, (fast, careful)


@pytest.mark.parametrize("style", STAMPS)
def test_the_fast_reader_takes_every_sound_style(tmp_path, monkeypatch, style):
    """Else the test above would compare the careful reader with itself."""
    path = written(tmp_path, a_trace(_Sound(), style))
    monkeypatch.setattr(reading_module, "read_carefully", None)
    assert read(survey(path, LIMIT), answered(path)).count == 30


class _Sound(random.Random):
    """Spoils nothing."""

    def choice(self, options):
        return options[0]


TOLD = {
    "a thousand with an underscore": ("2026-03-13T00:01:00Z,1_000\n", "Line 3: “1_000” is no figure"),
    "a word for an instant": ("infinity,0.42\n", "Line 3: “infinity” is no date"),
    "an offset where the others have a fraction": ("2026-03-13T00:01:0+0Z,0.42\n", "Line 3: .* is no date"),
    "a figure beyond all measure": ("2026-03-13T00:01:00Z,1e10\n", "Line 3: “1e10” is beyond all measure"),
    "a year beyond": ("3026-03-13T00:01:00Z,0.42\n", "Line 3: the time lies before 1900 or after 2199"),
}


@pytest.mark.parametrize("what", TOLD)
def test_what_the_fast_reader_would_have_taken_is_told_with_its_line(tmp_path, what):
    line, said = TOLD[what]
    after = "".join(f"2026-03-13T00:{minute:02}:00Z,0.42\n" for minute in range(2, 30))
    path = written(tmp_path, f"time,current_A\n2026-03-13T00:00:00Z,0.42\n{line}{after}")
    with pytest.raises(TraceRefused, match=said):
        read(survey(path, LIMIT), answered(path))


def test_the_end_of_a_day_may_be_written_as_24_o_clock(tmp_path):
    """ISO 8601-1:2019/Amd 1:2022 (from memory): 24:00:00 ends the day that 00:00:00 of the next begins."""
    text = "time,current_A\n2026-03-12T23:59:00Z,0.42\n2026-03-12T24:00:00Z,0.42\n2026-03-13T00:01:00Z,0.42\n"
    path = written(tmp_path, text)
    for careful in (False, True):
        assert np.diff(read(survey(path, LIMIT), answered(path), careful=careful).times_s).tolist() == [60, 60]


def test_a_sign_of_parting_at_the_end_of_a_line_holds_nothing(tmp_path):
    text = "time,current_A\n2026-03-13T00:00:00Z,0.42\n2026-03-13T00:01:00Z,0.43,\n2026-03-13T00:02:00Z,0.44\n"
    path = written(tmp_path, text)
    for careful in (False, True):
        assert read(survey(path, LIMIT), answered(path), careful=careful).currents_a.tolist() == [0.42, 0.43, 0.44]


def test_underscores_far_below_are_seen(tmp_path):
    rows = [f"{START + timedelta(seconds=i):%Y-%m-%dT%H:%M:%S}Z,0.42" for i in range(20_000)]
    rows[19_000] = rows[19_000].replace("0.42", "4_2")
    path = written(tmp_path, "time,current_A\n" + "\n".join(rows) + "\n")
    with pytest.raises(TraceRefused, match="Line 19002: “4_2” is no figure"):
        read(survey(path, LIMIT), answered(path))


def test_a_character_of_another_encoding_is_told_with_its_line(tmp_path):
    """A mark of UTF-8 at the beginning, and further down what is none."""
    rows = [f"2026-03-13T00:{minute:02}:00Z,0.42" for minute in range(30)]
    text = ("\ufefftime,current_A\n" + "\n".join(rows) + "\n").encode().replace(b"00:20:00Z", b"00:20:00\xb0")
    path = written(tmp_path, text)
    with pytest.raises(TraceRefused, match="Line 22: holds a character of another encoding"):
        read(survey(path, LIMIT), answered(path))
