"""What every form of a record does with its numbers, dates, groups and taken numbers."""

from datetime import date

import pytest
from django.core.exceptions import ValidationError

from records.forms.base import RecordForm
from records.models import ConditionReport, Item, Measurement
from tests.factories import make_item, make_party


class ItemForm(RecordForm):
    class Meta:
        model = Item
        fields = ["number", "kind", "title", "date_words", "maker", "description"]
        groups = [("What it is", ["number", "kind", "title"]), ("Who made it?", ["date_words", "maker"])]


class MassForm(RecordForm):
    class Meta:
        model = Measurement
        fields = ["what", "mass_g"]
        evidence_fields = ["mass_g"]


class BareMassForm(RecordForm):
    class Meta:
        model = Measurement
        fields = ["mass_g", "note"]


def make_measurement(**fields):
    return Measurement.objects.create(**{"item": make_item(), "what": "mass", "mass_g": 71.36} | fields)


def item_data(**changes):
    return {"number": "OVM.1", "kind": "original", "title": "Medal"} | changes


@pytest.mark.django_db
def test_plain_number_goes_into_the_column_and_the_words_beside_it():
    form = MassForm(
        {"what": "mass", "mass_g": "2,294 oz t", "mass_g_kind": "quoted", "mass_g_method": "sale list"},
        instance=Measurement(item=make_item()),
    )
    assert not form.is_valid()  # a comma and three digits are asked about
    form = MassForm(
        {
            "what": "mass",
            "mass_g": "2.294 oz t ± 0.001",
            "mass_g_kind": "quoted",
            "mass_g_method": "sale list",
        },
        instance=Measurement(item=make_item()),
    )
    assert form.is_valid(), form.errors

    row = form.save()
    row.refresh_from_db()

    assert row.mass_g == pytest.approx(71.3514, abs=1e-4)
    assert row.as_typed["mass_g"] == {
        "number": 2.294,
        "unit": "oz (troy)",
        "text": "2.294 oz t ± 0.001",
        "kind": "quoted",
        "method": "sale list",
        "plus_minus": pytest.approx(0.0311, abs=1e-4),
    }
    assert row.evidence("mass_g") == "quoted"


@pytest.mark.django_db
def test_form_shows_the_words_in_which_a_number_was_entered():
    row = make_measurement(as_typed={"mass_g": {"number": 71.36, "unit": "g", "text": "71,36", "kind": "measured"}})

    html = str(MassForm(instance=row)["mass_g"])

    assert 'value="71,36"' in html
    assert '<option value="measured" selected>' in html


@pytest.mark.django_db
def test_words_are_not_shown_once_the_number_was_changed_elsewhere():
    row = make_measurement(mass_g=70.0, as_typed={"mass_g": {"number": 71.36, "unit": "g", "text": "71.36"}})

    assert 'value="70"' in str(MassForm(instance=row)["mass_g"])


@pytest.mark.django_db
def test_a_form_without_evidence_leaves_it_as_it_was():
    kept = {
        "number": 71.36,
        "unit": "g",
        "text": "71.36",
        "kind": "quoted",
        "method": "list",
        "plus_minus": 0.01,
    }
    row = make_measurement(as_typed={"mass_g": kept})

    form = BareMassForm({"mass_g": "71.36", "mass_g_unit": "g", "note": "x", "version": "0"}, instance=row)
    assert form.is_valid(), form.errors

    assert form.save().as_typed["mass_g"] == kept


@pytest.mark.django_db
def test_subclass_checks_see_plain_numbers():
    class Checked(MassForm):
        def clean(self):
            if self.cleaned_data["mass_g"] > 1000:
                raise ValidationError("Too heavy for this balance.")

    form = Checked({"what": "mass", "mass_g": "2", "mass_g_unit": "kg"}, instance=Measurement(item=make_item()))

    assert form.non_field_errors() == ["Too heavy for this balance."]


@pytest.mark.django_db
def test_number_that_is_taken_is_said_beside_the_field():
    make_item("OVM.1")

    form = ItemForm(item_data(number="ovm.1"))

    assert not form.is_valid()
    assert form.errors == {
        "number": ["“ovm.1” is taken: each number stands for one record. Open that one, or write another."]
    }


@pytest.mark.django_db
def test_taken_number_of_a_plain_unique_column_is_worded_the_same():
    class ReportForm(RecordForm):
        class Meta:
            model = ConditionReport
            fields = ["number"]

    report = ConditionReport(number="CR-1", item=make_item(), occasion="survey", light="daylight")
    report.examined_on, report.examiner = date(2026, 1, 1), make_party()
    report.save()

    assert "“CR-1” is taken" in ReportForm({"number": "CR-1"}).errors["number"][0]


@pytest.mark.django_db
def test_uncertain_date_fills_its_three_columns():
    form = ItemForm(item_data(date_words="about 1868"))
    assert form.is_valid(), form.errors

    row = form.save()

    assert (row.date_words, row.date_edtf) == ("about 1868", "1868~")
    assert (row.date_earliest, row.date_latest) == (date(1863, 1, 1), date(1873, 12, 31))


def test_fields_stand_in_their_groups_and_fold_when_nothing_in_them_is_needed():
    groups = ItemForm().grouped()

    assert [(group.title, group.folded) for group in groups] == [
        ("What it is", False),
        ("Who made it?", True),
        ("Further details", True),
    ]
    assert [field.name for field in groups[1].fields] == ["date_words", "maker"]


def test_a_group_with_something_in_it_stands_open():
    groups = ItemForm(initial={"maker": "Unknown hand"}).grouped()

    assert not groups[1].folded
