"""Templates show: no style or script inside them, nothing fetched from elsewhere, comments that Django sees."""

import re

import pytest

from tests.conventions.source import name_of, places, python_files, static_files, templates

INLINE = {
    "style attribute": re.compile(r"\sstyle\s*="),
    "style element": re.compile(r"<style\b"),
    "script in the page": re.compile(r"<script\b(?![^>]*\bsrc=)"),
    "event attribute": re.compile(r"<[^>{]*\son[a-z]+\s*="),
    "script in an htmx attribute": re.compile(r"\shx-(on|vals\s*=\s*[\"']js:)"),
    "script address": re.compile(r"javascript:", re.IGNORECASE),
}
# Any address with a host, but for the names of XML vocabularies, from which nothing is fetched.
ELSEWHERE = re.compile(r"(?:https?:)?//(?!www\.w3\.org/)[\w-]+(?:\.[\w-]+)*\.[a-z]{2,}", re.IGNORECASE)


@pytest.mark.parametrize("what", INLINE)
def test_no_template_holds_a(what):
    assert places(INLINE[what], templates()) == []


def test_markup_made_in_python_has_no_inline_style_either():
    assert places(re.compile(r"<[a-z][^<>\n]*\sstyle="), python_files()) == []


def test_a_page_asks_nobody_else():
    assert places(ELSEWHERE, [*templates(), *static_files()]) == []


def test_a_short_comment_ends_on_its_line():
    """Django prints a comment that is opened with one brace and a hash and not closed on the same line."""
    assert places(re.compile(r"\{#(?!.*#\})[^\n]*"), templates()) == []


def asked_by_templates(tag: str) -> set[str]:
    """Templates of our own that others name in this tag."""
    pattern = re.compile(rf"{{%\s*{tag}\s+\"([^\"]+)\"")
    return {
        name for path in templates() for name in pattern.findall(path.read_text()) if not name.startswith("django/")
    }


def test_what_another_template_includes_says_so_by_its_name():
    included = asked_by_templates("include")
    assert [name for name in sorted(included) if not name.rsplit("/")[-1].startswith("_")] == []


def test_every_template_that_another_names_exists():
    names = {name_of(path).removeprefix("templates/") for path in templates()}
    assert asked_by_templates("(?:include|extends)") - names == set()
