"""A rail that changed, on paper: what hung there from when to when, and the charge and density of each stretch."""

from process.summaries.runs import RunSummary
from process.summaries.words import clock_time
from records.pdf import blocks as b
from records.reports.figures import figure_cell

COLUMNS = (
    b.Column("From"), b.Column("To"), b.Column("On the rail", empty="nothing"), b.Column("Area", "dm²", "right"),
    b.Column("Charge", "Ah", "right"), b.Column("Mean density", "A/dm²", "right", calculated=True),
)  # fmt: skip


def segments(summary: RunSummary) -> list[b.Block]:
    """Nothing where one set of cathodes hung there throughout."""
    rows = tuple(
        (clock_time(each.began_at), clock_time(each.ended_at), ", ".join(each.labels),
         figure_cell(each.area), figure_cell(each.charge), figure_cell(each.density))
        for each in summary.rail.shown
    )  # fmt: skip
    return [b.FigureTable(COLUMNS, rows, caption="Segments with a constant set of cathodes")] if rows else []
