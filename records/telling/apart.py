"""Whether one feature tells two pieces apart."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from records.telling.features import FEATURES, Feature

Answer = Literal["apart", "not apart", "not known"]


@dataclass(frozen=True)
class Value:
    """A figure as it was found, with its ±; without one, the last digit written is taken to be sure to one."""

    number: float
    plus_minus: float | None = None
    decimals: int = 0
    kind: str = "measured"

    @property
    def bound(self) -> float:
        return self.plus_minus if self.plus_minus is not None else 10.0**-self.decimals


@dataclass(frozen=True)
class Comparison:
    """One line of the sheet: both values as they stand, whether they tell the pieces apart, and why."""

    feature: Feature
    first: str
    second: str
    answer: Answer
    why: str


def compare(key: str, first: Value | None, second: Value | None, shown: tuple[str, str], unit: str = "") -> Comparison:
    """Two figures tell apart if they differ by more than their bounds together.

    >>> compare("mass", Value(71.36, 0.02), Value(64.71, 0.02), ("71.36 g", "64.71 g"), "g").answer
    'apart'
    >>> compare("diameter", Value(58.40, 0.05), Value(58.34, 0.05), ("58.40 mm", "58.34 mm"), "mm").answer
    'not apart'
    """
    if first is None or second is None:
        missing = "both" if first is None and second is None else "one of them"
        return Comparison(FEATURES[key], *shown, "not known", f"Not measured on {missing}.")
    if guessed := next((value.kind for value in (first, second) if value.kind in ("calculated", "estimated")), ""):
        return Comparison(FEATURES[key], *shown, "not known", f"One of the figures is {guessed}: measure it.")
    apart, sure = abs(first.number - second.number), first.bound + second.bound
    places = max(first.decimals, second.decimals)
    why = f"They differ by {_with(apart, places, unit)}; the bounds together are {_with(sure, places, unit)}"
    guess = "" if None not in (first.plus_minus, second.plus_minus) else ", a last digit where no ± is given"
    return Comparison(FEATURES[key], *shown, "apart" if apart > sure else "not apart", f"{why}{guess}.")


def _with(number: float, places: int, unit: str) -> str:
    return f"{number:.{places}f}{'' if unit in ('', '°') else ' '}{unit}"


def compare_words(key: str, first: str, second: str) -> Comparison:
    """Words are set side by side; a person judges. Nothing written on one side is said, never taken for a no."""
    if first and second:
        why = "Written alike." if first.strip().lower() == second.strip().lower() else "Look at both."
        return Comparison(FEATURES[key], first, second, "not known", why)
    missing = "both" if not first and not second else "one of them"
    return Comparison(FEATURES[key], first, second, "not known", f"Not recorded of {missing}.")


def told_apart(comparisons: Iterable[Comparison]) -> str:
    """The sheet in one sentence."""
    by = [comparison.feature.title.lower() for comparison in comparisons if comparison.answer == "apart"]
    if not by:
        return "Nothing recorded tells these two apart with certainty: do not part them from their tags."
    named = by[0] if len(by) == 1 else f"{', '.join(by[:-1])} and {by[-1]}"
    return f"Told apart by {named}."
