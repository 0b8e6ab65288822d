"""Charge from the bench sheet: the current recorded at an instant holds until the next entry."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from pint import Quantity

from process.chemistry.errors import ChemistryError
from records.units import ureg

DRIFT_LIMIT = 0.05  # of the held current
SECONDS_PER_HOUR = 3600.0
ROUNDING = 1 + 1e-9  # so that exactly 5 % is not more than 5 % by the last binary digit
Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Drift:
    """Between two entries the current changed, and nobody wrote that it was switched."""

    index_count: int  # the later entry, counted from 0
    from_a: float
    to_a: float
    doubt_ah: float  # how far the charge of this stretch could be off

    @property
    def share(self) -> float:
        return abs(self.to_a - self.from_a) / self.from_a


@dataclass(frozen=True)
class SheetCharge:
    """The sheet’s figure, at each entry and in all."""

    charge: Quantity
    cumulative_ah: Floats
    until_ah: float
    energised_h: float
    elapsed_h: float
    drifts: tuple[Drift, ...]

    @property
    def doubt(self) -> Quantity:
        """Sum of what the flagged stretches could be off."""
        return ureg.Quantity(sum(drift.doubt_ah for drift in self.drifts), "A*h")


def sheet_charge(
    instants_s: ArrayLike,
    currents_a: ArrayLike,
    until_s: float | None = None,
    switched: Sequence[bool] | None = None,
) -> SheetCharge:
    """Charge of a bench sheet up to its last entry, or up to an instant while the run goes on.

    `switched` says for each entry whether the current was set then (start, step, cut, stop, restart); such a
    change is no drift. Without it, only changes to or from zero count as switching.

    Equation: Q [A·h] = Σ I(i) [A]·(t(i+1) − t(i)) [s] / 3600
    Errors: lists of unequal length; a current that is negative or no number; instants out of order.
    Source: step integration of the definition Q = ∫I·dt; DRIFT_LIMIT is a rule of this register.

    >>> sheet = sheet_charge([0, 3600, 7200], [0.24, 0.64, 0.0])
    >>> f"{sheet.charge:.2f~P}", sheet.energised_h
    ('0.88 A·h', 2.0)
    """
    times, currents = _sheet(instants_s, currents_a)
    if times.size == 0:
        return SheetCharge(ureg.Quantity(0.0, "A*h"), times, 0.0, 0.0, 0.0, ())
    end = times[-1] if until_s is None else float(until_s)
    _finite("until", np.array([end]))
    spans_h = np.diff(np.clip(np.append(times, max(end, times[0])), None, end)) / SECONDS_PER_HOUR
    cumulative = np.append(0.0, np.cumsum(currents * spans_h))
    energised = float(spans_h[currents > 0].sum())
    return SheetCharge(
        charge=ureg.Quantity(float(cumulative[-1]), "A*h"),
        cumulative_ah=cumulative[:-1],
        until_ah=float(cumulative[-1]),
        energised_h=energised,
        elapsed_h=float(spans_h.sum()),
        drifts=_drifts(times, currents, end, switched),
    )


def charge_at(instants_s: ArrayLike, currents_a: ArrayLike, at_s: ArrayLike) -> Floats:
    """Charge in ampere-hours that the sheet gives at each of many instants, as for a chart.

    Equation: Q(t) [A·h] = Q(i) [A·h] + I(i) [A]·(t − t(i)) [s] / 3600, where i is the last entry before t
    Errors: those of sheet_charge.
    Source: step integration of the definition Q = ∫I·dt.

    >>> charge_at([0, 3600], [0.5, 1.0], [0, 1800, 3600, 7200]).tolist()
    [0.0, 0.25, 0.5, 1.5]
    """
    times, currents = _sheet(instants_s, currents_a)
    wanted = np.asarray(at_s, dtype=float)
    _finite("at", wanted)
    if times.size == 0:
        return np.zeros_like(wanted)
    known = sheet_charge(times, currents).cumulative_ah
    beyond = np.clip(wanted - times[-1], 0.0, None) * currents[-1] / SECONDS_PER_HOUR
    return np.interp(wanted, times, known) + beyond


def _sheet(instants_s: ArrayLike, currents_a: ArrayLike) -> tuple[Floats, Floats]:
    times, currents = np.asarray(instants_s, dtype=float), np.asarray(currents_a, dtype=float)
    if times.ndim != 1 or times.shape != currents.shape:
        raise ChemistryError("currents", "give one current for each instant")
    _finite("instants", times)
    _finite("currents", currents)
    if np.any(np.diff(times) < 0):
        raise ChemistryError("instants", "are out of order; sort the entries by time")
    if np.any(currents < 0):
        raise ChemistryError("currents", f"cannot be negative; {currents.min():g} A was given")
    return times, currents


def _finite(name: str, values: Floats) -> None:
    if not np.all(np.isfinite(values)):
        raise ChemistryError(name, "must all be finite numbers; correct or leave out the entry")


def _drifts(times: Floats, currents: Floats, end: float, switched: Sequence[bool] | None) -> tuple[Drift, ...]:
    before, after = currents[:-1], currents[1:]
    set_then = np.zeros(after.size, bool) if switched is None else np.asarray(switched, dtype=bool)[1:]
    if set_then.shape != after.shape:
        raise ChemistryError("switched", "say for each entry whether the current was set then")
    off = (before == 0) | (after == 0) | set_then | (times[1:] > end)
    changed = np.abs(after - before) > DRIFT_LIMIT * before * ROUNDING
    doubt = np.abs(after - before) * np.diff(times) / SECONDS_PER_HOUR
    return tuple(
        Drift(int(i) + 1, float(before[i]), float(after[i]), float(doubt[i])) for i in np.flatnonzero(changed & ~off)
    )
