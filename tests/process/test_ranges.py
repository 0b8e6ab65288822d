"""Usual and impossible values. Figures: common practice of acid copper baths (DOMAIN 4.13), from memory;
1 A/ft² = 0.107639 A/dm² (1 ft = 0.3048 m exactly, international foot of 1959)."""

import importlib
import pkgutil

import pytest
from django.urls import reverse

import process.forms
from process.models import Range
from process.ranges import judge
from process.seeding import ensure_ranges
from records.forms.base import RecordForm
from tests.factories import make_bath, make_user
from tests.process.test_baths import analysis_data

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def table():
    ensure_ranges()


@pytest.mark.parametrize(
    ("field", "step", "value", "verdict"),
    [
        ("planned_current_density_a_dm2", "quiet", 1.5, "usual"),
        ("planned_current_density_a_dm2", "quiet", 4.0, "unusual"),
        ("planned_current_density_a_dm2", "agitated", 4.0, "usual"),
        ("current_density_a_dm2", "strike", 1.5, "unusual"),
        ("current_density_a_dm2", "quiet", 61.0, "impossible"),
        ("current_density_a_dm2", "quiet", -1.0, "impossible"),
        ("voltage_v", "any", 0.8, "usual"),
        ("temperature_degc", "quiet", 34.0, "unusual"),
        ("copper_sulphate_g_l", "any", 2034.0, "impossible"),
        ("planned_thickness_mm", "any", 0.01, "unusual"),
        ("anything_else_g", "any", 1e9, "usual"),
    ],
)
def test_verdicts(field, step, value, verdict):
    assert judge(field, value, step=step).verdict == verdict


def test_step_without_a_row_of_its_own_falls_back_to_any():
    assert judge("voltage_v", 5.0, step="agitated").verdict == "unusual"


def test_fifteen_per_square_foot_is_recognised():
    opinion = judge("planned_current_density_a_dm2", 15.0, step="quiet", number=15.0, unit="A/dm²")

    assert "15 A/ft² = 1.61\u2009A/dm² would be usual. Is the unit right?" in opinion.sentence


def test_the_other_way_round_too():
    value = 1.5 * 0.107639

    opinion = judge("planned_current_density_a_dm2", value, step="quiet", number=1.5, unit="A/ft²")

    assert "1.5 A/dm² would be usual" in opinion.sentence


def test_fahrenheit_is_recognised():
    assert "72 °F = 22.2\u2009°C would be usual" in judge("temperature_degc", 72.0, number=72.0, unit="°C").sentence


def test_open_side_has_no_limit():
    Range.objects.create(field="odd_mm", usual_low=1.0)

    assert judge("odd_mm", 1e6).is_usual
    assert "at least 1 mm" in judge("odd_mm", 0.5).sentence


def test_full_table_is_left_alone():
    before = Range.objects.count()

    ensure_ranges()

    assert Range.objects.count() == before


def test_an_older_table_gets_the_rows_it_lacks_and_keeps_what_was_edited():
    row = Range.objects.get(field="voltage_v")
    row.usual_high = 6.0
    row.save()
    Range.objects.get(field="chloride_g_l").delete()

    ensure_ranges()

    assert Range.objects.filter(field="chloride_g_l").exists()
    assert Range.objects.get(field="voltage_v").usual_high == 6.0


MIXED = ("_a_dm2", "_dm2", "_degc", "_g_l")
ASKED_OTHERWISE = {
    "AreaForm": "the area of the whole part is asked about, as reckoned",
    "OfScan": "as AreaForm",
    "ScanForm": "as AreaForm",
    "ScanReadForm": "as AreaForm",
    "BathLimitForm": "judged by the row of its constituent, tested below",
}


def forms_of_the_making() -> set[type[RecordForm]]:
    for room in pkgutil.iter_modules(process.forms.__path__, "process.forms."):
        importlib.import_module(room.name)
    found, waiting = set(), [RecordForm]
    while waiting:
        below = waiting.pop().__subclasses__()
        found |= {each for each in below if each.__module__.startswith("process.forms") and hasattr(each, "Meta")}
        waiting += below
    return {each for each in found if hasattr(each.Meta, "model") and each.__name__ not in ASKED_OTHERWISE}


