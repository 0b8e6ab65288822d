"""A map of measured points on paper: its values are text, its picture is there, an outline does without one."""

from io import BytesIO

import pytest
from pypdf import PdfReader

from records.pdf import blocks as b
from records.pdf.document import build
from records.pdf.spot_map import Chip, Spot, SpotMap
from tests.pdf.pictures import medal
from tests.pdf.specimen_process import PROCESS
from tests.pdf.specimens import ISSUED, RECORD

SPOTS = (
    Spot(0.47, 0.36, "0.08", "inner eye corner R", is_least=True, is_below=True), Spot(0.5, 0.46, "0.41", "nose"),
    Spot(0.5, 0.47, "0.09", "нос <b>", is_below=True),
)  # fmt: skip
CHIPS = (
    Chip("measured", "solid: measured"), Chip("below", "square: below 0.10 mm"),
    Chip("calculated", "hatched: mean 0.25 mm, calculated from the mass, at no place"), Chip("estimated", "estimated"),
)  # fmt: skip


def words_of(block: b.SpotMapBlock) -> str:
    pages = PdfReader(BytesIO(build(PROCESS, [block], RECORD, ISSUED))).pages
    return " ".join(page.extract_text() for page in pages)


@pytest.mark.parametrize("ground", ["photo", "disc", "oval", "plate"])
def test_every_value_stands_as_text_beside_its_place(ground):
    shown = SpotMap("Thickness of S-11, in mm", "Measured.", SPOTS, CHIPS, ground=ground, ratio=0.75)
    photo = b.Photo(medal()) if ground == "photo" else None

    said = words_of(b.SpotMapBlock(shown, photo, "S-11: two of three points below."))

    assert all(text in said for text in ("inner eye corner R 0.08", "nose 0.41", "нос <b> 0.09"))
    assert "hatched: mean 0.25 mm, calculated" in said and "two of three points below" in said
