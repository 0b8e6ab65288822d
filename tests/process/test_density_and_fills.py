"""Weighing in water and its refusals, masses with other fillings, lengths at 20 °C."""

import pytest
from django.urls import reverse

from process.models import HydrostaticWeighing, MakingUp, Shell
from process.summaries.copies import summarise
from process.summaries.copy_fills import FillLine, fillings_before
from process.summaries.copy_sizes import length_of
from process.summaries.densities import densities_of
from process.summaries.drift import drift_of
from records.models import DescentLink, Measurement
from tests.everything import make_core, make_shell
from tests.factories import (
    NINE,
    make_cathode,
    make_copy,
    make_item,
    make_mould,
    make_report,
    make_run,
    make_term,
    make_user,
)
from tests.process.scenario_runs import mask_run, weighed

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


@pytest.fixture
def coin():
    return make_item("L.2026.003", title="Ten-groat piece", materials="silver, struck")


def weighing(**changes) -> dict:
    quantities = {"in_air_g": "8.630", "in_water_g": "7.800", "water_temperature_degc": "20"}
    units = {"in_air_g_unit": "g", "in_water_g_unit": "g", "water_temperature_degc_unit": "°C"}
    return quantities | units | {
        "state": "sound", "weighed_at": "2026-02-24T10:00", "token": "6a1f6f3e-7d5e-4a67-9a40-1d1f7d1f0009",
    } | changes  # fmt: skip


def send(client, item, **changes):
    return client.post(reverse("hydrostatic_add", args=[item.number]), weighing(**changes), follow=True)


def test_density_is_worked_out_with_water_of_its_warmth_and_air(conservator, coin):
    """8.630 g and 7.800 g: 10.368 g/cm³ at 20 °C with buoyancy; problem of OpenStax College Physics 2e, 11.7."""
    page = send(conservator, coin).content.decode()

    [density] = densities_of(coin.hydrostatic_weighings.all())
    assert density.figure.value == pytest.approx(10.368, abs=0.001)
    assert "10.37" in page and "does not prove an original" in page and "usual room air" in page


def test_air_as_read_takes_the_place_of_usual_air(conservator, coin):
    """1.199 kg/m³ at 20 °C, 1013.25 hPa, 50 %: simplified CIPM formula."""
    air = {"air_temperature_degc": "20", "air_pressure_hpa": "1013.25", "air_humidity_pct": "50"}
    send(conservator, coin, **air)

    [density] = densities_of(coin.hydrostatic_weighings.all())
    assert density.air == "air as read" and density.figure.value == pytest.approx(10.368, abs=0.001)


@pytest.mark.parametrize(("state", "said"), [
    ("open", "open seam"), ("corroded", "Corrosion"), ("gilded", "creeps under"), ("plaster", "never in water"),
])  # fmt: skip
def test_a_piece_that_water_would_harm_is_refused_with_the_reason(conservator, coin, state, said):
    answer = send(conservator, coin, state=state)

    assert answer.status_code == 422 and said in answer.content.decode() and "8.630" in answer.content.decode()
    assert not HydrostaticWeighing.objects.exists()


def test_plaster_and_what_is_active_are_refused_by_what_is_on_record(conservator, coin):
    mask = make_item("OVM.1907.0112", materials="gypsum plaster, shellac coat")
    make_report(coin, stability="active")

    assert "name plaster" in send(conservator, mask).content.decode()
    assert "water would feed" in send(conservator, coin).content.decode()
    assert not HydrostaticWeighing.objects.exists()


def test_a_copy_with_a_core_is_refused(conservator):
    mould = make_mould()
    copy = make_item("R.2026.5", kind="copy", materials="copper")
    MakingUp.objects.create(copy=copy, technique="core", core=make_core(mould, 1), lead_inside="no", made_up_on=NINE)

    assert "water that gets in stays in" in send(conservator, copy).content.decode()


def test_a_skin_on_its_core_and_a_filling_that_drinks_are_refused(conservator):
    skin = weighed(mask_run().cathodes.get(), "S-11", 1512.0).item
    filled = make_item("R.2026.9", kind="copy", materials="copper")
    MakingUp.objects.create(
        copy=filled, technique="joined", fill=make_term("fill", "plaster of Paris"), lead_inside="no", made_up_on=NINE
    )

    assert "There is a core under the metal" in send(conservator, skin).content.decode()
    assert "It is filled with plaster" in send(conservator, filled).content.decode()
    assert not HydrostaticWeighing.objects.exists()


