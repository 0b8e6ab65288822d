"""One description, two drawings: the same ticks, an accessible SVG, gaps that stay gaps."""

import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from reportlab.graphics.shapes import String

from records.pdf.charts import Axis, Chart, Event, Panel, Series, Target, svg
from records.pdf.charts.as_drawing import drawing
from records.pdf.charts.curves import gaps, hatch, pieces
from records.pdf.charts.layout import lay_out
from records.pdf.charts.scales import clock_name, nice_step, time_ticks, value_scale
from records.pdf.charts.shapes import Line, Text
from tests.pdf.specimen_run import run_chart

SVG = "{http://www.w3.org/2000/svg}"
BERLIN = ZoneInfo("Europe/Berlin")
T0 = datetime(2026, 3, 28, 17, tzinfo=UTC)


def hours(*values: float | None) -> tuple[tuple[datetime, float | None], ...]:
    return tuple((T0 + timedelta(hours=n), value) for n, value in enumerate(values))


def test_the_svg_is_titled_described_and_without_fixed_size_or_style() -> None:
    root = ET.fromstring(svg(run_chart(), "run2"))
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == "run2-title run2-desc"
    assert root.get("viewBox") and root.get("width") is None and root.get("height") is None
    assert root.find(f"{SVG}title").text == "Run D-2026-002, current and grown thickness"  # type: ignore[union-attr]
    assert "33 hours" in root.find(f"{SVG}desc").text  # type: ignore[union-attr,operator]
    assert all("style" not in element.attrib for element in root.iter())


def test_typed_words_are_escaped_in_the_svg() -> None:
    chart = replace(
        run_chart(), title="<b>&\"'", events=(Event(T0, "<script>&"),), start=T0, end=T0 + timedelta(hours=1)
    )
    root = ET.fromstring(svg(chart, 'x"y'))
    assert root.find(f"{SVG}title").text == "<b>&\"'"  # type: ignore[union-attr]
    assert any(element.text == "<script>&" for element in root.iter(f"{SVG}text"))


def test_page_and_paper_show_the_same_words() -> None:
    root = ET.fromstring(svg(run_chart(), "a"))
    on_page = sorted(element.text or "" for element in root.iter(f"{SVG}text"))
    on_paper = sorted(s.text for s in drawing(run_chart(), 480).contents if isinstance(s, String))
    assert on_page == on_paper
    assert {"0.25", "1.25", "18:00", "17 Feb", "local time, UTC+1", "grown, calculated"} <= set(on_page)


def test_measured_is_solid_and_calculated_dashed_and_hatched() -> None:
    roles = [m.role for m in lay_out(run_chart()).marks if isinstance(m, Line)]
    assert roles.count("measured") == 1
    assert roles.count("calculated") == 1
    assert roles.count("hatch") > 20
    dashed = re.search(r'class="chart-calculated"[^>]*', svg(run_chart(), "a"))
    assert dashed and "stroke-dasharray" in dashed.group()


def test_a_gap_is_drawn_as_a_gap() -> None:
    series = Series("sheet", hours(1, 1, None, 2, 2), step=True)
    assert [len(piece) for piece in pieces(series)] == [4, 3]
    assert gaps(series) == [(T0 + timedelta(hours=2), T0 + timedelta(hours=3))]
    chart = Chart("t", "d", (Panel(Axis("Current", "A"), (series,)),), UTC)
    assert sum(isinstance(m, Line) and m.role == "measured" for m in lay_out(chart).marks) == 2


def test_a_step_holds_its_value_until_the_next_entry() -> None:
    (piece,) = pieces(Series("sheet", hours(1, 3), step=True))
    assert [value for _, value in piece] == [1, 1, 3]


def test_the_axis_shows_the_local_clock_through_a_clock_change() -> None:
    """29 March 2026, 01:00 UTC: clocks in Central Europe go from 02:00 to 03:00 (EU Directive 2000/84/EC)."""
    end = datetime(2026, 3, 29, 10, tzinfo=UTC)
    ticks = time_ticks(T0, end, BERLIN, most=20)
    clocks = " ".join(tick.clock for tick in ticks)
    assert clocks.startswith("18:00 19:00 20:00 21:00 22:00 23:00 00:00 01:00 03:00 04:00 05:00 06:00")
    assert [t.day for t in ticks if t.day] == ["28 Mar", "29 Mar"]
    assert clock_name(T0, end, BERLIN) == "local time, UTC+1 then UTC+2"


def test_equal_times_are_equal_widths_through_a_clock_change() -> None:
    chart = Chart("t", "d", (Panel(Axis("A", "A"), (Series("s", hours(*[1.0] * 18)),)),), BERLIN)
    (line,) = [m for m in lay_out(chart).marks if isinstance(m, Line) and m.role == "measured"]
    steps = [b[0] - a[0] for a, b in zip(line.places, line.places[1:], strict=False)]
    assert steps == pytest.approx([steps[0]] * 17)


def test_ticks_are_round_numbers() -> None:
    assert [nice_step(span, 5) for span in (1, 1.21, 6, 0.6, 250)] == pytest.approx([0.2, 0.25, 2, 0.2, 50])
    scale = value_scale(Panel(Axis("Mean thickness", "mm"), (Series("s", hours(0, 0.58)),), (Target("t", 0.6),)))
    assert [scale.label(t) for t in scale.ticks] == ["0.0", "0.2", "0.4", "0.6", "0.8"]


def test_negative_values_have_a_true_minus_sign() -> None:
    scale = value_scale(Panel(Axis("Potential", "V"), (Series("s", hours(-0.4, 0.2)),)))
    assert "−0.4" in [scale.label(t) for t in scale.ticks]


def test_event_labels_do_not_lie_over_each_other() -> None:
    events = tuple(Event(T0 + timedelta(minutes=n), f"something that happened, number {n}") for n in range(6))
    chart = Chart("t", "d", (Panel(Axis("Current", "A"), (Series("s", hours(1, 1, 1)),)),), UTC, events)
    labels = [m for m in lay_out(chart).marks if isinstance(m, Text) and m.role == "event-label"]
    assert len({label.y for label in labels}) == 6


def test_names_stay_on_the_chart_when_a_line_ends_at_its_highest_place_under_a_target() -> None:
    grown = Series("thickness", hours(0.0, 0.02, 0.1, 0.2, 0.3, 0.4, 0.5, 0.56), calculated=True)
    panel = Panel(Axis("Mean thickness", "mm", low=0.0), (grown,), (Target("target 0.60 mm", 0.6),))
    chart = Chart("t", "d", (panel,), UTC, (Event(T0 + timedelta(hours=7), "stop"),))
    for width in (680.0, 330.0):
        layout = lay_out(chart, width)
        names = [m for m in layout.marks if isinstance(m, Text) and m.role == "series-label"]
        assert [name.text for name in names] == ["thickness, calculated"]
        assert all(name.anchor == "end" and name.x <= layout.width for name in names)


def test_hatch_stays_under_the_curve() -> None:
    strokes = hatch([(0.0, 50.0), (100.0, 10.0)], base=50.0)
    assert strokes
    assert all(y >= 50 - 0.4 * x - 1e-6 and y <= 50 for stroke in strokes for x, y in stroke)


def test_an_empty_chart_says_that_there_are_no_readings() -> None:
    empty = Chart("t", "d", (Panel(Axis("Current", "A")),), UTC)
    assert "No readings yet." in svg(empty, "e")


def test_a_narrow_chart_has_fewer_ticks() -> None:
    wide, narrow = (svg(run_chart(), "a", width) for width in (720, 360))
    assert narrow.count(":00</text>") < wide.count(":00</text>")