def test_wherever_the_trade_mixes_units_the_table_is_asked():
    rows = {row.field for row in Range.objects.all()}
    silent = []
    for form in forms_of_the_making():
        judged = dict.fromkeys(getattr(form.Meta, "ranged", ())) | getattr(form.Meta, "judged_as", {})
        for name in form.Meta.fields:
            row = judged.get(name) or name.removeprefix("planned_")
            if name.endswith(MIXED) and (name not in judged or row not in rows):
                silent.append(f"{form.__name__}.{name}")

    assert silent == []


@pytest.mark.parametrize(
    ("constituent", "field", "typed", "hint"),
    [
        # 1 oz/gal (US) = 7.489 g/L, 1 oz/gal (imperial) = 6.236 g/L: NIST SP 811, B.8
        ("copper_sulphate", "target_g_l", "28", "28 oz/gal (US) = 209.7 g/L or 28 oz/gal (imperial) = 174.6 g/L or"),
        ("copper_sulphate", "target_g_l", "34", "34 oz/gal (imperial) = 212.0 g/L"),
        ("chloride", "warn_high_g_l", "80", "80 mg/L = 0.08"),
    ],
)
def test_a_bound_in_the_other_unit_is_asked_about_on_its_page(client, constituent, field, typed, hint):
    bath = make_bath()
    client.force_login(make_user("conservator"))
    address = reverse("limit_edit", args=[bath.number, constituent])

    answer = client.post(address, {"version": "0", field: typed, f"{field}_unit": "g/L"})

    assert answer.status_code == 422
    assert hint in answer.content.decode().replace("\u2009", " ")
    assert not bath.limits.filter(constituent=constituent, **{field: float(typed)}).exists()


def test_a_bath_in_fahrenheit_is_asked_about_and_its_bounds_may_not_cross(client):
    client.force_login(make_user("technician"))
    given = {
        "number": "B-9", "name": "ninth", "ion": "Cu2+", "volume_l": "60", "opening_charge_ah": "0",
        "analysis_valid_days_count": "30", "analysis_valid_ah_l": "10", "conductivity_ms_cm": "17,5",
    }  # fmt: skip
    warmth = {"temperature_target_degc": "72", "temperature_warn_low_degc": "80", "temperature_warn_high_degc": "82"}

    page = client.post(reverse("bath_add"), given | warmth).content.decode().replace("\u2009", " ")

    assert "72 °F = 22.2 °C would be usual" in page
    assert "17.5 S/m = 175 mS/cm would be usual" in page
    assert "The bounds cross" in page


def test_conservator_changes_what_is_usual(client):
    client.force_login(make_user("conservator"))
    row = Range.objects.get(field="voltage_v")

    client.post(reverse("range_edit", args=[row.pk]), {"usual_low": "0.2", "usual_high": "3", "version": row.version})

    row.refresh_from_db()
    assert (row.usual_low, row.usual_high) == (0.2, 3.0)
    assert "Voltage" in client.get(reverse("range_list")).content.decode()


def test_crossed_bounds_are_sent_back(client):
    client.force_login(make_user("conservator"))
    row = Range.objects.get(field="voltage_v")

    answer = client.post(
        reverse("range_edit", args=[row.pk]), {"usual_low": "5", "usual_high": "3", "version": row.version}
    )

    assert answer.status_code == 422 and "bounds cross" in answer.content.decode()


def test_what_follows_from_typed_numbers_is_named_and_a_slip_is_shown_as_typed(client):
    """Fault 13: 2034 instead of 203.4 g/L, as a slip at the burette; chloride in g/L is not rounded to nothing."""
    bath = make_bath()
    client.force_login(make_user("technician"))
    address = reverse("analysis_add", args=[bath.number])

    slipped = client.post(address, analysis_data(copper_titrant_ml="81.46"))
    asked = client.post(address, analysis_data(chloride_mg_l="0.035"))

    said = [page.content.decode().replace("\u2009", " ") for page in (slipped, asked)]
    assert "Copper sulphate pentahydrate found: 2033.9 g/L is not possible here" in said[0]
    assert "0.035 mg/L is unusual" in said[1] and "0.035 g/L = 35 mg/L would be usual" in said[1]
    assert not bath.analyses.exists()
