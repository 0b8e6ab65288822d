"""A chart over months and years names days and years, not midnights, and few of them."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from records.pdf.charts.scales import time_ticks

START = datetime(2026, 2, 9, 8, tzinfo=UTC)


@pytest.mark.parametrize("days", [100, 290, 3 * 365, 20 * 365])
def test_ticks_over_months_and_years_are_days(days: int) -> None:
    ticks = time_ticks(START, START + timedelta(days=days), ZoneInfo("Europe/Berlin"), most=8)

    assert 2 <= len(ticks) <= 9
    assert ":" not in "".join(tick.clock for tick in ticks)
    assert ticks[0].day == str(ticks[0].at.year)
