"""A chart on paper with its caption; the two are never torn apart."""

from dataclasses import dataclass

from reportlab.platypus import Flowable, Spacer, Table

from records.pdf.charts import Chart
from records.pdf.charts.as_drawing import drawing
from records.pdf.flow import Room, paragraph

_BARE = [(f"{side}PADDING", (0, 0), (-1, -1), 0) for side in ("LEFT", "RIGHT", "TOP", "BOTTOM")]


@dataclass(frozen=True)
class ChartBlock:
    """The chart over the whole width; its title and description stand beneath it as the caption."""

    chart: Chart
    caption: str = ""

    def flow(self, room: Room) -> list[Flowable]:
        words = self.caption or f"{self.chart.title}. {self.chart.description}"
        figure = [drawing(self.chart, room.width), paragraph(words, "caption")]
        return [Table([[figure]], colWidths=[room.width], style=_BARE), Spacer(0, 8)]
