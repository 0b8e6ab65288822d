"""The decorator that makes a function a formula: it guards its inputs and can show its working."""

import functools
import inspect
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, ParamSpec, TypeVar

from process.chemistry.constants import Constant
from process.chemistry.terms import Term, unit_named

P = ParamSpec("P")
R = TypeVar("R")


@dataclass(frozen=True)
class Formula:
    """What is known of a formula beside its arithmetic; its words come from its docstring."""

    title: str
    equation: str
    source: str
    result: Term
    terms: dict[str, Term]
    constants: tuple[str | Constant, ...]
    signature: inspect.Signature

    def bind(self, *args: Any, **kwargs: Any) -> dict[str, Any]:
        """The inputs by name, defaults filled in; an optional input that is not given is left out."""
        bound = self.signature.bind(*args, **kwargs)
        bound.apply_defaults()
        return {n: value for n, value in bound.arguments.items() if value is not None or n not in self._optional}

    @functools.cached_property
    def _optional(self) -> frozenset[str]:
        return frozenset(name for name, each in self.signature.parameters.items() if each.default is None)


def formula(result: Term, *constants: str | Constant, **terms: Term) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Declare the result, the constants used (a letter is asked of the ion) and a term for each input."""

    def decorate(function: Callable[P, R]) -> Callable[P, R]:
        signature = inspect.signature(function)
        if set(signature.parameters) != set(terms):
            raise TypeError(f"{function.__name__}: declare a term for each of {list(signature.parameters)}")
        known = Formula(*_read(function), result, terms, constants, signature)

        @functools.wraps(function)
        def guarded(*args: P.args, **kwargs: P.kwargs) -> R:
            for name, value in known.bind(*args, **kwargs).items():
                terms[name].check(name, value)
            answer: Any = function(*args, **kwargs)
            return answer.to(unit_named(result.unit))

        guarded.formula = known  # type: ignore[attr-defined]
        return guarded

    return decorate


def _read(function: Callable[..., Any]) -> tuple[str, str, str]:
    """Sentence, equation without its bracketed units, and source, as the docstring gives them."""
    text = inspect.getdoc(function) or ""
    title = re.split("[.;:]", text, maxsplit=1)[0]
    equation = re.sub(r" \[[^]]*\]", "", _line(text, "Equation"))
    return title, equation, _line(text, "Source")


def _line(text: str, heading: str) -> str:
    found = re.search(rf"^{heading}: (.+)$", text, re.MULTILINE)
    return found.group(1) if found else ""
