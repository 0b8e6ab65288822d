"""A formula's answer as a figure with its working; what cannot be computed says why instead of failing."""

from collections.abc import Callable, Mapping
from typing import Any

from pint import Quantity
from uncertainties import ufloat

from process.chemistry.errors import ChemistryError
from process.chemistry.worked import Working, worked
from records.figures import Figure
from records.units import SUFFIXES, ureg


def figure(
    label: str, suffix: str, function: Callable[..., Any], *, evidence: Mapping[str, str] | None = None, **inputs: Any
) -> Figure:
    """The formula put to these inputs; its value is None, with the reason as note, where it has none."""
    try:
        return figure_of(label, suffix, worked(function, evidence=evidence, **inputs))
    except ChemistryError as error:
        return Figure(label, None, suffix, note=f"Not computed: {error}.")
    except OverflowError:
        return Figure(label, None, suffix, note="Not computed: the numbers are beyond reckoning. Look at their units.")


def figure_of(label: str, suffix: str, working: Working, **more: Any) -> Figure:
    """A working as a figure in the unit that the suffix names."""
    value, spread = apart(working.quantity.m_as(SUFFIXES[suffix]))
    return Figure(label, value, suffix, plus_minus=spread, working=working, **more)


def quantity_of(known: Figure) -> Quantity | None:
    """A figure put into the next formula, with its ±; None where it has no value."""
    if known.working is not None:
        return known.working.quantity
    if known.value is None:
        return None
    value = ufloat(known.value, known.plus_minus) if known.plus_minus else known.value
    return ureg.Quantity(value, SUFFIXES[known.suffix])


def apart(magnitude: Any) -> tuple[float, float | None]:
    """Number and ± of a magnitude."""
    spread = float(getattr(magnitude, "std_dev", 0.0))
    return float(getattr(magnitude, "nominal_value", magnitude)), spread or None
