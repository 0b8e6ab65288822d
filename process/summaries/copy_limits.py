"""What the walls of its shells forbid a copy, before it is made up and for as long as it exists."""

from collections.abc import Iterable

from process.models import MakingUp, Run, Shell
from process.models.run_rows import was_cut
from process.summaries.runs import summarise
from process.summaries.wall_limits import WallLimit, limits_of

HOT_FROM_DEGC = 60.0  # soldering and poured alloys lie far above it, cold resins below; rule of this register


def limits_of_shells(shells: Iterable[Shell]) -> tuple[WallLimit, ...]:
    """The limits of these shells; runs that were never cut are not even looked at."""
    wanted = {shell.pk for shell in shells}
    runs = Run.objects.with_sheet(points=False, walls=True).filter(was_cut("pk"), cathodes__shell__in=wanted).distinct()
    found = [limit for run in runs for limit in limits_of(summarise(run))]
    return tuple(limit for limit in found if limit.shell and limit.shell.pk in wanted)


def is_hot(making_up: MakingUp) -> bool:
    """Whether heat reaches the wall: soldered, or filled with something hot."""
    warm = making_up.fill_temperature_degc
    return making_up.join == MakingUp.Join.SOLDER or (warm is not None and warm >= HOT_FROM_DEGC)
