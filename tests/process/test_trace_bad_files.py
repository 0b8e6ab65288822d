"""Files that are no traces, one by one through the page: what is wrong, in which line, and nothing is left behind."""

import pytest
from django.urls import reverse

from process.models import Trace
from tests.factories import make_user
from tests.process.trace_runs import coin_run, decisions_of, mapping_answers, send
from tests.tracing.files import SCENARIO

pytestmark = pytest.mark.django_db
HEAD = "timestamp,current_A\n"
ROWS = [f"2026-03-02T14:{minute:02d}:00Z,0.42{minute % 10}" for minute in range(30)]
WIDE = ",".join(["a"] * 1_000_000) + "\n" + ",".join(["1"] * 1_000_000) + "\n"


def text(*rows: str) -> bytes:
    return (HEAD + "\n".join(rows) + "\n").encode()


BAD = {
    "a million columns": (WIDE.encode(), "Line 1: has more than 20000 characters"),
    "empty": (b"", "empty"),
    "only line ends": (b"\n" * 50, "No table of samples"),
    "binary": (bytes(range(256)) * 20, "not text"),
    "a workbook": (b"PK\x03\x04" + bytes(200), "save the sheet as CSV"),
    "one row": (text(ROWS[0]), "at least two"),
    "no current": (b"timestamp,state\n2026-03-02T14:00:00Z,on\n2026-03-02T14:01:00Z,on\n", "a time and a current"),
    "NaN": (text(*ROWS[:9], "2026-03-02T14:09:00Z,NaN", *ROWS[10:]), "Line 11: “NaN”"),
    "infinity": (text(*ROWS[:9], "2026-03-02T14:09:00Z,-inf", *ROWS[10:]), "Line 11: “-inf”"),
    "mixed offsets": (
        text(*ROWS[:9], "2026-03-02T17:09:00+03:00,0.42", *ROWS[10:]), "Line 12: the offset from UTC changes"
    ),
    "back and back again": (text(*ROWS[:9], *ROWS[:9], *ROWS[:9], *ROWS[:9]), "Line 11: the time goes back by 8 min"),
    "cut off": (text(*ROWS[:9])[:-13], "Line 10: the last line was cut off"),
}  # fmt: skip


@pytest.fixture
def bench(client, settings, tmp_path):
    settings.MEDIA_ROOT = tmp_path
    client.force_login(make_user("technician"))
    return client


@pytest.mark.parametrize("name", BAD)
def test_it_is_refused_and_nothing_is_left(bench, tmp_path, name):
    content, said = BAD[name]
    page = send(bench, coin_run(), content)
    assert page.status_code == 422
    assert said.casefold() in page.text.casefold(), page.context["form"].errors
    assert not Trace.objects.exists() and not [path for path in tmp_path.rglob("*") if path.is_file()]


def test_one_over_the_limit_is_told_the_limit(bench, settings):
    settings.TRACE_LIMIT_BYTES = 1000
    page = send(bench, coin_run())
    assert "more than the 0.0 MB that are taken" in page.text and not Trace.objects.exists()


def test_a_trace_of_another_day_is_said_to_miss_the_run(bench):
    content = SCENARIO.read_bytes().replace(b"2026-03-0", b"2026-04-0")
    send(bench, coin_run(), content)
    trace = Trace.objects.get()
    bench.post(reverse("trace_mapping", args=[trace.pk]), mapping_answers())
    trace.refresh_from_db()
    bench.post(reverse("trace_decide", args=[trace.pk]), decisions_of(trace, clock="keep"))
    page = bench.get(trace.get_absolute_url()).text
    assert "samples falls in the run as decided so far" in page and "which zone the logger" in page


def test_the_sign_between_columns_is_corrected_by_hand(bench):
    rows = "".join(f"{at},5;{at},25\n" for at in range(9))
    send(bench, coin_run(), ("elapsed s;I [A]\n" + rows).encode())
    trace = Trace.objects.get()
    where = reverse("trace_mapping", args=[trace.pk])
    assert bench.get(where).context["form"].kept.delimiter == trace.mapping["delimiter"]
    page = bench.get(where, {"parted": ";"})
    assert page.context["proposal"].columns == ("elapsed s", "I [A]") and "Part them so" in page.text
    refused = bench.get(where, {"parted": "\t"}, follow=True)
    assert "parted by tab" in refused.text and refused.status_code == 200
    assert bench.get(where, {"parted": "nonsense"}).status_code == 200
