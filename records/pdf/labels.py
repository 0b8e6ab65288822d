"""Labels and tags as finished PDFs: a tag on its own page, or a gallery label to cut out."""

from dataclasses import dataclass, replace
from datetime import datetime
from io import BytesIO
from typing import Any

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from records.pdf import archive, fonts, label_text, theme
from records.pdf.attachment import record_bytes
from records.pdf.label_text import Words
from records.pdf.page_sizes import PAGE_SIZES
from records.pdf.tags import Tag
from records.wording.reading import reading_size

# The ordinary tag; larger ones for a piece whose limits of use would not be read on it (ISO 216: A7, A6).
TAG_SIZES = ((74 * mm, 40 * mm), (105 * mm, 74 * mm), (148 * mm, 105 * mm))
EASILY_READ_PCT = 80  # of the tag's own sizes; below it the next larger tag is taken
# The three sizes of gallery labels by their width (ISO 216: A6 and A5 upright and across); the height follows the text.
LABEL_WIDTHS = {"small": 105 * mm, "medium": 148 * mm, "large": 170 * mm}
LABEL_MARGIN = 10 * mm
CUT = 5 * mm
TITLE_TO_TEXT = 1.4
SECOND_GAP = 1.3  # of the text's size: one language ends, the other begins
LEAST_PCT = 80  # of the size that the viewing distance asks for
Record = dict[str, Any] | bytes | None


@dataclass(frozen=True)
class GalleryLabel:
    """First the kind of copy with its date, then the title in the same size."""

    kind_and_date: str
    title: str
    lines: tuple[str, ...] = ()
    text: str = ""
    credit: str = ""
    number: str = ""
    second_heading: str = ""  # the same in a second language
    second_lines: tuple[str, ...] = ()
    limits: tuple[str, ...] = ()  # for whoever handles the piece: printed on the sheet, outside what is cut out

    def words(self, size: float) -> list[Words]:
        large, small = size * TITLE_TO_TEXT, max(size * 0.7, 8.0)
        heading = [
            Words(self.kind_and_date, large, fonts.SANS_BOLD, after=0.5),
            Words(self.title, large, fonts.SANS, after=size * 0.6),
        ]
        body = [Words(line, size, after=1) for line in self.lines]
        foot = [
            Words(self.credit, small, colour=theme.LIGHTER),
            Words(self.number, small, colour=theme.LIGHTER),
        ]
        if body:
            body[-1] = Words(self.lines[-1], size, after=size * 0.5)
        second = [
            Words(self.second_heading, large, fonts.SANS_BOLD, after=size * 0.3),
            *(Words(line, size, after=1) for line in self.second_lines[:-1]),
            *(Words(line, size, after=size * 0.7) for line in self.second_lines[-1:]),
        ]
        first = [part for part in (*heading, *body, Words(self.text, size, after=size * 0.7)) if part.text.strip()]
        if self.second_heading and first:
            first[-1] = replace(first[-1], after=size * SECOND_GAP)
        return [*first, *second, *foot]


def new_canvas(out: BytesIO, size: tuple[float, float]) -> Any:
    fonts.covered()
    return Canvas(out, pagesize=size, invariant=1, pageCompression=1, initialFontName=fonts.SANS)


def finish(out: BytesIO, title: str, museum: str, issued_at: datetime, language: str, record: Record = None) -> bytes:
    attached = None if record is None else record_bytes(record)
    return archive.finish(out.getvalue(), archive.Description(title, museum, "", language, issued_at), attached)


def cut_marks(canvas: Any, x: float, y: float, width: float, height: float) -> None:
    canvas.setStrokeColor(theme.INK)
    canvas.setLineWidth(0.3)
    for corner_x, out_x in ((x, -1), (x + width, 1)):
        for corner_y, out_y in ((y, -1), (y + height, 1)):
            canvas.line(corner_x + out_x * 2 * mm, corner_y, corner_x + out_x * (2 * mm + CUT), corner_y)
            canvas.line(corner_x, corner_y + out_y * 2 * mm, corner_x, corner_y + out_y * (2 * mm + CUT))


def _beneath(canvas: Any, label: GalleryLabel, x: float, top: float, room: float) -> None:
    """Beside the label, not on it: what the visitor need not read and the handler must."""
    words = [Words(f"Not part of the label. Limits of use of {label.number}:", 8.5, fonts.SANS_BOLD)]
    words += [Words(limit, 8.5) for limit in label.limits]
    label_text.draw(canvas, label_text.fit(words, LABEL_WIDTHS["medium"], room), x, top, LABEL_WIDTHS["medium"])


def build_label(
    label: GalleryLabel,
    issued_at: datetime,
    *,
    museum: str = "",
    distance_m: float = 0.6,
    light: str = "good",
    size: str = "medium",
    page_size: str = "A4",
    language: str = "en",
    record: Record = None,
) -> bytes:
    """A gallery label with cut marks, set in the size that is read from `distance_m`."""
    page = PAGE_SIZES[page_size]
    wide = LABEL_WIDTHS[size]
    width = wide - 2 * LABEL_MARGIN
    words = label.words(reading_size(distance_m, light))
    longest = page[1] - 2 * theme.MARGIN - 2 * LABEL_MARGIN
    parts = label_text.fit(words, width, longest, LEAST_PCT)
    height = label_text.height_of(parts, width) + 2 * LABEL_MARGIN
    out = BytesIO()
    canvas = new_canvas(out, page)
    x, y = (page[0] - wide) / 2, page[1] - theme.MARGIN - height
    cut_marks(canvas, x, y, wide, height)
    label_text.draw(canvas, parts, x + LABEL_MARGIN, y + height - LABEL_MARGIN, width)
    if label.limits:
        _beneath(canvas, label, theme.MARGIN, y - 2 * CUT, y - theme.MARGIN)
    canvas.save()
    return finish(out, f"Label {label.number}: {label.kind_and_date}", museum, issued_at, language, record)


def build_tag(
    tag: Tag,
    issued_at: datetime,
    *,
    museum: str = "",
    record: Record = None,
) -> bytes:
    """One tag on a page of its own size, the smallest on which all of it is easily read."""
    size = next((size for size in TAG_SIZES if tag.fits(size, EASILY_READ_PCT)), TAG_SIZES[-1])
    out = BytesIO()
    canvas = new_canvas(out, size)
    tag.draw(canvas, 0, 0, *size, whole=True)
    canvas.save()
    return finish(out, f"Tag {tag.number}", museum, issued_at, "en", record)
