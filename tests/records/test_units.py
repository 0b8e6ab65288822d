"""Reading, converting and showing quantities, checked against published definitions."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from records import units
from records.units import CHOICES, SUFFIXES, UnitsError, parse, show
from records.units.showing import MINUS, THIN_SPACE

# NIST Special Publication 811 (2008), appendix B.8 (factors listed alphabetically), from memory; exact,
# with the printed figure beside those that it rounds.
NIST_SP_811 = [
    ("1 lb", "_g", 453.59237),
    ("1 oz av", "_g", 28.349523125),  # printed 2.834 952 E-02 kg
    ("1 oz t", "_g", 31.1034768),  # printed 3.110 348 E-02 kg
    ("1 gr", "_g", 0.06479891),
    ("1 dwt", "_g", 1.55517384),  # printed 1.555 174 E-03 kg
    ("1 in", "_mm", 25.4),
    ("1 thou", "_um", 25.4),
    ("1 in²", "_dm2", 0.064516),
    ("1 ft²", "_dm2", 9.290304),
    ("1 in³", "_cm3", 16.387064),
    ("1 gal (US)", "_l", 3.785411784),  # printed 3.785 412 E-03 m3
    ("1 gal (imperial)", "_l", 4.54609),
    ("1 fl oz (US)", "_ml", 29.5735295625),  # printed 2.957 353 E+01 mL
    ("1 fl oz (imperial)", "_ml", 28.4130625),  # printed 2.841 306 E+01 mL
    ("1 oz/gal (US)", "_g_l", 7.489152),  # printed 7.489 152
    ("1 oz/gal (imperial)", "_g_l", 6.236023),  # printed 6.236 023
    ("1 lb/gal (US)", "_g_l", 119.8264),  # printed 1.198 264 E+02 kg/m3
    ("1 lb/gal (imperial)", "_g_l", 99.77637),  # printed 9.977 637 E+01 kg/m3
    ("68 °F", "_degc", 20.0),  # t/°C = (t/°F − 32)/1.8
    ("212 °F", "_degc", 100.0),
    ("-40 °F", "_degc", -40.0),
    ("293.15 K", "_degc", 20.0),
    ("1 mA·h", "_ah", 0.001),
    ("3600 C", "_ah", 1.0),
]

# A/ft²: plating trade tables print 1 A/dm² = 9.29 A/ft²; the others follow from the definitions (calculated).
# Troy and avoirdupois weights per gallon: common practice.
TRADE = [
    ("1 A/ft²", "_a_dm2", 0.107639),
    ("100 A/ft²", "_a_dm2", 10.7639),
    ("10 mA/cm²", "_a_dm2", 1.0),
    ("100 A/m²", "_a_dm2", 1.0),
    ("1 A/in²", "_a_dm2", 15.5000),
    ("15.5 in²", "_dm2", 0.999998),
    ("1 oz t/gal (US)", "_g_l", 8.21667),
    ("1 oz t/gal (imperial)", "_g_l", 6.84181),
    ("1 gr/gal (imperial)", "_mg_l", 14.2538),
    ("1 gr/gal (US)", "_mg_l", 17.1181),
    ("50 dwt/gal (imperial)", "_g_l", 17.1046),  # R. Threlfall, On Laboratory Arts (1898): 50 dwt a gallon
    ("250 ppm", "_mg_l", 250.0),  # in dilute solutions, common practice
]


@pytest.mark.parametrize(("text", "suffix", "expected"), NIST_SP_811 + TRADE)
def test_conversion_agrees_with_the_published_factor(text, suffix, expected):
    assert parse(text, suffix).canonical == pytest.approx(expected, rel=5e-6)


@pytest.mark.parametrize(
    ("text", "suffix", "canonical"),
    [
        ("0,35 A", "_a", 0.35),
        ("0,350 A", "_a", 0.35),
        ("350 mA", "_a", 0.35),
        ("350mA", "_a", 0.35),
        ("  1.21  ", "_a", 1.21),
        (".5", "_a", 0.5),
        ("5.", "_a", 5.0),
        ("+5", "_a", 5.0),
        ("1e-3 A", "_a", 0.001),
        ("1,5E3", "_a", 1500.0),
        ("−0,08 %", "_pct", -0.08),
        ("58.40 mm", "_mm", 58.4),
        ("58,40\u202fmm", "_mm", 58.4),
        ('2.3 "', "_mm", 58.42),
        ("5.300", "_a", 5.3),
        ("1.5 A / dm^2", "_a_dm2", 1.5),
        ("1.5 A/dm**2", "_a_dm2", 1.5),
        ("1.5 asd", "_a_dm2", 1.5),
        ("120 μm", "_um", 120.0),  # Greek mu
        ("120 um", "_um", 120.0),
        ("22 C", "_degc", 22.0),
        ("45", "_deg", 45.0),
        ("3.2 pH", "_ph", 3.2),
    ],
)
def test_plain_spellings_are_understood(text, suffix, canonical):
    assert parse(text, suffix).canonical == canonical


def test_what_was_typed_is_kept_beside_the_plain_number():
    parsed = parse("15 A/ft2", "_a_dm2")

    assert (parsed.number, parsed.unit, parsed.text) == (15.0, "A/ft²", "15 A/ft2")
    assert parsed.canonical == pytest.approx(1.6146, abs=5e-5)


def test_unit_in_the_text_overrides_the_selected_one():
    assert parse("5 kg", "_g", unit="mg").canonical == 5000.0
    assert parse("5", "_g", unit="mg").canonical == 0.005


def test_selected_unit_settles_whose_ounce_is_meant():
    assert parse("1 oz", "_g", unit="oz (troy)").canonical == pytest.approx(31.1034768)


@pytest.mark.parametrize(
    ("text", "suffix", "canonical", "plus_minus"),
    [
        ("58.40 ± 0.02 mm", "_mm", 58.4, 0.02),
        ("58.40 mm ± 0.02", "_mm", 58.4, 0.02),
        ("58.40 mm ± 20 µm", "_mm", 58.4, 0.02),
        ("0.8 +/- 10 %", "_dm2", 0.8, 0.08),
        ("2 in ± 0,01", "_mm", 50.8, 0.254),
        ("2 ± 0.01 in", "_mm", 50.8, 0.254),
        ("68 °F ± 9 °F", "_degc", 20.0, 5.0),  # the offset plays no part in a difference
        ("98.5 ± 0.5 %", "_pct", 98.5, 0.5),  # in a percentage the ± is in points
    ],
)
def test_plus_minus_is_read(text, suffix, canonical, plus_minus):
    parsed = parse(text, suffix)

    assert parsed.canonical == pytest.approx(canonical)
    assert parsed.plus_minus == pytest.approx(plus_minus)


@pytest.mark.parametrize(
    ("text", "suffix", "advice"),
    [
        ("", "_a", "Write a number"),
        ("   ", "_a", "Write a number"),
        ("about five", "_a", "such as “1.21 A”"),
        ("5,300 A", "_a", "write 5.300 or 5300"),
        ("1.000,5 A", "_a", "such as 1000.5"),
        ("1,000.5 A", "_a", "such as 1000.5"),
        ("1 000 g", "_g", "such as 1000"),
        ("1,000,000 g", "_g", "such as 1000000"),
        ("5 kW", "_a", "write one of A, mA"),
        ("5 MA", "_a", "write one of A, mA"),
        ("5 gal", "_l", "write “gal (US)” or “gal (imperial)”"),
        ("5 oz", "_g", "write “oz (avoirdupois)” or “oz (troy)”"),
        ("1e999", "_a", "too large"),
        ("1e308 kg", "_g", "too large"),
        ("1e-999", "_a", "too small"),
        ("1e-323 mg", "_g", "too small"),
        ("nan", "_a", "such as “1.21 A”"),
        ("inf A", "_a", "such as “1.21 A”"),
        ("22 ± 5 %", "_degc", "in the unit of the value"),
        ("9" * 65, "_a", "at most 64 characters"),
    ],
)
def test_refusal_says_what_to_do(text, suffix, advice):
    with pytest.raises(UnitsError, match=r"\.$") as refusal:
        parse(text, suffix)

    assert advice in str(refusal.value)


every_choice = st.sampled_from([(suffix, choice.symbol) for suffix in CHOICES for choice in CHOICES[suffix]])


@settings(max_examples=400, deadline=None)
@given(value=st.floats(-1e6, 1e6), choice=every_choice)
def test_what_is_shown_can_be_typed_in_again(value, choice):
    suffix, symbol = choice
    if suffix == "_ph":
        symbol = None
    shown = units.figure(value, suffix, symbol, digits=15)

    parsed = parse(f"{shown[0]} {shown[1]}", suffix)

    assert parsed.unit == (symbol or "pH")
    assert parsed.canonical == pytest.approx(value, rel=1e-9, abs=1e-9)


@settings(max_examples=200, deadline=None)
@given(value=st.floats(allow_nan=False, allow_infinity=False))
def test_plain_number_keeps_every_digit(value):
    assert parse(units.plain(value), "_g").canonical == value


@pytest.mark.parametrize(
    ("value", "suffix", "options", "expected"),
    [
        (58.4, "_mm", {}, "58.40 mm"),
        (1.206, "_a", {}, "1.21 A"),
        (0.804, "_dm2", {}, "0.804 dm²"),
        (28.93, "_dm2", {}, "28.9 dm²"),
        (9.999, "_dm2", {}, "10.0 dm²"),
        (71.356, "_g", {}, "71.36 g"),
        (8.92, "_g_cm3", {}, "8.92 g/cm³"),
        (98.46, "_pct", {}, "98.5 %"),
        (21.96, "_degc", {}, "22.0 °C"),
        (-0.08, "_pct", {"digits": 2}, "−0.08 %"),
        (-0.001, "_mm", {}, "0.00 mm"),
        (184, "_deg", {}, "184°"),
        (3.24, "_ph", {}, "pH 3.2"),
        (58.4, "_mm", {"plus_minus": 0.02}, "58.40 ± 0.02 mm"),
        (0.804, "_dm2", {"plus_minus": 0.08}, "0.80 ± 0.08 dm²"),
        (1940.0, "_g", {"plus_minus": 1.0}, "1940 ± 1 g"),
        (58.4, "_mm", {"unit": "in"}, "2.299 in"),
        (20.0, "_degc", {"unit": "°F", "plus_minus": 5.0}, "68 ± 9 °F"),
        (1e300, "_g", {}, "1e+300 g"),
    ],
)
def test_shown_with_the_digits_it_deserves(value, suffix, options, expected):
    assert show(value, suffix, **options).replace(THIN_SPACE, " ").replace(MINUS, "−") == expected


@pytest.mark.parametrize(
    ("value", "suffix", "plus_minus", "expected"),
    [
        (98.843, "_pct", 0.046, "98.8 %"),  # the ± is smaller than the last digit that an efficiency is shown with
        (98.51, "_pct", 0.19, "98.5 ± 0.2 %"),
        (90.681, "_pct", 0.019, "90.7 %"),
        (36.8497, "_ah", 0.97, "36.85 ± 0.97 Ah"),
        (163.41, "_ah", 7.6, "163.4 ± 7.6 Ah"),
        (163.41, "_ah", 76.0, "163 ± 76 Ah"),
        (22.05, "_g", 0.01414, "22.05 ± 0.01 g"),
        (0.08, "_mm", 0.01, "0.08 ± 0.01 mm"),
        (-0.0226, "_pct", 0.048, "−0.02 ± 0.05 %"),
        (0.03, "_pct", 0.32, "0.03 ± 0.32 %"),
        (64.4338, "_g", 0.2018, "64.43 ± 0.20 g"),
        (1494.5, "_g", 0.2, "1494.5 ± 0.2 g"),
        (64.43, "_g", 0.0, "64.43 g"),
    ],
)
def test_at_most_the_usual_decimals_and_two_digits_of_the_uncertainty(value, suffix, plus_minus, expected):
    """Usual decimals: the trade's; two significant digits of a ±: GUM (JCGM 100:2008), 7.2.6."""
    assert show(value, suffix, plus_minus=plus_minus).replace(THIN_SPACE, " ").replace(MINUS, "−") == expected


