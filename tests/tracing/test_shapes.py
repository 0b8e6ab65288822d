"""The hands that loggers write in: each is found, and read to the same four samples."""

import pytest

from process.tracing import AskFirst, sniff, survey
from tests.tracing.files import LIMIT, SCENARIO, WORDS, hostile, mapped, sampled, written

# 14:00 to 14:03 UTC, the last with 0.44 A.
START = 1_772_460_000.0
WANTED = ([START + 60 * i for i in range(4)], [0.41, 0.42, 0.43, 0.44])
A = ("0.41", "0.42", "0.43", "0.44")


def table(head: str, row: str) -> str:
    return head + "".join(
        row.format(i=i, s=60 * i, h=i / 60, a=A[i], ma=A[i][2:] + "0", c=A[i].replace(".", ",")) for i in range(4)
    )


SHAPES = {
    "offset": (table("time,current (A)\n", "2026-03-02T15:0{i}:00+01:00,{a}\n"), {}),
    "offset without colon": (table("time,current (A)\n", "2026-03-02 15:0{i}:00 +0100,{a}\n"), {}),
    "preamble and units beneath": (
        table("Logger 7\nSerial;12\n\nZeit;Strom\n;mA\n", "02.03.2026 15:0{i}:00;{ma}\n"), {"zone": "Europe/Berlin"},
    ),
    "month first, by a late day": (
        table("time\tcurrent_A\n", "3/2/2026 2:0{i} PM\t{a}\n"), {"zone": "UTC", "date_order": "mdy"},
    ),
    "two columns": (table("Date|Time|I/A\n", "2026-03-02|14:0{i}:00|{c}\n"), {"zone": "UTC"}),
    "elapsed seconds": (table("elapsed [s];I [A]\n", "{s};{c}\n"), {"starts_at": "2026-03-02T14:00:00+00:00"}),
    "elapsed, days and clock": (
        table("elapsed,current A\n", "0 00:0{i}:00,{a}\n"), {"starts_at": "2026-03-02T15:00:00+01:00"},
    ),
    "elapsed hours": (table("elapsed (h),current A\n", "{h:.10f},{a}\n"), {"starts_at": "2026-03-02T14:00:00Z"}),
    "seconds since 1970": (
        "time,current A\n" + "".join(f"{START + 60 * i:.0f},{A[i]}\n" for i in range(4)), {},
    ),
    "seconds since 1970 under a name that nobody knows": (
        "moment,current A\n" + "".join(f"{START + 60 * i:.0f},{A[i]}\n" for i in range(4)), {},
    ),
    "no headers": (
        table("", "2026-03-02T14:0{i}:00Z,{a}\n"), {"current_column": 1, "current_unit": "A"},
    ),
}  # fmt: skip


@pytest.mark.parametrize("careful", [False, True])
@pytest.mark.parametrize("name", SHAPES)
def test_it_is_read_to_the_same_samples(tmp_path, name, careful):
    text, answers = SHAPES[name]
    samples = sampled(written(tmp_path, text), careful=careful, **answers)
    assert samples.times_s.tolist() == pytest.approx(WANTED[0])
    assert samples.currents_a.tolist() == pytest.approx(WANTED[1])


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "latin-1"])
def test_every_encoding_is_found(tmp_path, encoding):
    text = table("time;current (A);T (°C)\n", "2026-03-02T14:0{i}:00Z;{a};21\n")
    assert sampled(written(tmp_path, text, encoding)).currents_a.tolist() == WANTED[1]


def test_fahrenheit_and_millivolts_become_degrees_and_volts(tmp_path):
    text = table("time,I (A),U (mV),T (°F)\n", "2026-03-02T14:0{i}:00Z,{a},620,71.6\n")
    samples = sampled(written(tmp_path, text))
    assert samples.voltages_v.tolist() == pytest.approx([0.62] * 4)
    assert samples.temperatures_degc.tolist() == pytest.approx([22.0] * 4)


def test_ambiguous_dates_are_asked_about(tmp_path):
    path = written(tmp_path, table("time,current A\n", "03/02/2026 14:0{i}:00,{a}\n"))
    assert sniff(survey(path, LIMIT), WORDS).asks("date_order")
    with pytest.raises(AskFirst, match="day or the month"):
        sampled(path, zone="UTC")


def test_negative_currents_are_asked_about(tmp_path):
    path = written(tmp_path, table("time,current A\n", "2026-03-02T14:0{i}:00Z,-{a}\n"))
    assert sniff(survey(path, LIMIT), WORDS).asks("sign")
    assert mapped(path).sign == -1


def local(*clock: str) -> str:
    return "Zeit;I [A]\n" + "".join(f"2026-{at};0,5\n" for at in clock)


def test_the_doubled_hour_is_told_apart_by_the_order_of_the_lines(tmp_path):
    text = local(
        "10-25 01:30:00", "10-25 02:00:00", "10-25 02:30:00", "10-25 02:00:00", "10-25 02:30:00", "10-25 03:00:00"
    )
    samples = sampled(written(tmp_path, text), zone="Europe/Berlin")
    assert (samples.times_s[1:] - samples.times_s[:-1]).tolist() == [1800] * 5


def test_a_doubled_hour_that_cannot_be_told_is_asked(tmp_path):
    path = written(tmp_path, local("10-25 01:30:00", "10-25 02:30:00", "10-25 03:30:00"))
    with pytest.raises(AskFirst) as question:
        sampled(path, zone="Europe/Berlin")
    assert question.value.field == "doubled_hour"
    assert sampled(path, zone="Europe/Berlin", doubled_hour="second").times_s[1] % 86400 == 5400


def test_the_missing_hour_shows_a_clock_that_was_not_changed(tmp_path):
    path = written(tmp_path, local("03-29 01:30:00", "03-29 02:30:00", "03-29 03:30:00"))
    with pytest.raises(AskFirst, match=r"did not exist.*UTC\+01:00"):
        sampled(path, zone="Europe/Berlin")
    steady = sampled(path, zone="UTC+01:00").times_s
    assert (steady[1:] - steady[:-1]).tolist() == [3600, 3600]


def test_seventeen_hours_over_the_change_are_seventeen(tmp_path):
    """SCENARIO 12, fault 9: wall clocks say 18."""
    samples = sampled(written(tmp_path, local("03-28 18:00:00", "03-29 12:00:00")), zone="Europe/Berlin")
    assert samples.times_s[1] - samples.times_s[0] == 17 * 3600


@pytest.mark.parametrize(("text", "answers"), [
    (SCENARIO.read_text(), {}),
    (hostile(), {"zone": "Europe/Berlin"}),
    (SHAPES["offset"][0], {}),
    (SHAPES["elapsed seconds"][0], {"starts_at": "2026-03-02T14:00:00Z"}),
])  # fmt: skip
def test_a_sound_file_needs_no_careful_reader(tmp_path, monkeypatch, text, answers):
    """The careful one gives the same samples, but takes many times as long."""
    path = written(tmp_path, text)
    slow = sampled(path, careful=True, **answers)
    monkeypatch.setattr("process.tracing.reading.read_carefully", None)
    fast = sampled(path, **answers)
    assert fast.times_s.tolist() == slow.times_s.tolist()
    assert fast.currents_a.tolist() == pytest.approx(slow.currents_a.tolist(), rel=1e-12)
