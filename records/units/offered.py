"""The units a person may choose, and the short list that each kind of column offers."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class UnitChoice:
    """A unit as it is written on the page, its name for pint, and other plain spellings of it."""

    symbol: str
    pint_unit: str
    aliases: tuple[str, ...] = ()


# symbol: (name for pint, other spellings). Ounces of salts are avoirdupois, of gold and silver troy (common
# practice), so an ounce in grams is always named; a gallon always says whose it is.
_UNITS: dict[str, tuple[str, tuple[str, ...]]] = {
    "A": ("A", ("amp", "amps", "ampere", "amperes")),
    "mA": ("mA", ()),
    "V": ("V", ("volt", "volts")),
    "mV": ("mV", ()),
    "Ah": ("A*h", ("amp hour", "amp hours")),
    "mAh": ("mA*h", ()),
    "A·min": ("A*min", ("amp min",)),
    "C": ("C", ("As",)),
    "Ah/L": ("A*h/L", ()),
    "Ah/gal (US)": ("A*h/gallon", ("Ah/US gal",)),
    "Ah/gal (imperial)": ("A*h/imperial_gallon", ("Ah/imp gal",)),
    "mm": ("mm", ("millimetre", "millimetres")),
    "cm": ("cm", ("centimetre", "centimetres")),
    "m": ("m", ("metre", "metres")),
    "in": ("inch", ("inch", "inches", '"')),
    "thou": ("thou", ()),
    "µm": ("um", ("micron", "microns")),
    "dm²": ("dm**2", ("sq dm",)),
    "cm²": ("cm**2", ("sq cm",)),
    "mm²": ("mm**2", ("sq mm",)),
    "m²": ("m**2", ("sq m",)),
    "in²": ("inch**2", ("sq in",)),
    "ft²": ("foot**2", ("sq ft",)),
    "g": ("g", ("gram", "grams")),
    "kg": ("kg", ()),
    "mg": ("mg", ()),
    "oz (avoirdupois)": ("ounce", ("oz av", "oz avdp", "oz avoirdupois")),
    "oz (troy)": ("troy_ounce", ("oz t", "ozt", "troy oz", "oz troy")),
    "lb": ("pound", ("lbs", "pound", "pounds")),
    "gr": ("grain", ("grain", "grains")),
    "dwt": ("pennyweight", ("pennyweight", "pennyweights")),
    "L": ("L", ("litre", "litres")),
    "mL": ("mL", ()),
    "cm³": ("cm**3", ("cc", "ccm")),
    "in³": ("inch**3", ("cu in",)),
    "gal (US)": ("gallon", ("US gal", "gal US", "US gallon", "US gallons")),
    "gal (imperial)": (
        "imperial_gallon",
        ("imp gal", "gal imp", "UK gal", "imperial gallon", "imperial gallons"),
    ),
    "fl oz (US)": ("fluid_ounce", ("US fl oz", "fl oz US")),
    "fl oz (imperial)": ("imperial_fluid_ounce", ("imp fl oz", "fl oz imp", "UK fl oz")),
    "g/L": ("g/L", ()),
    "mg/L": ("mg/L", ()),
    # In water-like solutions one part in a million is about one milligram in a litre.
    "ppm": ("mg/L", ()),
    "oz/gal (US)": ("ounce/gallon", ("oz/US gal", "oz av/gal (US)")),
    "oz/gal (imperial)": ("ounce/imperial_gallon", ("oz/imp gal", "oz/UK gal", "oz av/gal (imperial)")),
    "oz t/gal (US)": ("troy_ounce/gallon", ("oz t/US gal",)),
    "oz t/gal (imperial)": ("troy_ounce/imperial_gallon", ("oz t/imp gal", "oz t/UK gal")),
    "lb/gal (US)": ("pound/gallon", ("lb/US gal",)),
    "lb/gal (imperial)": ("pound/imperial_gallon", ("lb/imp gal", "lb/UK gal")),
    "dwt/gal (imperial)": ("pennyweight/imperial_gallon", ("dwt/imp gal", "dwt/UK gal")),
    "gr/gal (US)": ("grain/gallon", ("gr/US gal",)),
    "gr/gal (imperial)": ("grain/imperial_gallon", ("gr/imp gal", "gr/UK gal")),
    "mol/L": ("mol/L", ("M",)),
    "mmol/L": ("mmol/L", ("mM",)),
    "g/cm³": ("g/cm**3", ("g/mL", "kg/L")),
    "kg/m³": ("kg/m**3", ()),
    "A/dm²": ("A/dm**2", ("ASD",)),
    "A/ft²": ("A/foot**2", ("ASF",)),
    "mA/cm²": ("mA/cm**2", ()),
    "A/m²": ("A/m**2", ()),
    "A/in²": ("A/inch**2", ()),
    "°C": ("degC", ("C", "degC", "deg C")),
    "°F": ("degF", ("F", "degF", "deg F")),
    "K": ("kelvin", ()),
    "s": ("s", ("sec", "second", "seconds")),
    "min": ("min", ("minute", "minutes")),
    "h": ("h", ("hr", "hrs", "hour", "hours")),
    "d": ("day", ("day", "days")),
    "Ω": ("ohm", ("ohm", "ohms")),
    "mΩ": ("mohm", ("mohm",)),
    "kΩ": ("kohm", ("kohm",)),
    "°": ("deg", ("deg", "degree", "degrees")),
    "%": ("pct", ("percent", "per cent")),
    "‰": ("permille", ("permille", "per mille")),
    # A magnetic moment as it is quoted for the metals of coins.
    "µVs·cm": ("uV*s*cm", ("uVs cm", "µVs cm", "µVs*cm")),
    "µm/h": ("um/h", ()),
    "mm/d": ("mm/day", ("mm/day",)),
    "thou/h": ("thou/h", ()),
    "lx": ("lux", ("lux",)),
    "A/L": ("A/L", ()),
    "kWh": ("kWh", ()),
    "×": ("dimensionless", ("x", "times")),
    # Money of whichever currency: the sign is put right where it is shown.
    "¤": ("money", ()),
    "¤/h": ("money/h", ("per hour",)),
    "¤/kg": ("money/kg", ("per kg",)),
    "¤/kWh": ("money/kWh", ("per kWh",)),
    "pH": ("dimensionless", ()),
    "°Bé": ("dimensionless", ("Be", "Bé", "°Be", "deg Be")),
    "hPa": ("hPa", ("mbar",)),
    "kPa": ("kPa", ()),
    "mS/cm": ("mS/cm", ()),
    "S/cm": ("S/cm", ()),
    "S/m": ("S/m", ()),
}

_OFFERED: dict[str, str] = {
    "_a": "A, mA",
    "_ma": "mA, A",
    "_v": "V, mV",
    "_ah": "Ah, mAh, A·min, C",
    "_ah_l": "Ah/L, Ah/gal (US), Ah/gal (imperial)",
    "_dm2": "dm², cm², mm², in², m², ft²",
    "_mm": "mm, cm, m, in, thou, µm",
    "_um": "µm, mm, thou, in",
    "_g": "g, kg, mg, oz (avoirdupois), oz (troy), lb, gr, dwt",
    "_l": "L, mL, gal (US), gal (imperial)",
    "_ml": "mL, L, fl oz (US), fl oz (imperial)",
    "_cm3": "cm³, mL, L, in³",
    "_g_l": "g/L, mg/L, oz/gal (US), oz/gal (imperial), oz t/gal (US), oz t/gal (imperial), lb/gal (US), "
    "lb/gal (imperial), dwt/gal (imperial)",
    "_mg_l": "mg/L, ppm, g/L, gr/gal (US), gr/gal (imperial)",
    "_mol_l": "mol/L, mmol/L",
    "_g_cm3": "g/cm³, kg/m³",
    "_a_dm2": "A/dm², A/ft², mA/cm², A/m², A/in²",
    "_degc": "°C, °F, K",
    "_h": "h, min, s, d",
    "_s": "s, min, h",
    "_a_l": "A/L",
    "_ratio": "×",
    "_kwh": "kWh",
    "_money": "¤",
    "_money_h": "¤/h",
    "_money_kg": "¤/kg",
    "_money_kwh": "¤/kWh",
    "_ohm": "Ω, mΩ, kΩ",
    "_deg": "°",
    "_pct": "%",
    "_permille": "‰",
    "_uvs_cm": "µVs·cm",
    "_um_h": "µm/h, mm/d, thou/h",
    "_lx": "lx",
    "_ph": "pH",
    "_be": "°Bé",
    "_hpa": "hPa, kPa",
    "_ms_cm": "mS/cm, S/cm, S/m",
}

# The first of each list is the unit of the column itself.
CHOICES: dict[str, tuple[UnitChoice, ...]] = {
    suffix: tuple(UnitChoice(symbol, *_UNITS[symbol]) for symbol in symbols.split(", "))
    for suffix, symbols in _OFFERED.items()
}
