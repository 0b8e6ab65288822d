"""The published and computed check values of tests/data/check_values.json, as quantities."""

import json
import re
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from process.chemistry.metals import IONS, Ion, ion
from records.units import ureg

PATH = Path(__file__).parent.parent / "data" / "check_values.json"
SPELT = {
    "oz avdp": "oz", "g/(A.h)": "g/(A*h)", "A.h": "A*h", "A.min/dm2": "A*min/dm**2", "%": "pct",
    "J/(mol.K)": "J/(mol*K)", "A.h/mol": "A*h/mol", "1": "", "g/g": "", "troy oz": "troy_ounce",
    "g/L per mL": "g/L", "gr": "grain",
    "S.cm2/mol": "S*cm**2/mol", "ohm.m2": "ohm*m**2",
    "deg Be": "", "oz avdp/US gal": "oz/US_gallon", "lb/imperial gal": "lb/imperial_gallon",
    "mass %": "pct", "mass % anhydrous": "pct",
}  # fmt: skip


@dataclass(frozen=True)
class Row:
    """One check value: what goes in, what a source says comes out, and how closely."""

    id: str
    inputs: dict[str, Any]
    expected: Any
    tolerance: float

    def __getitem__(self, name: str) -> Any:
        return self.inputs[name]

    def ion(self) -> Ion:
        """The ion whose atomic weight and valence the row gives, or whose code ends its id ("…-Cu2")."""
        density = self.inputs.get("density", self.inputs.get("rho"))
        if "M" not in self.inputs:
            return ion("Cu2+", density)
        weight, valence = self["M"].m_as("g/mol"), self.inputs["z"].magnitude if "z" in self.inputs else 2
        code = next(
            each.code
            for each in IONS.values()
            if abs(each.atomic_weight.magnitude - weight) < 0.01 and each.valence_count == valence
        )
        return ion(code, density)


def rows(*prefixes: str) -> list[Row]:
    """The rows whose id begins with one of the prefixes; to find none would be a mistake."""
    found = [_row(raw) for raw in json.loads(PATH.read_text()) if raw["id"].startswith(prefixes)]
    assert found, f"no check value begins with {prefixes}"
    return found


def row(identity: str) -> Row:
    return next(each for each in rows(identity) if each.id == identity)


def _row(raw: dict[str, Any]) -> Row:
    inputs = {name: _quantity(**each) for name, each in raw["inputs"].items()}
    return Row(raw["id"], inputs, _quantity(**raw["expected"]), raw["rel_tolerance"])


def _quantity(value: Any, unit: str) -> Any:
    if unit in ("part", "parts"):
        return ureg.Quantity(value, "g")
    unit = SPELT.get(unit, re.sub(r"([a-z])([23])\b", r"\1**\2", unit))
    return ureg.Quantity(value, unit)
