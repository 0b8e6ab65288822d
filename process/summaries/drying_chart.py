"""The drying curve as a chart: the mass at each weighing, and the mass at which all of the gain could be metal."""

from django.utils import timezone

from process.summaries.drying import Drying
from records import clock
from records.pdf.charts import Axis, Chart, Panel, Series, Target
from records.units import show


def drying_chart(drying: Drying) -> Chart | None:
    """None before there are two weighings to draw a line between."""
    points = tuple((point.weighing.at, point.weighing.mass_g) for point in drying.points)
    if len(points) < 2 or points[0][0] >= points[-1][0]:
        return None
    number = drying.shell.item.number
    whole = drying.whole_g
    target = (Target(f"100 % of the calculated metal, {show(whole, '_g', digits=1)}", whole),) if whole else ()
    return Chart(
        title=f"{number}: mass while it dries", description=_words(drying),
        panels=(Panel(Axis("Mass", "g"), (Series("mass", points),), target),), tz=timezone.get_current_timezone(),
    )  # fmt: skip


def _words(drying: Drying) -> str:
    first, last = drying.points[0].weighing, drying.points[-1].weighing
    days = (timezone.localdate(last.at) - timezone.localdate(first.at)).days
    return (
        f"From {show(first.mass_g, '_g', digits=1)} on {clock.day_words(first.at)} to "
        f"{show(last.mass_g, '_g', digits=1)} {days} days later, in {len(drying.points)} weighings."
    )
