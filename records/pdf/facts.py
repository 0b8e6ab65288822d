"""Facts as a list: label in lighter ink above its value, in one or two columns."""

from dataclasses import dataclass
from typing import Any

from reportlab.platypus import Flowable, Paragraph, Spacer, Table, TableStyle

from records.pdf import theme
from records.pdf.evidence import Fact, value_markup
from records.pdf.flow import Room, kept, paragraph

NOTHING = "not recorded"
LONG = 240  # characters: in half the width they would run down the page as a ribbon


def fact_cell(fact: Fact) -> list[Any]:
    """Label and value; an empty value is said to be not recorded."""
    style = theme.style("fact")
    label = paragraph(fact.label, "fact_label")
    if not fact.value.strip():
        return [label, paragraph(NOTHING, "fact_label")]
    shown = value_markup(fact.value, fact.unit, fact.kind, style.fontName, style.fontSize)
    return [label, Paragraph(shown, style)]


def fact_table(facts: tuple[Fact, ...], width: float, columns: int) -> Any:
    """The facts read down the first column, then the second."""
    depth = -(-len(facts) // columns)
    cells = [fact_cell(fact) for fact in facts]
    rows = [[cells[r + c * depth] if r + c * depth < len(cells) else "" for c in range(columns)] for r in range(depth)]
    gap = theme.GUTTER if columns > 1 else 0
    widths = [(width - gap * (columns - 1)) / columns + (gap if c < columns - 1 else 0) for c in range(columns)]
    style = TableStyle(
        [
            ("VALIGN", (0, 0), (-1, -1), "TOP"),
            ("LEFTPADDING", (0, 0), (-1, -1), 0),
            ("RIGHTPADDING", (0, 0), (-2, -1), gap),
            ("RIGHTPADDING", (-1, 0), (-1, -1), 0),
            ("TOPPADDING", (0, 0), (-1, -1), 0),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 5.5),
        ]
    )
    return Table(rows, colWidths=widths, style=style, hAlign="LEFT", splitInRow=1)


@dataclass(frozen=True)
class FactList:
    """A list of facts; an empty list says so in the words given."""

    facts: tuple[Fact, ...]
    columns: int = 2
    empty: str = "Nothing recorded."
    leads: bool = False  # to the words beneath, which say what the figure is worth

    def flow(self, room: Room) -> list[Flowable]:
        if not self.facts:
            return [paragraph(self.empty, "body")]
        short = tuple(fact for fact in self.facts if self.columns == 1 or len(fact.value) <= LONG)
        rest = tuple(fact for fact in self.facts if fact not in short)
        tables = [fact_table(facts, room.width, n) for facts, n in ((short, self.columns), (rest, 1)) if facts]
        parts = [*tables, Spacer(0, 3)]
        return [kept(part) for part in parts] if self.leads else parts
