"""The metals that can be deposited, as a choice."""

from django import forms

from process.chemistry.metals import IONS

RAISED = str.maketrans("0123456789+", "⁰¹²³⁴⁵⁶⁷⁸⁹⁺")


def written(code: str) -> str:
    """The ion as a chemist writes it, its charge raised: Cu²⁺."""
    symbol = code.rstrip("0123456789+")
    return symbol + code[len(symbol) :].translate(RAISED)


def metal_field() -> forms.ChoiceField:
    choices = [(code, f"{metal.name}, {written(code)}") for code, metal in IONS.items()]
    return forms.ChoiceField(label="Metal", choices=choices, initial="Cu2+")
