"""A current is usual or not by the density that it makes on what hangs in the bath."""

from process.ranges import Opinion, judge
from records import units


def of_current(current_a: float, area_dm2: float, *, step: str) -> Opinion:
    """The table's opinion of the density, said with both units."""
    if not area_dm2 or current_a == 0:
        return Opinion("usual")
    density = current_a / area_dm2
    found = judge("current_density_a_dm2", density, step=step, number=float(f"{density:.3g}"), unit="A/dm²")
    if found.is_usual:
        return found
    both = units.other_unit(density, "_a_dm2")
    on = f"{units.show(current_a, '_a')} on {units.show(area_dm2, '_dm2')} is {both}; "
    return Opinion(found.verdict, on + found.sentence)
