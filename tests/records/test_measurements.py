"""Measurements: the dimension decides about column and units, what was typed is kept."""

import pytest
from django.core.exceptions import ValidationError
from django.test import Client

from records.models import Item, Measurement
from tests.factories import make_item, make_party, make_user

pytestmark = pytest.mark.django_db
ADD = "/things/R.1/measurements/new/"


@pytest.fixture
def technician(client: Client) -> Client:
    client.force_login(make_user("technician"))
    make_item("R.1")
    return client


def post(client: Client, what: str, number: str, unit: str, **more: str):
    names = list(client.get(ADD).context["form"].fields["amount"].widget.widgets_names)
    parts = dict(
        zip(names, [number, unit, more.pop("kind", ""), more.pop("method", ""), more.pop("margin", "")], strict=True)
    )
    data = {f"amount{ending}": value for ending, value in parts.items()}
    return client.post(ADD, {"what": what, "point": "12 h to 6 h", **data, **more})


# 1 in = 25.4 mm and 1 oz (avoirdupois) = 28.349523125 g exactly: NIST Handbook 44, appendix C.
@pytest.mark.parametrize(
    ("what", "number", "unit", "column", "value"),
    [
        ("diameter", "58,40", "mm", "length_mm", 58.4),
        ("height", "10.3", "in", "length_mm", 261.62),
        ("mass", "2.517", "oz (avoirdupois)", "mass_g", 71.355749705625),
        ("density", "8800", "kg/m³", "density_g_cm3", 8.8),
        ("die_axis", "0", "°", "angle_deg", 0.0),
    ],
)
def test_number_is_kept_in_the_column_and_unit_of_its_dimension(technician, what, number, unit, column, value):
    answer = post(technician, what, number, unit)

    row = Measurement.objects.get()
    assert answer.status_code == 302
    assert row.value_field == column
    assert row.value == pytest.approx(value, rel=1e-9)
    assert row.as_typed[column]["text"] == number and row.as_typed[column]["unit"] == unit


def test_kind_of_evidence_method_and_margin_are_shown_on_the_page(technician):
    post(technician, "mass", "71.36", "g", kind="quoted", method="lender's file", margin="0.01")

    page = technician.get("/things/R.1/").content.decode()
    assert "quoted" in page and "lender&#x27;s file" in page and "0.01" in page


@pytest.mark.parametrize(
    ("what", "number", "unit"),
    [
        ("mass", "71.36", "mm"), ("diameter", "58.4", "g"), ("diameter", "58.4 furlongs", "mm"),
        ("diameter", "1e999", "mm"),
        ("diameter", "9" * 70, "mm"), ("diameter", "-3", "mm"), ("diameter", "0", "mm"), ("die_axis", "400", "°"),
        ("diameter", "", "mm"), ("diameter", "nan", "mm"), ("", "58.4", "mm"), ("diameter", "9**9**9", "mm"),
    ],
)  # fmt: skip
def test_what_cannot_be_measured_comes_back_with_what_was_typed(technician, what, number, unit):
    answer = post(technician, what, number, unit, note="by the window")

    page = answer.content.decode()
    assert answer.status_code == 422
    assert not Measurement.objects.exists()
    assert 'value="by the window"' in page
    assert not number or f'value="{number}"' in page


def test_future_day_is_refused(technician):
    assert post(technician, "mass", "71.36", "g", measured_on="2999-01-01").status_code == 422


def test_correcting_moves_the_number_to_the_other_column(technician):
    post(technician, "diameter", "58.4", "mm")
    row = Measurement.objects.get()
    shown = technician.get(f"/measurements/{row.pk}/edit/").content.decode()
    assert 'value="58.4"' in shown
    names = list(technician.get(ADD).context["form"].fields["amount"].widget.widgets_names)

    technician.post(
        f"/measurements/{row.pk}/edit/",
        {"what": "mass", f"amount{names[0]}": "71.36", f"amount{names[1]}": "g", "version": "0"},
    )

    row.refresh_from_db()
    assert (row.length_mm, row.mass_g) == (None, 71.36)
    assert list(row.as_typed) == ["mass_g"]


def test_reader_may_not_measure(client):
    make_item("R.1")
    client.force_login(make_user("reader"))

    assert client.get(ADD).status_code == 403


def test_people_measure_and_a_firm_that_stands_there_already_stays(technician):
    person, firm = make_party("Pell Dunnock-Ashe"), make_party("Greyling Street Platers", kind="institution")
    row = Measurement.objects.create(item_id=Item.objects.get().pk, what="mass", mass_g=71.36, measured_by=firm)

    new = technician.get(ADD).context["form"].fields["measured_by"]
    old = technician.get(f"/measurements/{row.pk}/edit/").context["form"].fields["measured_by"]

    assert new.clean("pell dunnock-ashe") == person and old.clean("Greyling Street Platers") == firm
    with pytest.raises(ValidationError, match="cannot stand here: only a person sees"):
        new.clean("Greyling Street Platers")