@pytest.mark.parametrize(("changes", "said"), [
    ({"in_water_g": "8.630"}, "look for bubbles"), ({"water_temperature_degc": "60"}, "From 0 to 40"),
    ({"air_pressure_hpa": "1013"}, "needs all three"),
])  # fmt: skip
def test_readings_that_cannot_be_are_sent_back(conservator, coin, changes, said):
    answer = send(conservator, coin, **changes)

    assert answer.status_code == 422 and said in answer.content.decode()


def medal_shells() -> list[Shell]:
    """SCENARIO 2 and 7.2: 71.36 g of 8.80 g/cm³; shells trimmed to 15.10 and 14.52 g; moulds −0.08 %."""
    medal = make_item("OVM.1931.0044", materials="leaded bronze, cast")
    for what, value in (("mass", {"mass_g": 71.36}), ("density", {"density_g_cm3": 8.80}),
                        ("diameter", {"length_mm": 58.40, "temperature_degc": 25})):  # fmt: skip
        Measurement.objects.create(item=medal, what=what, **value)
    run, shells = make_run(), []
    for number, grams in (("S-03", 15.10), ("S-04", 14.52)):
        cathode = make_cathode(run, mould=make_mould(medal, shrinkage_pct=-0.08))
        item = make_item(number, kind="shell", title="Shell")
        shells.append(Shell.objects.create(item=item, cathode=cathode, gross_mass_g=22, trimmed_mass_g=grams))
    return shells


def test_masses_with_other_fillings_before_one_is_chosen(conservator):
    """SCENARIO 8: lead alloy 80.2 g = 112.3 %, tin-rich 64.4 g = 90.3 %, resin 35.1 g = 49.2 %."""
    found = fillings_before(medal_shells())

    lines = {line.density_g_cm3: (round(line.mass_g, 1), round(line.ratio_pct, 1)) for line in found.lines}
    assert (lines[10.6], lines[7.30], lines[1.15]) == ((80.2, 112.3), (64.4, 90.3), (35.1, 49.2))
    page = conservator.get(reverse("making_up_add"), {"shell": ["S-03", "S-04"]}).content.decode()
    assert "tin-rich alloy" in page and "112.3" in page


def test_lengths_are_compared_at_twenty_degrees():
    """A bronze of 58.40 mm at 25 °C is 58.395 mm at 20 °C: 18 · 10⁻⁶/K, handbook value from memory."""
    medal_shells()
    rows = list(Measurement.objects.select_related("item"))

    length, note, kind = length_of(rows, "diameter")

    assert length.m_as("mm") == pytest.approx(58.40 * (1 - 18e-6 * 5), abs=1e-6)
    assert "25.0" in note and "bronze" in note and kind == "measured"


def test_every_length_of_the_model_is_foretold():
    shells = medal_shells()
    model = shells[0].cathode.mould.model
    for what, length in (("height", 60.0), ("depth", 5.0)):
        Measurement.objects.create(item=model, what=what, length_mm=length)
    copy = make_item("R.2026.1", kind="copy")
    made = MakingUp.objects.create(copy=copy, technique="joined", lead_inside="no", made_up_on=NINE)
    for shell in shells:
        shell.making_up = made
        shell.save()

    found = {each.label: each.value for each in summarise(made, [], None).size}

    assert found["Height predicted"] == pytest.approx(60 * (1 - 0.0008))
    assert found["Depth predicted"] == pytest.approx(5 * (1 - 0.0008))


def test_size_drifts_along_the_line_and_is_drawn(conservator):
    """SCENARIO 8: R.1889.7 of 44.82 mm, its copy of 44.78 mm: −0.09 %; foretold −0.08 % by the mould."""
    model = make_item("R.1889.7", kind="historic_copy")
    Measurement.objects.create(item=model, what="diameter", length_mm=44.82)
    cathode = make_cathode(make_run(), mould=make_mould(model, shrinkage_pct=-0.08))
    DescentLink.objects.create(source=model, target=cathode.mould.item, transfer="moulding", side="obverse")
    shell = make_shell(cathode)
    copy = make_copy("R.2026.3", shells=[shell], technique="uniface", afterwards=True)
    Measurement.objects.create(item=copy, what="diameter", length_mm=44.78)

    first, last = drift_of(copy, summarise(copy.making_up, [], None).size)

    assert (first.name, round(last.measured_pct, 2), round(last.predicted_pct, 2)) == ("R.1889.7", -0.09, -0.08)
    page = conservator.get(copy.get_absolute_url()).content.decode()
    assert "Size by generation" in page and "Deviation from the first" in page


@pytest.mark.parametrize(("ratio", "alike"), [(96.9, False), (97.0, True), (103.0, True), (103.1, False)])
def test_a_copy_within_three_per_cent_weighs_as_much_as_its_model(ratio, alike):
    assert FillLine("any", 10.6, 70.0, ratio, "").is_alike is alike
