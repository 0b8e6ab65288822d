"""The project's own text: its files, the functions in them, and where a pattern stands in it."""

import ast
import re
from collections.abc import Iterable, Iterator
from pathlib import Path

ROOT = Path(__file__).parents[2]
APPS = ("records", "process")


def python_files(*folders: str) -> list[Path]:
    """Python written by hand in these folders; migrations are written by Django."""
    found = (path for folder in folders or APPS for path in (ROOT / folder).rglob("*.py"))
    return sorted(path for path in found if "migrations" not in path.parts)


def templates() -> list[Path]:
    return sorted(path for path in (ROOT / "templates").rglob("*") if path.is_file())


def static_files() -> list[Path]:
    """Style sheets, scripts and drawings: what a browser reads beside the page."""
    found = (path for app in APPS for path in (ROOT / app / "static").rglob("*"))
    return sorted(path for path in found if path.suffix in {".css", ".js", ".svg"})


def name_of(path: Path) -> str:
    return str(path.relative_to(ROOT))


def line_count(path: Path) -> int:
    return len(path.read_text().splitlines())


def places(pattern: re.Pattern[str], paths: Iterable[Path]) -> list[str]:
    """`file:line  what was found` for each match, as a failing test shows it."""
    found = []
    for path in paths:
        text = path.read_text()
        for match in pattern.finditer(text):
            found.append(f"{name_of(path)}:{text.count(chr(10), 0, match.start()) + 1}  {match.group().strip()[:80]}")
    return found


def functions(path: Path) -> Iterator[tuple[str, int]]:
    """Each function's name and its lines, docstring aside."""
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            doc = node.body[0] if ast.get_docstring(node) else None
            doc_lines = doc.end_lineno - doc.lineno + 1 if doc else 0
            yield node.name, node.end_lineno - node.lineno + 1 - doc_lines
