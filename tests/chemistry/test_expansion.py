"""What warmth does to a length, against outside figures; each row of check_values.json names its source."""

import pytest

from process.chemistry.expansion import EXPANSIONS, expansion_of, length_at
from records.units import ureg
from tests.chemistry.check_rows import row
from tests.chemistry.test_check_values import agrees

Q = ureg.Quantity


def test_copper_shrinks_from_the_bath_to_the_gallery() -> None:
    known = row("CTE-Cu")
    moved = length_at(known["L"], EXPANSIONS["copper"].quantity, Q(25, "degC")) - known["L"]
    agrees(moved, known.expected, 1e-6)
    wax = row("CTE-wax2")
    moved = length_at(wax["L"], EXPANSIONS["wax"].quantity, Q(35, "degC")) - wax["L"]
    agrees(moved, wax.expected, 1e-6)


# OpenStax College Physics 2e, table 13.2; copper 16.8 by the Copper Development Association, OpenStax has 17.
OPENSTAX_PER_MILLION = {"silver": 18, "gold": 14, "lead": 29, "brass": 19, "copper": 17}
# From memory: tin bronze 17 to 19, gypsum 16 to 20, silicone rubber 250 to 300, pattern waxes 350 to 750.
SPANS_PER_MILLION = {"bronze": (17, 19), "gypsum": (16, 20), "plaster": (16, 20), "silicone": (250, 300),
                     "wax": (350, 750)}  # fmt: skip


def test_expansion_of_each_material() -> None:
    found = {name: each.quantity.m_as("1/K") * 1e6 for name, each in EXPANSIONS.items()}
    assert found.keys() == OPENSTAX_PER_MILLION.keys() | SPANS_PER_MILLION.keys()
    for name, known in OPENSTAX_PER_MILLION.items():
        assert found[name] == pytest.approx(known, abs=0.25)
    for name, (least, most) in SPANS_PER_MILLION.items():
        assert least <= found[name] <= most
    assert found["silicone"] == pytest.approx(275)  # the middle, as its source says


def test_materials_are_known_by_their_first_word() -> None:
    assert expansion_of("gypsum plaster, shellac") is EXPANSIONS["gypsum"]
    assert expansion_of("silvered copper, resin") is EXPANSIONS["copper"]
    assert expansion_of("") is None
