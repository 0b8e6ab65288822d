"""Headings, paragraphs and the start of an appendix."""

from dataclasses import dataclass

from reportlab.platypus import Flowable, PageBreak

from records.pdf.flow import Room, kept, paragraph


@dataclass(frozen=True)
class Heading:
    """A heading; level 2 stands inside a section."""

    text: str
    level: int = 1

    def flow(self, room: Room) -> list[Flowable]:
        return [kept(paragraph(self.text, "heading" if self.level == 1 else "subheading"))]


@dataclass(frozen=True)
class Prose:
    """Running text; an empty line begins a new paragraph."""

    text: str

    def flow(self, room: Room) -> list[Flowable]:
        parts = [part.strip() for part in self.text.replace("\r\n", "\n").split("\n\n")]
        return [paragraph(part, "body") for part in parts if part]


@dataclass(frozen=True)
class Appendix:
    """A new page with the letter and title of an appendix and one sentence on what it holds."""

    letter: str
    title: str
    introduction: str = ""

    def flow(self, room: Room) -> list[Flowable]:
        start = [
            PageBreak(),
            kept(paragraph(f"Appendix {self.letter}", "kind")),
            kept(paragraph(self.title, "heading")),
        ]
        return start + ([kept(paragraph(self.introduction, "body"))] if self.introduction else [])
