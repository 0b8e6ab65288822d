"""A silvered copy: what the skin weighs on faces and edge, and what the parts foretell."""

from datetime import date

import pytest

from process.models import FinishStep, MakingUp
from process.panels.copies import making_of, summary_of
from records.models import Measurement
from tests.factories import make_copy, make_item, make_shell, make_term

pytestmark = pytest.mark.django_db


def _coin_copy(*, thickness=2.0, density_spread=None, **making):
    """Scenario 2, 7.3 and 8: the coin of 31.20 mm, 15.82 g, 10.31 g/cm³; shells of 2.85 and 2.80 g on 8.10 cm²."""
    coin = make_item("L.2026.003", object_type="coin")
    Measurement.objects.create(item=coin, what="diameter", length_mm=31.20)
    Measurement.objects.create(item=coin, what="mass", mass_g=15.82)
    Measurement.objects.create(item=coin, what="density", density_g_cm3=10.31)
    if thickness:
        Measurement.objects.create(item=coin, what="thickness", length_mm=thickness)
    shells = [
        make_shell(coin, "S-05", trimmed_mass_g=2.85),
        make_shell(coin, "S-06", side="reverse", trimmed_mass_g=2.80),
    ]
    for shell in shells:
        shell.cathode.face_area_dm2 = 0.081
        shell.cathode.save()
        shell.cathode.mould.shrinkage_pct = -0.07
        shell.cathode.mould.save()
    fill = make_term("fill", "epoxy with metal powder")
    copy = make_copy("R.2026.2", shells=shells, **{"fill": fill, "fill_density_g_cm3": 3.2} | making)
    if density_spread:
        making_up = MakingUp.objects.get(copy=copy)
        making_up.as_typed = {"fill_density_g_cm3": {"plus_minus": density_spread, "kind": "calculated"}}
        making_up.save()
    FinishStep.objects.create(
        copy=copy, finish=make_term("finish", "silvered"), thickness_um=10, done_on=date(2026, 3, 27)
    )
    return copy


def _figures(copy):
    summary = summary_of(copy, making_of(copy))
    found = [summary.fill, summary.surface, summary.skin, *summary.mass]
    return {figure.label: figure for figure in found if figure}


def test_the_skin_lies_on_both_faces_and_the_edge():
    """Scenario, 11: silver of 10 µm on 18.16 cm² weighs 0.1905 g; the copy should weigh 8.71 g."""
    figures = _figures(_coin_copy())
    assert figures["Surface under the skin"].value * 100 == pytest.approx(18.16, abs=0.005)
    assert figures["Skin of silver"].value == pytest.approx(0.1905, abs=5e-5)
    assert figures["Mass predicted"].value == pytest.approx(8.71, abs=5e-3)
    assert "π" in figures["Surface under the skin"].working.substitution
    assert "10.49 g/cm³" in figures["Skin of silver"].working.substitution


def test_without_a_thickness_of_the_model_the_edge_is_said_not_to_be_counted():
    figures = _figures(_coin_copy(thickness=None))
    assert "Surface under the skin" not in figures
    assert figures["Skin of silver"].note == "On the faces; the edge is not counted."
    assert figures["Skin of silver"].value == pytest.approx(0.1699, abs=5e-5)  # 16.2 cm² of 10 µm at 10.49 g/cm³


def test_the_doubt_of_the_filling_s_density_reaches_the_prediction():
    """0.898 cm³ of filling, known to 0.1 g/cm³, leaves 0.09 g: the 8.78 g measured lie within it."""
    figures = _figures(_coin_copy(density_spread=0.1))
    predicted = figures["Mass predicted"]
    assert predicted.plus_minus == pytest.approx(0.09, abs=0.002)
    assert abs(8.78 - predicted.value) < predicted.plus_minus
    assert {entry.symbol: entry.evidence for entry in figures["Fill"].working.inputs}["ρ"] == "calculated"
