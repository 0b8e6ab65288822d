"""A paper from a list of blocks: head, title, summary, blocks, foot, and the record attached."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from io import BytesIO
from typing import Any

import pikepdf
from reportlab.platypus import BaseDocTemplate, Flowable, Frame, PageTemplate, Spacer

from records.pdf import archive, fonts, glyphs, theme
from records.pdf.attachment import digest, record_bytes
from records.pdf.evidence import EvidenceCanvas
from records.pdf.flow import Block, Room, paragraph
from records.pdf.keeping import keep_together
from records.pdf.lettering import draw_text, shortened
from records.pdf.page_sizes import PAGE_SIZES

EDGE_SIZE = 7.6
SHORT_DIGEST = 12


@dataclass(frozen=True)
class Paper:
    """What stands at head, foot and top of a paper; `issued_on` is the date as it is to be printed."""

    kind: str
    number: str
    version: str
    museum: str
    issued_on: str
    title: str
    summary: str
    page_size: str = "A4"
    language: str = "en"
    named: str = ""  # in head and foot, where the number alone does not say that the thing is a copy

    @property
    def edge_name(self) -> str:
        return self.named or self.number


class PaperCanvas(EvidenceCanvas):
    """Keeps each page back until the number of pages is known, then draws head and foot."""

    def __init__(self, *args: Any, paper: Paper, short_digest: str, **options: Any) -> None:
        super().__init__(*args, **options)
        self.paper, self.short_digest = paper, short_digest
        self._pages: list[dict[str, Any]] = []

    def showPage(self) -> None:
        self._pages.append(dict(self.__dict__))
        self._startPage()

    def save(self) -> None:
        for number, page in enumerate(self._pages, start=1):
            self.__dict__.update(page)
            self._draw_edges(number, len(self._pages))
            super().showPage()
        super().save()

    def _draw_edges(self, number: int, count: int) -> None:
        paper, left = self.paper, theme.MARGIN
        right, top = self._pagesize[0] - theme.MARGIN, self._pagesize[1] - theme.MARGIN
        self.setFillColor(theme.LIGHTER)
        self.setStrokeColor(theme.INK)
        self.setLineWidth(theme.THIN)
        half = (right - left) * 0.5
        name = _squeezed(f"{paper.kind} · {paper.edge_name}", f" · version {paper.version}", half)
        used = draw_text(self, right, top - 6, name, fonts.SANS, EDGE_SIZE, "end")
        museum = shortened(paper.museum, fonts.SANS_BOLD, EDGE_SIZE, right - left - used - 12)
        draw_text(self, left, top - 6, museum, fonts.SANS_BOLD, EDGE_SIZE)
        self.line(left, top - 12, right, top - 12)
        self.line(left, theme.MARGIN + 14, right, theme.MARGIN + 14)
        foot = _squeezed(paper.edge_name, f" · issued {paper.issued_on} · record {self.short_digest}", half * 1.6)
        draw_text(self, left, theme.MARGIN + 4, foot, fonts.SANS, EDGE_SIZE)
        draw_text(self, right, theme.MARGIN + 4, f"page {number} of {count}", fonts.SANS, EDGE_SIZE, "end")


def _squeezed(may_be_cut: str, stays: str, width: float) -> str:
    room = width - glyphs.runs_width(glyphs.runs(stays, fonts.SANS), EDGE_SIZE)
    return shortened(may_be_cut, fonts.SANS, EDGE_SIZE, room) + stays


def _room(page: tuple[float, float]) -> Room:
    edges = theme.HEAD_ROOM + theme.FOOT_ROOM + 2 * theme.MARGIN
    return Room(page[0] - 2 * theme.MARGIN, page[1] - edges)


def _opening(paper: Paper) -> list[Flowable]:
    opening = [paragraph(paper.kind, "kind"), paragraph(paper.title, "title")]
    return opening + ([paragraph(paper.summary, "summary")] if paper.summary.strip() else [])


def _set(paper: Paper, blocks: Sequence[Block], short_digest: str) -> bytes:
    page = PAGE_SIZES[paper.page_size]
    room = _room(page)
    out = BytesIO()
    fonts.covered()
    template = BaseDocTemplate(out, pagesize=page, invariant=1, pageCompression=1, initialFontName=fonts.SANS)
    bottom = theme.MARGIN + theme.FOOT_ROOM
    frame = Frame(theme.MARGIN, bottom, room.width, room.height, 0, 0, 0, 0)
    template.addPageTemplates([PageTemplate("page", [frame])])
    story = _opening(paper) + [part for block in blocks for part in block.flow(room)]
    while isinstance(story[-1], Spacer):  # room beneath the last words would ask for a page of its own
        story.pop()

    def canvas(*args: Any, **options: Any) -> PaperCanvas:
        return PaperCanvas(*args, paper=paper, short_digest=short_digest, **options)

    template.build(keep_together(story, room), canvasmaker=canvas)
    return out.getvalue()


def page_count(pdf: bytes) -> int:
    with pikepdf.open(BytesIO(pdf)) as opened:
        return len(opened.pages)


def build(paper: Paper, blocks: Sequence[Block], record: dict[str, Any] | bytes, issued_at: datetime) -> bytes:
    """The finished PDF/A-3b with the record attached; the same inputs give the same bytes."""
    attached = record_bytes(record)
    raw = _set(paper, blocks, digest(attached)[:SHORT_DIGEST])
    about = archive.Description(
        title=f"{paper.kind} {paper.number}: {paper.title}",
        author=paper.museum,
        subject=paper.summary,
        language=paper.language,
        issued_at=issued_at,
    )
    return archive.finish(raw, about, attached)
