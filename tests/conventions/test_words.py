"""What stands nowhere in the project: unfinished notes, swallowed errors, another clock, this machine's own paths."""

import ast
import re
from collections.abc import Iterator

from tests.conventions.source import APPS, ROOT, name_of, places, python_files, static_files, templates

EVERYTHING = [*python_files("records", "process", "tests"), *templates(), *static_files()]
# Written in two halves, so that this file does not find itself.
UNFINISHED = re.compile(r"\b(?:TO" r"DO|FIX" r"ME|XX" r"X|HA" r"CK|lorem " r"ipsum)\b")
OTHER_CLOCKS = re.compile(
    r"timezone\.(?:now|localdate|localtime)\(\)|datetime\.(?:now|utcnow|today)\(|date\.today\(|\btime\.time\(|auto_now"
)
# File: why it may ask another clock.
MAY_ASK = {
    "records/clock.py": "it is the one source of the present instant",
    "records/imaging/store.py": "the age of a file is told by the disk's own clock, which nobody holds still",
}
TONE = re.compile(r"please note|\boops\b|\bsorry\b|\bsimply\b|\w!(?:\s|$)", re.IGNORECASE)
AMERICAN = re.compile(r"\b(?:color|gray|center|catalog|analyze|liter|molds?)\b", re.IGNORECASE)
# What a person does not read of a template: comments, tags, variables, markup.
SILENT = re.compile(r"{%\s*comment\s*%}.*?{%\s*endcomment\s*%}|{#.*?#}|{%.*?%}|{{.*?}}|<[^>]*>", re.DOTALL)


def test_nothing_is_left_unfinished():
    assert places(UNFINISHED, EVERYTHING) == []


def test_no_file_names_the_folder_it_stands_in():
    assert places(re.compile(re.escape(f"{ROOT}/")), EVERYTHING) == []


def test_only_one_room_knows_the_time():
    rooms = [path for path in python_files() if name_of(path) not in MAY_ASK]
    assert places(OTHER_CLOCKS, rooms) == [], "ask records.clock, which tests and the demo can hold still"


def test_no_error_is_swallowed():
    swallowed = [
        f"{name_of(path)}:{node.lineno}"
        for path in python_files("records", "process", "tests")
        for node in ast.walk(ast.parse(path.read_text()))
        if isinstance(node, ast.ExceptHandler) and (node.type is None or all(says_nothing(line) for line in node.body))
    ]
    assert swallowed == []


def says_nothing(line: ast.stmt) -> bool:
    ellipsis = isinstance(line, ast.Expr) and isinstance(line.value, ast.Constant) and line.value.value is ...
    return isinstance(line, ast.Pass) or ellipsis


def test_pages_speak_plainly_and_in_british_spelling():
    for path in templates():
        words = SILENT.sub(" ", path.read_text())
        assert (name_of(path), TONE.findall(words), AMERICAN.findall(words)) == (name_of(path), [], [])


# Between letters, or after a plural before the next word: “the mould's owner”, “the owners' words”.
TYPEWRITTEN = re.compile(r"(?<=[A-Za-z])'(?=(?:s|t|re|ll|d|ve)\b)|(?<=[a-z]s)'(?= [a-z])")


# Of a template nobody reads the comments, nor the names that its tags put between quotes.
UNREAD = re.compile(r"{%\s*comment\s*%}.*?{%\s*endcomment\s*%}|{#.*?#}|(?<=[\s=:])'[\w-]*'", re.DOTALL)


def docstrings(tree: ast.Module) -> set[ast.Constant]:
    """Those that only developers read; a formula's is shown with its working."""
    bodies = [node.body for node in ast.walk(tree) if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef)]
    return {body[0].value for body in bodies if body and isinstance(body[0], ast.Expr)}


def read_by_people() -> Iterator[tuple[str, str]]:
    """Where it stands, and each text that may come to stand on a page or a paper."""
    for path in templates():
        yield name_of(path), UNREAD.sub(" ", path.read_text())
    for path in python_files():
        tree = ast.parse(path.read_text())
        unread = set() if path.is_relative_to(ROOT / "process" / "chemistry") else docstrings(tree)
        for node in ast.walk(tree):
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and node not in unread:
                yield f"{name_of(path)}:{node.lineno}", node.value
    for path in (each for app in APPS for each in (ROOT / app).rglob("*.toml")):
        lines = enumerate(path.read_text().splitlines(), 1)
        yield from ((f"{name_of(path)}:{number}", line) for number, line in lines if not line.startswith("#"))


def test_an_apostrophe_that_people_read_is_a_printed_one():
    assert [(place, text[:80]) for place, text in read_by_people() if TYPEWRITTEN.search(text)] == []
