"""Stylesheets are found, partials hold no style of their own, and every pair of colours is legible."""

import re
from pathlib import Path

import pytest
from django.conf import settings
from django.contrib.staticfiles import finders

COMPONENTS = settings.BASE_DIR / "templates" / "components"
STYLES = settings.BASE_DIR / "records" / "static" / "records"


@pytest.mark.parametrize("path", sorted(COMPONENTS.glob("*.html")), ids=lambda path: path.name)
def test_a_partial_opens_with_what_it_needs_and_holds_no_style_or_script(path: Path):
    source = path.read_text()
    assert source.startswith(("{# ", "{% comment %}"))
    assert not re.search(r"<script|<style|\sstyle=|\son[a-z]+=", source.split("{% endcomment %}")[-1])


def test_no_comment_of_a_template_spans_lines():
    """Django prints `{# #}` over several lines as text; `{% comment %}` is meant."""
    templates = (settings.BASE_DIR / "templates").rglob("*.html")
    assert [path.name for path in templates if re.search(r"\{#[^}]*\n[^}]*#\}", path.read_text())] == []


def test_every_stylesheet_a_page_names_is_found_and_none_lies_idle():
    pages = "".join(path.read_text() for path in (settings.BASE_DIR / "templates").rglob("*.html"))
    listed = " ".join(re.findall(r'for sheet in "([^"]+)"', pages)).split()
    named = re.findall(r"records/([a-z_]+)\.css", pages)
    assert {*listed, *named} == {path.stem for path in STYLES.glob("*.css")}


def test_the_serif_is_served_from_its_package():
    faces = re.findall(r'url\("\.\./(fonts/[^"]+)"\)', (STYLES / "tokens.css").read_text())
    assert len(faces) == 3 and all(finders.find(face) for face in faces)


def _luminance(colour: str) -> float:
    channels = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def _contrast(one: str, other: str) -> float:
    light, dark = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("theme", [0, 1], ids=["light", "dark"])
def test_every_pair_of_ink_and_ground_can_be_read(theme):
    # WCAG 2.2, 1.4.3 (text 4.5:1) and 1.4.11 (borders of inputs 3:1); luminance as defined there.
    blocks = re.findall(r":root \{(.*?)\}", (STYLES / "tokens.css").read_text(), re.S)
    token = dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{6})", blocks[theme]))
    grounds = [token[name] for name in ("page", "surface", "copper-tint")]
    for ink in ("ink", "ink-light", "copper", "copper-deep", "done", "look", "blocked"):
        assert min(_contrast(token[ink], ground) for ground in grounds) >= 4.5, ink
    assert min(_contrast(token["edge"], ground) for ground in grounds[:2]) >= 3
    assert _contrast(token["on-copper"], token["copper"]) >= 4.5
    assert _contrast(token["on-copper"], token["copper-deep"]) >= 4.5
