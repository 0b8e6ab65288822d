"""One file one idea: budgets for files, functions and templates."""

from collections.abc import Iterable
from pathlib import Path
from statistics import median

from tests.conventions.source import functions, line_count, name_of, python_files, templates

FILE_LINES, MEDIAN_LINES, FUNCTION_LINES, TEMPLATE_LINES = 300, 80, 30, 120


def longer_than(most: int, paths: Iterable[Path]) -> list[str]:
    return [f"{name_of(path)} has {lines} lines" for path in paths if (lines := line_count(path)) > most]


def test_a_file_is_one_idea():
    assert longer_than(FILE_LINES, python_files("records", "process", "tests")) == []


def test_half_of_the_files_are_short():
    sizes = [lines for path in python_files() if (lines := line_count(path)) > 1]
    assert median(sizes) < MEDIAN_LINES


def test_nine_functions_in_ten_are_short():
    lengths = [(lines, name, name_of(path)) for path in python_files() for name, lines in functions(path)]
    long = sorted((each for each in lengths if each[0] >= FUNCTION_LINES), reverse=True)
    assert len(long) <= len(lengths) / 10, "\n".join(f"{lines} {name} in {path}" for lines, name, path in long[:20])


def test_a_template_fits_on_two_screens():
    assert longer_than(TEMPLATE_LINES, templates()) == []
