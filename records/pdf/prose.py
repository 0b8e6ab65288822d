"""Headings, paragraphs and the start of an appendix."""

from dataclasses import dataclass

from reportlab.platypus import CondPageBreak, Flowable

from records.pdf.flow import Room, kept, paragraph

SHORT = 700  # characters: paragraphs of no more than this together stay on one page
HALF, MOST = 0.5, 0.65


@dataclass(frozen=True)
class Heading:
    """A heading; level 2 stands inside a section."""

    text: str
    level: int = 1

    def flow(self, room: Room) -> list[Flowable]:
        return [kept(paragraph(self.text, "heading" if self.level == 1 else "subheading"))]


@dataclass(frozen=True)
class Prose:
    """Running text; an empty line begins a new paragraph. What leads up to a table stays with it."""

    text: str
    leads: bool = False

    def flow(self, room: Room) -> list[Flowable]:
        parts = [part.strip() for part in self.text.replace("\r\n", "\n").split("\n\n")]
        set_parts = [paragraph(part, "body") for part in parts if part]
        if len(self.text) <= SHORT:
            set_parts[:-1] = [kept(part) for part in set_parts[:-1]]
        return [*set_parts[:-1], *(kept(part) if self.leads else part for part in set_parts[-1:])]


@dataclass(frozen=True)
class NewPage:
    """What follows begins a page, unless most of one is left."""

    def flow(self, room: Room) -> list[Flowable]:
        return [CondPageBreak(room.height * MOST)]


@dataclass(frozen=True)
class Appendix:
    """Letter and title of an appendix and one sentence on what it holds; on a new page unless half of one is left."""

    letter: str
    title: str
    introduction: str = ""

    def flow(self, room: Room) -> list[Flowable]:
        start = [
            CondPageBreak(room.height * HALF),
            kept(paragraph(f"Appendix {self.letter}", "appendix")),
            kept(paragraph(self.title, "heading")),
        ]
        return start + ([kept(paragraph(self.introduction, "body"))] if self.introduction else [])
