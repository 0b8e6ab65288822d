"""The good medal run of the demo as a chart."""

from datetime import UTC, datetime
from itertools import pairwise
from zoneinfo import ZoneInfo

from records.pdf.charts import Axis, Chart, Event, Panel, Series, Target

ZONE = ZoneInfo("Europe/Berlin")

# Local clock, current in A, volts, °C, note: the good medal run, start 16 February 2026, 09:00.
READINGS = (
    (16, 9, 0, 0.24, 0.31, 21.2, "live entry, strike 0.30 A/dm²"),
    (16, 10, 40, 0.24, 0.28, 21.3, "both fully covered (1 h 40)"),
    (16, 11, 0, 0.64, 0.50, 21.4, "0.80 A/dm²"),
    (16, 13, 0, 1.21, 0.80, 21.6, "1.50 A/dm²"),
    (16, 15, 0, 1.21, 0.79, 21.9, "smooth"),
    (16, 17, 30, 1.21, 0.80, 22.1, "filter checked"),
    (17, 8, 30, 1.21, 0.82, 22.6, "edge thicker, no trees"),
    (17, 12, 0, 1.21, 0.82, 22.5, ""),
    (17, 15, 0, 1.21, 0.83, 22.6, ""),
    (17, 18, 0, 0.0, None, 22.6, "stop at 36.85 Ah"),
)


def _at(day: int, hour: int, minute: int) -> datetime:
    return datetime(2026, 2, day, hour, minute, tzinfo=ZONE).astimezone(UTC)


def run_chart() -> Chart:
    current = tuple((_at(*row[:3]), row[3]) for row in READINGS)
    grown, charge = [(current[0][0], 0.0)], 0.0
    for (start, amperes), (end, _) in pairwise(current):
        charge += amperes * (end - start).total_seconds() / 3600
        grown.append((end, 0.6019 * charge / 36.85))
    events = (
        Event(_at(16, 9, 0), "live entry"),
        Event(_at(16, 10, 40), "covered"),
        Event(_at(16, 17, 30), "filter checked"),
        Event(_at(17, 18, 0), "stop"),
    )
    return Chart(
        title="Run D-2026-002, current and grown thickness",
        description="Current in three steps to 1.21 A over 33 hours; mean thickness grows to 0.60 mm.",
        panels=(
            Panel(Axis("Current", "A"), (Series("sheet", current, step=True),)),
            Panel(
                Axis("Mean thickness", "mm"),
                (Series("grown", tuple(grown), calculated=True),),
                (Target("target 0.60 mm", 0.6),),
            ),
        ),
        tz=ZONE,
        events=events,
    )
