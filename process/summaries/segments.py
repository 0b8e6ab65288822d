"""The rail of a run as it changed: segments with a constant set of cathodes, and the charge of each cathode."""

from dataclasses import dataclass
from datetime import UTC, datetime

from pint import Quantity

from process.chemistry.segments import Segment, mean_current_density, segments_of, share_over_segments
from process.chemistry.shares import share_by_area
from process.models import Cathode
from process.summaries.figures import apart, figure
from process.summaries.hanging import stay_of
from process.summaries.planning import areas_of
from process.summaries.sheet import Sheet
from records.figures import Figure
from records.units import ureg


@dataclass(frozen=True)
class RailSegment:
    """From one change of the rail to the next."""

    began_at: datetime
    ended_at: datetime
    labels: tuple[str, ...]
    area: Figure
    charge: Figure
    density: Figure


@dataclass(frozen=True)
class Rail:
    """What hung there when; without a change there is one segment and the sheet's own charge."""

    sheet: Sheet
    cathodes: tuple[Cathode, ...]
    stays: tuple[tuple[datetime, datetime], ...]
    segments: tuple[Segment, ...]

    @property
    def changed(self) -> bool:
        return len(self.segments) > 1

    @property
    def first(self) -> list[Cathode]:
        """Those that went in with the run: what its plan was reckoned for."""
        events = [line.row for line in self.sheet.lines if line.is_event]
        return [cathode for cathode in self.cathodes if stay_of(cathode, events)[0] is None]

    @property
    def hanging_count(self) -> int:
        """How many hang there as the sheet ends."""
        return len(self.segments[-1].present) if self.segments else len(self.cathodes)

    @property
    def shown(self) -> tuple[RailSegment, ...]:
        """The segments with their figures, where the rail changed."""
        return tuple(self._shown(each) for each in self.segments) if self.changed else ()

    def share(self, index: int, charge: Quantity) -> Figure:
        """Planning share: by area within each segment in which the cathode hung."""
        areas = areas_of(list(self.cathodes))
        if not self.changed:
            return figure("Share by area", "_ah", share_by_area, charge=charge, area=areas[index], areas=areas)
        scale = charge / ureg.Quantity(self.sheet.charge.until_ah or 1.0, "A*h")
        mine = [each for each in self.segments if index in each.present]
        if not mine:
            return Figure("Share by area, over the segments", None, "_ah", note="It has not hung in the bath yet.")
        charges = [ureg.Quantity(each.charge_ah, "A*h") * scale for each in mine]
        wholes = [self._area(each) for each in mine]
        return figure("Share by area, over the segments", "_ah", share_over_segments,
                      area=areas[index], charges=charges, areas=wholes)  # fmt: skip

    def passed_ah(self, index: int, at: datetime) -> float:
        """Charge by the sheet up to an instant: the rail's, or the cathode's own where the rail changed."""
        if not self.changed:
            return self.sheet.charge_by([at])[0]
        passed = 0.0
        for each in self.segments:
            if index in each.present and each.from_s < at.timestamp():
                ends = [_instant(each.from_s), min(at, _instant(each.to_s))]
                before, after = self.sheet.charge_by(ends)
                passed += (after - before) * self.cathodes[index].total_area_dm2 / apart(self._area(each).m)[0]
        return passed

    def _area(self, segment: Segment) -> Quantity:
        areas = areas_of([self.cathodes[index] for index in segment.present])
        return sum(areas[1:], start=areas[0])

    def _shown(self, segment: Segment) -> RailSegment:
        labels = tuple(self.cathodes[index].label for index in segment.present)
        charge = Figure("Charge", segment.charge_ah, "_ah")
        if not segment.present:
            none = Figure("Mean current density", None, "_a_dm2", note="Nothing hung there.")
            return RailSegment(*_ends(segment), labels, Figure("Area", None, "_dm2"), charge, none)
        area = self._area(segment)
        density = figure(
            "Mean current density", "_a_dm2", mean_current_density, charge=ureg.Quantity(segment.charge_ah, "A*h"),
            area=area, energised_time=ureg.Quantity(segment.energised_h, "h"),
        )  # fmt: skip
        return RailSegment(*_ends(segment), labels, Figure("Area", apart(area.m)[0], "_dm2"), charge, density)


def _ends(segment: Segment) -> tuple[datetime, datetime]:
    return _instant(segment.from_s), _instant(segment.to_s)


def _instant(seconds: float) -> datetime:
    return datetime.fromtimestamp(seconds, UTC)


def rail_of(sheet: Sheet, cathodes: list[Cathode]) -> Rail:
    """The rail by the events that hung a cathode in or took it out; without them all hung there throughout."""
    if sheet.started_at is None or sheet.until_at is None or not sheet.currents:
        return Rail(sheet, tuple(cathodes), (), ())
    stays = tuple(_stay(cathode, sheet) for cathode in cathodes)
    times = [line.at.timestamp() for line in sheet.currents]
    found = segments_of(
        times, [line.current_a for line in sheet.currents], sheet.until_at.timestamp(),
        [(begin.timestamp(), end.timestamp()) for begin, end in stays],
    )  # fmt: skip
    return Rail(sheet, tuple(cathodes), stays, found)


def _stay(cathode: Cathode, sheet: Sheet) -> tuple[datetime, datetime]:
    """From its own entry, or that of the run, to where it was taken out, or the end."""
    begin, end = stay_of(cathode, [line.row for line in sheet.lines if line.is_event])
    begin, end = begin or sheet.currents[0].at, end or sheet.until_at
    return (begin, end) if begin <= end else (begin, begin)
