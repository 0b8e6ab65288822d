"""The metals that can be deposited, as a choice."""

from django import forms

from process.chemistry.metals import IONS, written


def metal_field() -> forms.ChoiceField:
    choices = [(code, f"{metal.name}, {written(code)}") for code, metal in IONS.items()]
    return forms.ChoiceField(label="Metal", choices=choices, initial="Cu2+")
