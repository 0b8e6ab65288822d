"""The wall of a shell point by point: what was measured and where, beside the mean that was only calculated."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from django.db.models import Exists, OuterRef, Q, Subquery
from django.urls import reverse

from process.chemistry.readings import mean_of_readings, scatter_of_readings
from process.models import Mould, Shell, ThicknessPoint
from process.summaries.cathodes import TRIMMED
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from records.figures import Figure
from records.models import Concession, Gate, Photo, Specification
from records.pdf.spot_map import Chip, Spot, SpotMap
from records.pdf.spot_map.model import RATIOS
from records.units import figure as number_of
from records.units import show

SAME = 1e-9
ENOUGH = 3  # points; two scatter too, but say nothing of a wall
CHOSEN = "of the places that were chosen, no mean of the wall."
MEASURED = {"readings": "measured"}


@dataclass(frozen=True)
class PointMap:
    """The points of one photograph or outline."""

    key: str
    shown: SpotMap
    photo: Photo | None


@dataclass(frozen=True)
class Wall:
    """`least` is measured or None; an estimate never stands in for it here."""

    shell: Shell
    points: tuple[ThicknessPoint, ...]
    least: ThicknessPoint | None
    specified_mm: float | None
    below: tuple[ThicknessPoint, ...]
    maps: tuple[PointMap, ...]
    unplaced: tuple[ThicknessPoint, ...]
    conceded: str = ""

    @property
    def shape(self) -> str:
        if self.specified_mm is None or not self.points:
            return "open"
        return "done" if not self.below else "look" if self.conceded else "blocked"

    @property
    def scatter(self) -> tuple[Figure, ...]:
        """Mean and standard deviation of the points, reckoned; of a few places nothing is said."""
        if len(self.points) < ENOUGH:
            return ()
        readings = [quantity(each, "thickness_mm") for each in self.points]
        mean = figure("Mean of the points", "_mm", mean_of_readings, evidence=MEASURED, readings=readings)
        spread = figure("Standard deviation", "_mm", scatter_of_readings, evidence=MEASURED, readings=readings)
        return replace(mean, note=CHOSEN), spread

    @property
    def scatter_words(self) -> str:
        """“Mean of the 7 points 0.57 mm, standard deviation 0.12 mm”, for paper."""
        if not self.scatter:
            return ""
        mean, spread = (show(each.value, "_mm") for each in self.scatter)
        return f"Mean of the {len(self.points)} points {mean}, standard deviation {spread}, both calculated: {CHOSEN}"

    @property
    def sentence(self) -> str:
        """Measured against specified, in words."""
        if not self.points:
            return "No point of the wall has been measured."
        number = len(self.points)
        if self.specified_mm is None:
            return f"No least thickness is specified; {counted(number)} measured."
        wanted = show(self.specified_mm, "_mm")
        if not self.below:
            return f"{counted(number)} measured, none below the {wanted} specified."
        named = ", ".join(f"{each.place} {value_of(each)}" for each in self.below)
        said = f"{len(self.below)} of {counted(number)} below the {wanted} specified: {named}."
        return f"{said} Concession {self.conceded}." if self.conceded else said


def counted(number: int) -> str:
    return f"{number} point" + ("s" if number != 1 else "")


def value_of(point: ThicknessPoint) -> str:
    """The number as it stands on a map, with the ± that was entered."""
    return number_of(point.thickness_mm, "_mm", plus_minus=point.plus_minus("thickness_mm"))[0].replace("\u2009", "")


def wall_of(shell: Shell, points: Iterable[ThicknessPoint], mean: Figure | None, specified_mm: float | None) -> Wall:
    """`mean` is what follows from the mass: it is drawn under the picture, hatched, and at no place."""
    rows = tuple(points)
    least = min(rows, key=lambda each: each.thickness_mm, default=None)
    below = tuple(each for each in rows if specified_mm is not None and each.thickness_mm < specified_mm - SAME)
    placed = [each for each in rows if each.is_placed]
    keys = list(dict.fromkeys(_key(each) for each in placed))
    maps = tuple(
        _map(shell, key, [each for each in placed if _key(each) == key], least, below, mean, specified_mm)
        for key in keys
    )
    unplaced = tuple(each for each in rows if not each.is_placed)
    return Wall(shell, rows, least, specified_mm, below, maps, unplaced, (shell.conceded_by or "") if below else "")


def _key(point: ThicknessPoint) -> str:
    return f"photo-{point.photo_id}" if point.photo_id else f"outline-{point.outline}"


def _map(
    shell: Shell,
    key: str,
    points: list[ThicknessPoint],
    least: ThicknessPoint | None,
    below: tuple[ThicknessPoint, ...],
    mean: Figure | None,
    specified_mm: float | None,
) -> PointMap:
    photo = points[0].photo if points[0].photo_id else None
    spots = tuple(
        Spot(each.x_pct / 100, each.y_pct / 100, value_of(each), each.place, each is least, each in below)
        for each in points
    )
    said = "; ".join(f"{each.place} {show(each.thickness_mm, '_mm')}" for each in points)
    shown = SpotMap(
        title=f"Thickness of {shell.item.number}, in mm", description=f"Measured: {said}.", spots=spots,
        chips=tuple(_chips(bool(below), mean, specified_mm)), **ground_of(photo, points[0].outline),
    )  # fmt: skip
    return PointMap(key, shown, photo)


def ground_of(photo: Photo | None, outline: str) -> dict:
    """On what the points are drawn."""
    if photo is None:
        return {"ground": outline, "ratio": RATIOS[outline]}
    href = reverse("photo_file", args=[photo.pk, "screen"])
    return {"ground": "photo", "ratio": photo.height_px_count / max(photo.width_px_count, 1), "href": href}


def _chips(has_below: bool, mean: Figure | None, specified_mm: float | None) -> Iterable[Chip]:
    yield Chip("measured", "solid: measured, mm; a ring marks the least")
    if has_below and specified_mm is not None:
        yield Chip("below", f"square: below the {show(specified_mm, '_mm')} specified")
    if mean is not None and mean.value is not None:
        over = " of the trimmed face" if mean.label == TRIMMED else ""
        yield Chip(
            "calculated", f"hatched: mean {show(mean.value, '_mm')}{over}, calculated from the mass, at no place"
        )


def specification_of(shell: Shell) -> Specification | None:
    """What was specified for the piece that it repeats, in the commission for which it grew."""
    cathode = shell.cathode
    of_mould = {"pulls__core": cathode.core_id} if cathode.core_id else {"pk": cathode.mould_id}
    moulds = Mould.objects.filter(**of_mould, model=OuterRef("item"))
    theirs = Exists(moulds.filter(commission=OuterRef("commission")))
    rows = Specification.objects.filter(Exists(moulds), Q(commission=cathode.run.commission_id) | theirs)
    found = rows.annotate(conceded_by=_conceding(shell)).order_by("-pk").first()
    shell.conceded_by = found.conceded_by if found else ""  # for its wall, without another question
    return found


def _conceding(shell: Shell) -> Subquery:
    """The number of the concession for acceptance that names the shell or its copy."""
    named = [shell.item_id, *([shell.making_up_id] if shell.making_up_id else [])]
    rows = Concession.objects.filter(gate=Gate.ACCEPT, items__in=named).order_by("-given_on")
    return Subquery(rows.values("number")[:1])
