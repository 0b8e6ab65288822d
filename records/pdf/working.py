"""The working of a calculated figure, laid out like a textbook: formula, numbers put in, result, sources."""

from dataclasses import dataclass

from reportlab.platypus import Flowable, Paragraph, Spacer

from records.pdf import theme
from records.pdf.evidence import value_markup
from records.pdf.flow import Room, kept, paragraph
from records.pdf.tables import Column, FigureTable, Row


@dataclass(frozen=True)
class Term:
    """A symbol of the formula with its meaning, its number and where that comes from."""

    symbol: str
    meaning: str
    value: str
    unit: str = ""
    source: str = ""


@dataclass(frozen=True)
class Working:
    """One derived figure with everything needed to repeat it by hand."""

    title: str
    formula: str
    substituted: str
    result: str
    unit: str
    terms: tuple[Term, ...] = ()
    sources: tuple[str, ...] = ()

    def flow(self, room: Room) -> list[Flowable]:
        answer = [kept(paragraph(self.title, "subheading")), kept(paragraph(self.formula, "formula_centre"))]
        if self.terms:
            columns = (
                Column("Symbol"),
                Column("Meaning"),
                Column("Value", align="right"),
                Column("Unit", empty=""),
                Column("From", empty=""),
            )

            rows: tuple[Row, ...] = tuple((t.symbol, t.meaning, t.value, t.unit, t.source) for t in self.terms)
            answer += FigureTable(columns, rows).flow(room)
        answer.append(kept(paragraph(self.substituted, "formula_centre")))
        answer.append(self._result())
        answer += [paragraph(f"Source: {source}", "caption") for source in self.sources]
        return [*answer, Spacer(0, 10)]

    def _result(self) -> Paragraph:
        style = theme.style("number_centre")
        shown = value_markup(self.result, self.unit, "calculated", style.fontName, style.fontSize)
        return Paragraph(shown, style)
