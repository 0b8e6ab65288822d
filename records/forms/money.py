"""Sums in a form: the currency stands beside them as soon as it is known."""

from django import forms

from records.forms.quantities import QuantityField

UNKNOWN = "currency"


def say_currency(form: forms.BaseForm, currency: str = "") -> None:
    """Put it beside every sum; without one given, that of the form's own field."""
    own = form["currency"].value() if "currency" in form.fields else ""
    for field in form.fields.values():
        if isinstance(field, QuantityField) and field.suffix.startswith("_money"):
            field.widget.currency = str(currency or own or UNKNOWN).strip()
