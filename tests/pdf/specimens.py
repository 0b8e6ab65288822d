"""Specimen papers from the invented museum of the demo: two reports, a label and tags."""

from dataclasses import replace
from datetime import UTC, datetime

from records.pdf import blocks as b
from records.pdf.document import build
from records.pdf.labels import GalleryLabel
from records.pdf.tags import ObjectTag, UnmarkedTag
from tests.pdf.pictures import medal
from tests.pdf.specimen_condition import CONDITION, condition_blocks
from tests.pdf.specimen_process import PROCESS, process_blocks

ISSUED = datetime(2026, 4, 20, 9, 30, tzinfo=UTC)
RECORD = {"number": "R.2026.1", "charge_ah": 36.85, "note": "Ø 58.34 mm <b>&"}


def condition_report(photo: b.Photo | None = None, page_size: str = "A4") -> bytes:
    return build(replace(CONDITION, page_size=page_size), condition_blocks(photo), RECORD, ISSUED)


def process_report(photo: b.Photo | None = None) -> bytes:
    return build(PROCESS, process_blocks(photo), RECORD, ISSUED)


PHOTO = b.Photo(medal(), "Obverse. Photograph of the original, natural size")
LABEL = GalleryLabel(
    kind_and_date="Electrotype copy, 2026",
    title="after a cast bronze medal of Maud Ferrigan by Corvin Aldersey the Younger, 1624",
    lines=("Copper, tin-alloy filling, patinated", "Original OVM.1931.0044, in store"),
    text="The mistress of the tide-mill had her portrait cast once. This copy weighs 65 g, the bronze 71 g.",
    credit="Copy made in the museum's workshop.",
    number="R.2026.1",
)
TAG = ObjectTag(
    "R.2026.1",
    "Electrotype copy, 2026",
    "after the medal of Maud Ferrigan, 1624",
    "https://register.example/c/R.2026.1",
)
UNMARKED_TAG = UnmarkedTag("R.2026.4", "Electrotype copy, 2026, after OVM.1931.0044")
