"""The kit's conventions: each public function says its equation, units, errors, source, and is tested."""

import ast
import importlib
import inspect
import pkgutil
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from process import chemistry
from process.chemistry.formula import Formula
from process.chemistry.terms import pretty

# The machinery that formulas are made with computes nothing itself.
MACHINERY = {"formula", "terms", "errors", "constants", "elements"}
MODULES = [
    importlib.import_module(f"process.chemistry.{each.name}")
    for each in pkgutil.iter_modules(chemistry.__path__)
    if each.name not in MACHINERY
]
FUNCTIONS: dict[str, Callable[..., Any]] = {
    name: function
    for module in MODULES
    for name, function in inspect.getmembers(module, inspect.isfunction)
    if function.__module__ == module.__name__ and not name.startswith("_") and name != "written"
}
FORMULAS: dict[str, Formula] = {
    name: function.formula for name, function in FUNCTIONS.items() if hasattr(function, "formula")
}
TESTS = "\n".join(
    path.read_text() for path in Path(__file__).parent.glob("test_*.py") if path.name != Path(__file__).name
)


def test_no_two_functions_bear_one_name() -> None:
    """One of them would escape every test of this module."""
    names = [
        name
        for module in MODULES
        for name, function in inspect.getmembers(module, inspect.isfunction)
        if function.__module__ == module.__name__ and not name.startswith("_") and name != "written"
    ]
    assert sorted(names) == sorted(set(names))


@pytest.mark.parametrize("name", FUNCTIONS)
def test_docstring_says_equation_units_errors_source_and_example(name: str) -> None:
    text = inspect.getdoc(FUNCTIONS[name]) or ""
    for heading in ("Equation", "Errors", "Source"):
        assert re.search(rf"^{heading}: \S", text, re.MULTILINE), f"{name} lacks {heading}"
    assert ">>> " in text, f"{name} lacks an example"


@pytest.mark.parametrize("name", FORMULAS)
def test_bracketed_units_are_those_of_the_terms(name: str) -> None:
    known = FORMULAS[name]
    (equation,) = re.findall(r"^Equation: (.+)$", inspect.getdoc(FUNCTIONS[name]) or "", re.MULTILINE)
    units = {term.symbol: pretty(term.unit) or "1" for term in (*known.terms.values(), known.result)}
    written = {
        symbol.rstrip("²³"): unit for symbol, unit in re.findall(r"(Π\(1\+c\)³?|[^\W\d]\w*) \[([^]]+)\]", equation)
    }
    assert {symbol: unit for symbol, unit in written.items() if symbol in units} == {
        symbol: unit for symbol, unit in units.items() if symbol
    }


@pytest.mark.parametrize("name", FUNCTIONS)
def test_each_public_function_is_named_in_a_test(name: str) -> None:
    assert re.search(rf"\b{name}\b", TESTS)


def test_functions_are_short() -> None:
    for module in MODULES:
        for node in ast.walk(ast.parse(inspect.getsource(module))):
            if isinstance(node, ast.FunctionDef):
                code = node.body[1:] if ast.get_docstring(node) else node.body
                assert node.end_lineno - code[0].lineno < 30, node.name


def test_the_kit_imports_without_django_and_scipy() -> None:
    names = ", ".join(module.__name__ for module in MODULES)
    code = f"import sys; sys.modules['django'] = sys.modules['scipy'] = None; import {names}"
    subprocess.run([sys.executable, "-c", code], check=True, cwd=Path(__file__).parents[2])
