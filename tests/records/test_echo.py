"""The line that the page echoes by is the one that the server shows."""

import pytest

from records import units
from records.units.echo import echo_table
from records.units.showing import OTHER_UNIT


@pytest.mark.parametrize("suffix", OTHER_UNIT)
@pytest.mark.parametrize("typed", [0.5, 1.5, 60.0])
def test_the_page_echoes_what_the_server_would_show(suffix, typed):
    for symbol, (factor, offset, shown) in echo_table(suffix).items():
        canonical = units.to_canonical(typed, units.unit_choice(suffix, symbol), suffix)
        expected = units.from_canonical(canonical, units.unit_choice(suffix, shown), suffix)
        assert factor * typed + offset == pytest.approx(expected, rel=1e-9)
        thin = shown == "in" and abs(expected) < 0.1  # there the trade says thou, and so does echo.js
        assert units.other_unit(canonical, suffix, symbol).endswith("thou" if thin else shown)


def test_a_current_density_is_echoed_for_those_who_think_in_square_feet():
    # 1 ft = 0.3048 m exactly (international yard and pound agreement, 1959): 1 A/dm² = 9.290304 A/ft².
    assert echo_table("_a_dm2")["A/dm²"] == (9.290304, 0.0, "A/ft²")
