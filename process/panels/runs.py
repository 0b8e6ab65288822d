"""What a model's page shows of the making: the runs that grew something in its moulds."""

from django.http import HttpRequest

from process.models import Run
from process.summaries import run_lines
from records.extensions import Panel, item_panels
from records.line import line_of
from records.models import Item

SHOWN = 20


def runs_of(request: HttpRequest, item: Item) -> Panel | None:
    """None for a thing in whose moulds nothing has been grown."""
    if item.kind in {Item.Kind.MOULD, Item.Kind.SHELL, Item.Kind.CORE} or not line_of(item).down:
        return None
    runs = Run.objects.with_sheet(points=False).filter(cathodes__mould__model=item).distinct()[:SHOWN]
    lines = [run_lines.line_of(run) for run in runs]
    return (
        Panel("Runs in its moulds", "process/_runs_of.html", {"lines": lines}, order=47, anchor="runs")
        if lines
        else None
    )


item_panels.append(runs_of)
