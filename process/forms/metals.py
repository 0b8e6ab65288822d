"""The metals that can be deposited, as a choice."""

from django import forms

from process.chemistry.metals import IONS


def metal_field() -> forms.ChoiceField:
    return forms.ChoiceField(
        label="Metal", choices=[(code, f"{metal.name}, {code}") for code, metal in IONS.items()], initial="Cu2+"
    )
