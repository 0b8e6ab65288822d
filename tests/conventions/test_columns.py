"""A number's name ends in its unit; what counts ends in `_count`."""

import pytest
from django.db.models import DecimalField, FloatField, IntegerField

from records.units import SUFFIXES
from tests.conventions.models import MODELS

# (model or None for all, field): why its name carries no unit.
EXEMPT = {
    (None, "version"): "raised at each change so that a late form is seen; it measures nothing",
    ("ConditionReport", "grade"): "a grade 0–3 from a list of words",
    ("Defect", "severity"): "a grade 0–3 from a list of words",
    ("Finding", "severity"): "a grade 0–3 from a list of words",
    ("Finding", "urgency"): "a grade 0–3 from a list of words",
    ("Run", "distribution_factor"): "a share of the mean: one thickness over another",
    ("AreaPart", "relief_factor"): "one area over another",
    ("Range", "usual_low"): "the row's own `field` names the number, and its ending is the unit",
    ("Range", "usual_high"): "the row's own `field` names the number, and its ending is the unit",
    ("Range", "possible_low"): "the row's own `field` names the number, and its ending is the unit",
    ("Range", "possible_high"): "the row's own `field` names the number, and its ending is the unit",
}
NUMBERS = [
    (model.__name__, field.name)
    for model in MODELS
    for field in model._meta.local_concrete_fields
    if isinstance(field, FloatField | IntegerField | DecimalField) and not field.primary_key
]


@pytest.mark.parametrize(("model", "field"), NUMBERS)
def test_a_number_says_its_unit(model, field):
    if (model, field) in EXEMPT or (None, field) in EXEMPT:
        return
    assert field.endswith((*SUFFIXES, "_count")), f"{model}.{field} ends in no unit of records.units.SUFFIXES"


def test_no_exemption_outlives_its_field():
    known = {*NUMBERS, *((None, field) for _, field in NUMBERS)}
    assert set(EXEMPT) <= known


@pytest.mark.parametrize("model", MODELS)
def test_no_decimal_hides_among_the_floats(model):
    """One kind of number: floats in the canonical unit."""
    assert not [field.name for field in model._meta.local_fields if isinstance(field, DecimalField)]
