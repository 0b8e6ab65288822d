"""A number and its unit in one field: what is read, what is refused, what comes back."""

import pytest
from django import forms

from records.forms.quantities import QuantityField


class WeighingForm(forms.Form):
    mass_g = QuantityField("_g", evidence=True)
    note = forms.CharField(required=False)


def test_number_and_selected_unit_become_the_plain_number():
    form = WeighingForm({"mass_g": "2", "mass_g_unit": "kg", "mass_g_kind": "measured", "mass_g_margin": "1 g"})

    assert form.is_valid()
    parsed = form.cleaned_data["mass_g"]
    assert (parsed.canonical, parsed.plus_minus, parsed.kind) == (2000.0, 1.0, "measured")


@pytest.mark.parametrize(
    ("data", "advice"),
    [
        ({}, "Write a number; it is needed here."),
        ({"mass_g": "5 kW"}, "is not known here: write one of g, kg"),
        ({"mass_g": "1e999"}, "too large"),
        ({"mass_g": "9" * 65}, "at most 64 characters"),
        ({"mass_g": "5", "mass_g_unit": "parsec"}, "is not known here"),
        ({"mass_g": "5", "mass_g_kind": "rumour"}, "Choose from the list"),
        ({"mass_g": "5", "mass_g_method": "m" * 201}, "at most 200 characters"),
        ({"mass_g": "5 ± 1", "mass_g_margin": "2"}, "write it once"),
        ({"mass_g": "5", "mass_g_margin": "some"}, "Write the ± as a plain number"),
        ({"mass_g": "", "mass_g_margin": "2"}, "the ± belongs to"),
    ],
)
def test_wrong_number_comes_back_with_one_sentence(data, advice):
    form = WeighingForm(data)

    assert not form.is_valid()
    assert advice in form.errors["mass_g"][0]


def test_what_was_typed_comes_back_letter_by_letter():
    form = WeighingForm({"mass_g": " 5,300 <b>", "mass_g_unit": "kg", "note": "kept"})

    html = form.as_div()

    assert 'value=" 5,300 &lt;b&gt;"' in html
    assert '<option value="kg" selected>' in html
    assert 'value="kept"' in html


def test_label_names_the_number_and_the_unit_has_a_name_of_its_own():
    html = WeighingForm()["mass_g"].as_field_group()

    assert '<label for="id_mass_g">' in html
    assert 'id="id_mass_g"' in html
    assert 'inputmode="decimal"' in html
    assert 'aria-label="Unit of Mass g"' in html


def test_other_usual_unit_is_echoed_beneath():
    form = WeighingForm({"mass_g": "1", "mass_g_unit": "oz (troy)"})

    assert "= 31.10\u2009g" in str(form["mass_g"])


def test_a_unit_without_alternative_is_plain_text():
    class ShareForm(forms.Form):
        share_pct = QuantityField("_pct")

    html = str(ShareForm()["share_pct"])

    assert "<select" not in html
    assert "%" in html
    assert ShareForm({"share_pct": "98,5"}).is_valid()


def test_unchanged_number_counts_as_unchanged():
    form = WeighingForm({"mass_g": "71.36", "mass_g_unit": "g"}, initial={"mass_g": 71.36})

    assert not form.has_changed()
