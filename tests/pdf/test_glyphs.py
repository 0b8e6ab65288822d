"""No empty boxes: characters find a face that has them or are reported."""

import pytest

from records.pdf import blocks as b
from records.pdf import fonts
from records.pdf.document import build
from records.pdf.glyphs import MissingGlyph, markup, missing, runs
from tests.pdf import reading, specimens
from tests.pdf.specimen_condition import CONDITION

TRADE = "µ μ Ø ² ³ η ρ Ω Δ × − ± ≤ ≥ ≈ → ← ½ ° ′ ″ ■ ▲ △ ✓ № Ł ő ß"
SENTENCES = "Ελληνικά και Кириллица, Łódź, Århus, Çeşme"


def printed(text: str, face_style: b.Block | None = None) -> str:
    return reading.text(build(CONDITION, [face_style or b.Prose(text)], b"{}", specimens.ISSUED))


@pytest.mark.parametrize("text", [TRADE, SENTENCES])
def test_the_trade_s_characters_come_back_from_the_paper(text: str) -> None:
    assert text.replace("Ω", "Ω") in printed(text).replace("Ω", "Ω")


@pytest.mark.parametrize("face", list(fonts.CHAINS))
def test_every_face_finds_greek_cyrillic_and_signs_somewhere(face: str) -> None:
    for run in runs(TRADE + SENTENCES + "⁺⁻●○", face):
        assert all(ord(c) in fonts.covered()[run.face] for c in run.text), run


def test_a_superscript_sign_no_face_has_is_spelt_raised() -> None:
    assert [(r.text, r.rise > 0) for r in runs("Cu²⁺", fonts.SANS)] == [("Cu²", False), ("+", True)]
    assert "Cu²+" in printed("Cu²⁺").replace(" ", "")


def test_states_keep_word_and_shape() -> None:
    assert "• done" in printed("● done")


def test_a_missing_glyph_is_named_before_anything_is_printed() -> None:
    assert missing("mark 印 and 🙂") == "印🙂"
    with pytest.raises(MissingGlyph, match=r"U\+5370.*empty box.*Write the word"):
        printed("mark 印")


def test_markup_escapes_and_keeps_lines() -> None:
    assert markup("a<b&\nc", fonts.SANS, 9) == "a&lt;b&amp;<br/>c"


def test_letters_with_loose_accents_are_composed_and_invisible_ones_dropped() -> None:
    assert [r.text for r in runs("E\u0301\u200b\ufeffx", fonts.SANS)] == ["Éx"]


def test_control_characters_from_old_files_are_dropped() -> None:
    assert [r.text for r in runs("a\x00\x0bb", fonts.SANS)] == ["ab"]
