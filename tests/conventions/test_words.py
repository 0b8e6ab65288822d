"""What stands nowhere in the project: unfinished notes, swallowed errors, another clock, this machine's own paths."""

import ast
import re

import pytest

from tests.conventions.source import ROOT, name_of, python_files, static_files, templates

UNFINISHED = re.compile(r"\b(?:TO" + r"DO|FIX" + r"ME|X" + r"XX|HACK|lorem ipsum)\b")
OTHER_CLOCKS = re.compile(
    r"timezone\.(?:now|localdate|localtime)\(\)|datetime\.(?:now|utcnow|today)\(|date\.today\(|\btime\.time\(|auto_now"
)
CLOCK = ROOT / "records" / "clock.py"
TONE = re.compile(r"please note|\boops\b|\bsorry\b|\bsimply\b|\w!(?:\s|$)", re.IGNORECASE)
AMERICAN = re.compile(r"\b(?:color|gray|center|catalog|analyze|liter|license to|molds?)\b", re.IGNORECASE)
TEXTS = [*python_files("records", "process", "tests"), *templates(), *static_files()]


def spoken(template: str) -> str:
    """What a person reads of a template: no tags, variables or comments."""
    template = re.sub(r"{%\s*comment\s*%}.*?{%\s*endcomment\s*%}", " ", template, flags=re.DOTALL)
    return re.sub(r"{#.*?#}|{%.*?%}|{{.*?}}|<[^>]*>", " ", template, flags=re.DOTALL)


@pytest.mark.parametrize("path", TEXTS, ids=name_of)
def test_nothing_is_left_unfinished(path):
    text = path.read_text()
    assert not UNFINISHED.search(text)
    assert str(ROOT) + "/" not in text, "a path of one machine"


@pytest.mark.parametrize("path", python_files(), ids=name_of)
def test_only_one_room_knows_the_time(path):
    found = OTHER_CLOCKS.findall(path.read_text())
    assert path == CLOCK or not found, "ask records.clock, which tests and the demo can hold still"


@pytest.mark.parametrize("path", python_files("records", "process", "tests"), ids=name_of)
def test_no_error_is_swallowed(path):
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.ExceptHandler):
            empty = all(isinstance(line, ast.Pass) or is_ellipsis(line) for line in node.body)
            assert node.type is not None and not empty, f"{name_of(path)}:{node.lineno}"


def is_ellipsis(line: ast.stmt) -> bool:
    return isinstance(line, ast.Expr) and isinstance(line.value, ast.Constant) and line.value.value is ...


@pytest.mark.parametrize("path", templates(), ids=name_of)
def test_pages_speak_plainly_and_in_british_spelling(path):
    words = spoken(path.read_text())
    assert TONE.findall(words) == []
    assert AMERICAN.findall(words) == []
