"""The one pint registry and the closed list of column suffixes."""

from pathlib import Path

import pint

# Our own short list of definitions: pint's whole one takes fifteen times as long to read at every start.
ureg: pint.UnitRegistry = pint.UnitRegistry(
    str(Path(__file__).with_name("definitions.txt")), autoconvert_offset_to_baseunit=True
)

# Column suffix -> pint unit of the plain number in that column.
SUFFIXES: dict[str, str] = {
    "_a": "A", "_ma": "mA", "_v": "V", "_ah": "A*h", "_ah_l": "A*h/L", "_dm2": "dm**2", "_mm": "mm",
    "_um": "um", "_g": "g", "_l": "L", "_ml": "mL", "_cm3": "cm**3", "_g_l": "g/L", "_mg_l": "mg/L",
    "_mol_l": "mol/L", "_g_cm3": "g/cm**3", "_a_dm2": "A/dm**2", "_degc": "degC", "_h": "h", "_s": "s",
    "_money": "money", "_money_h": "money/h", "_money_kg": "money/kg", "_money_kwh": "money/kWh", "_kwh": "kWh",
    "_ratio": "dimensionless", "_a_l": "A/L",
    "_ohm": "ohm", "_deg": "deg", "_pct": "pct", "_um_h": "um/h", "_lx": "lux", "_ph": "dimensionless",
    "_be": "dimensionless", "_hpa": "hPa", "_ms_cm": "mS/cm", "_permille": "permille", "_uvs_cm": "uV*s*cm",
}  # fmt: skip

_LONGEST_FIRST = sorted(SUFFIXES, key=len, reverse=True)


def suffix_of(column_name: str) -> str | None:
    """The unit suffix that a column's name ends in, the longest that fits.

    >>> suffix_of("density_a_dm2"), suffix_of("area_dm2"), suffix_of("title")
    ('_a_dm2', '_dm2', None)
    """
    return next((suffix for suffix in _LONGEST_FIRST if column_name.endswith(suffix)), None)
