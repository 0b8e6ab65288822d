"""Places for ink: who signed or is to sign, in which role, on which day."""

from dataclasses import dataclass
from typing import Any

from reportlab.platypus import Flowable, Spacer, Table, TableStyle

from records.pdf import theme
from records.pdf.flow import Room, paragraph

INK_ROOM = 34.0  # points above the line


@dataclass(frozen=True)
class Signer:
    """A person with the role held when signing; without a date the line waits for ink."""

    name: str
    role: str
    signed_on: str = ""


class InkLine(Flowable):
    """Room to sign, and the line to sign on."""

    def __init__(self, width: float) -> None:
        super().__init__()
        self.width, self.height = width, INK_ROOM

    def wrap(self, *_available: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        self.canv.setStrokeColor(theme.INK)
        self.canv.setLineWidth(theme.THIN)
        self.canv.line(0, 2, self.width, 2)


def _place(signer: Signer, width: float) -> list[Any]:
    day = f"Signed in the register on {signer.signed_on}" if signer.signed_on else "Date"
    name = paragraph(signer.name or "Name", "fact" if signer.name else "fact_label")
    return [InkLine(width), name, paragraph(f"{signer.role} · {day}", "fact_label")]


@dataclass(frozen=True)
class Signatures:
    """The signatures of a paper, two beside each other, never torn apart."""

    signers: tuple[Signer, ...]

    def flow(self, room: Room) -> list[Flowable]:
        width = (room.width - 2 * theme.GUTTER) / 2
        cells: list[Any] = [_place(signer, width) for signer in self.signers]
        cells += [""] * (len(cells) % 2)
        rows = [cells[at : at + 2] for at in range(0, len(cells), 2)]
        style = TableStyle(
            [
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
                ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ("RIGHTPADDING", (0, 0), (-1, -1), 0),
                ("TOPPADDING", (0, 0), (-1, -1), 0),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 4),
            ]
        )
        if not rows:
            return []
        table = Table(rows, colWidths=[width + 2 * theme.GUTTER, width], style=style, splitInRow=1)
        table.follows = True  # what is signed stands on the page of its signature
        return [table, Spacer(0, 6)]
