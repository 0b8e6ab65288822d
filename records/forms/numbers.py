"""The number of a record: it stands in addresses and file names, and is told apart by eye."""

from typing import Any

from django import forms

from records.forms.unseen import hidden_in

NOT_IN_NUMBERS = frozenset("/\\?#%\0")
RESERVED = {"new", "issue"}  # words of our own addresses


class NumberField(forms.CharField):
    """One space where several were typed; nothing that an address cannot carry."""

    def to_python(self, value: Any) -> str:
        return " ".join(super().to_python(value).split())

    def validate(self, value: str) -> None:
        super().validate(value)
        if wrong := sorted(NOT_IN_NUMBERS & set(value)):
            raise forms.ValidationError(
                f"A number stands in addresses and file names: write a point or a dash instead of {' '.join(wrong)}."
            )
        if hidden := hidden_in(value):
            raise forms.ValidationError(
                f"A sign that cannot be seen (U+{ord(hidden):04X}) stands in it: type the number anew."
            )
        if value and (value.lower() in RESERVED or value.strip(".") == ""):
            raise forms.ValidationError("This cannot be a number: write the one on the piece or its tag.")
