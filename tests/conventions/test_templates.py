"""Templates show: no style or script inside them, nothing fetched from elsewhere, comments that Django sees."""

import re

import pytest

from tests.conventions.source import name_of, python_files, static_files, templates

INLINE = {
    "a style attribute": re.compile(r"\sstyle\s*="),
    "a style element": re.compile(r"<style\b"),
    "a script in the page": re.compile(r"<script\b(?![^>]*\bsrc=)"),
    "an event attribute": re.compile(r"<[^>{]*\son[a-z]+\s*="),
    "an htmx script attribute": re.compile(r"\shx-(on|vals\s*=\s*[\"']js:)"),
    "a script address": re.compile(r"javascript:", re.IGNORECASE),
}
ELSEWHERE = re.compile(r"(?:https?:)?//[\w.-]+\.[a-z]{2,}", re.IGNORECASE)
# The names of XML vocabularies look like addresses; nothing is fetched from them.
NAMESPACE = "http://www.w3.org/"


def outside_addresses(text: str) -> list[str]:
    return [found for found in ELSEWHERE.findall(text.replace(NAMESPACE, ""))]


@pytest.mark.parametrize("path", templates(), ids=name_of)
def test_a_template_holds_no_style_or_script(path):
    text = path.read_text()
    assert [what for what, pattern in INLINE.items() if pattern.search(text)] == []


@pytest.mark.parametrize("path", [*templates(), *static_files()], ids=name_of)
def test_a_page_asks_nobody_else(path):
    assert outside_addresses(path.read_text()) == []


@pytest.mark.parametrize("path", templates(), ids=name_of)
def test_a_short_comment_ends_on_its_line(path):
    """Django prints a {# that is not closed on the same line."""
    for number, line in enumerate(path.read_text().splitlines(), 1):
        assert line.count("{#") == line.count("#}"), f"{name_of(path)}:{number} needs comment tags"


@pytest.mark.parametrize("path", python_files(), ids=name_of)
def test_markup_made_in_python_has_no_inline_style_either(path):
    assert not re.search(r"<[a-z][^<>\n]*\sstyle=", path.read_text())


def test_partials_alone_begin_with_an_underscore():
    """A template that another includes is a partial, and says so by its name."""
    everything = "\n".join(path.read_text() for path in templates())
    included = set(re.findall(r"{%\s*include\s+\"([^\"]+)\"", everything))
    assert [name for name in sorted(included) if not name.rsplit("/")[-1].startswith("_")] == []
