"""A current is usual or not by the density that it makes on what hangs in the bath."""

from process.ranges import Opinion, judge
from records import units

OTHER = {"A": "mA", "mA": "A"}


def of_current(typed: units.Parsed, area_dm2: float, *, step: str) -> Opinion:
    """The table's opinion of the density, said with both units; a slip between A and mA is named."""
    if not area_dm2 or typed.canonical == 0:
        return Opinion("usual")
    found = _of_density(typed.canonical / area_dm2, step)
    if found.is_usual:
        return found
    other = OTHER[typed.unit]
    meant = units.to_canonical(typed.number, units.unit_choice("_a", other), "_a")
    words = found.sentence
    if _of_density(meant / area_dm2, step).is_usual:
        words = f"{words.partition('. ')[0]}; {units.plain(typed.number)} {other} would be usual. Is the unit right?"
    on = f"{units.show(typed.canonical, '_a', typed.unit)} on {units.show(area_dm2, '_dm2')}"
    return Opinion(found.verdict, f"{on} is {units.other_unit(typed.canonical / area_dm2, '_a_dm2')}; {words}")


def _of_density(density: float, step: str) -> Opinion:
    return judge("current_density_a_dm2", density, step=step, number=float(f"{density:.3g}"), unit="A/dm²")