@pytest.mark.parametrize(
    ("text", "suffix", "expected"),
    [
        ("44,3", "_g", 1),
        ("0.60", "_mm", 2),
        ("1940 ± 1 g", "_g", 0),
        ("58.4 ± 0.02 mm", "_mm", 2),
        ("235", "_degc", 0),
        ("8.7804 ± 0.0005", "_g", 4),
        ("2.3 in", "_mm", None),
        ("1e-3 g", "_g", None),
    ],
)
def test_decimals_that_a_person_wrote_are_kept(text, suffix, expected):
    assert units.decimals_written(parse(text, suffix).as_typed(), suffix) == expected


@pytest.mark.parametrize(
    ("value", "suffix", "expected"),
    [
        (1.5, "_a_dm2", "13.9 A/ft²"),
        (0.804, "_dm2", "12.5 in²"),
        (22.0, "_degc", "71.6 °F"),
        (210.0, "_g_l", "28.0 oz/gal (US)"),
        (60.0, "_l", "15.9 gal (US)"),
        (58.4, "_mm", "2.30 in"),
        (0.6, "_mm", "23.6 thou"),
        (98.5, "_pct", ""),
    ],
)
def test_other_usual_unit_is_echoed(value, suffix, expected):
    assert units.other_unit(value, suffix).replace(THIN_SPACE, " ") == expected


def test_echo_of_a_foreign_unit_is_the_column_s_own():
    assert units.other_unit(1.6146, "_a_dm2", unit="A/ft²").replace(THIN_SPACE, " ") == "1.61 A/dm²"


def test_every_suffix_offers_units_led_by_its_own_and_has_its_digits():
    assert set(CHOICES) == set(SUFFIXES) == set(units.SHOW_DIGITS)
    for suffix, pint_unit in SUFFIXES.items():
        assert CHOICES[suffix][0].pint_unit == pint_unit
        for choice in CHOICES[suffix]:
            assert units.ureg.Unit(choice.pint_unit).is_compatible_with(pint_unit)


@pytest.mark.parametrize("suffix", sorted(CHOICES))
def test_every_spelling_names_its_own_unit(suffix):
    for choice in CHOICES[suffix]:
        for spelling in (choice.symbol, *choice.aliases):
            assert units.find_unit(spelling, suffix) == choice


def test_suffix_is_the_longest_that_fits():
    assert units.suffix_of("planned_current_density_a_dm2") == "_a_dm2"
    assert units.suffix_of("charge_per_litre_ah_l") == "_ah_l"
    assert units.suffix_of("pulls_count") is None
