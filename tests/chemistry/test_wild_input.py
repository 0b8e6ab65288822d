"""Every formula with wild input: an answer that is a number, with a ± that is one, or its own refusal; nothing else."""

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from uncertainties import ufloat

from process.chemistry.errors import ChemistryError
from process.chemistry.metals import IONS
from process.chemistry.terms import IonTerm, Rule, Term
from records.units import ureg
from tests.chemistry.test_docstrings import FORMULAS, FUNCTIONS

SIZES = st.one_of(st.just(0.0), st.sampled_from([1.0, 2.0, 1e-9, 1e9]), st.floats(1e-12, 1e12))
SPREADS = st.one_of(st.just(0.0), st.floats(1e-6, 0.5))


@st.composite
def magnitudes(draw, rule: Rule) -> Any:
    value = draw(SIZES)
    if rule in (Rule.FRACTION, Rule.PLANNED, Rule.SHARE):
        value = min(value, 1.0)
    if rule is Rule.ANY:
        value = draw(st.sampled_from([value, -value]))
    spread = draw(SPREADS) * (abs(value) or 1.0)
    return ufloat(value, spread) if spread else value


@st.composite
def given_for(draw, term: Term) -> Any:
    if isinstance(term, IonTerm):
        return IONS[draw(st.sampled_from(sorted(IONS)))]
    one = magnitudes(term.rule).map(lambda magnitude: ureg.Quantity(magnitude, term.unit))
    return draw(st.lists(one, max_size=4)) if term.many else draw(one)


@pytest.mark.parametrize("name", FORMULAS)
@given(data=st.data())
@settings(max_examples=25, deadline=None)
def test_a_formula_answers_with_a_number_or_refuses_in_its_own_words(name: str, data) -> None:
    known = FORMULAS[name]
    inputs = {each: data.draw(given_for(term), label=each) for each, term in known.terms.items()}
    function = FUNCTIONS[name]
    try:
        answer = function(**inputs)
    except (ChemistryError, OverflowError):
        return
    magnitude = answer.magnitude
    assert math.isfinite(float(getattr(magnitude, "nominal_value", magnitude)))
    assert not math.isnan(float(getattr(magnitude, "std_dev", 0.0)))
