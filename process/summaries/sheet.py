"""The sheet of a run: readings and events in one time order, each with the charge that had passed by then."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from pint import Quantity
from uncertainties import ufloat

from process.chemistry.series import SheetCharge, charge_at, sheet_charge
from process.models import Event, Reading, Run
from process.summaries.charge import SheetLine, charge_of_lines, sheet_lines
from records import clock
from records.units import ureg


@dataclass(frozen=True)
class Line:
    """One line as the page shows it."""

    row: Reading | Event
    charge_ah: float
    drifted: bool = False

    @property
    def kind(self) -> str:
        """As in the address of its pages."""
        return "event" if self.is_event else "reading"

    @property
    def is_event(self) -> bool:
        return isinstance(self.row, Event)

    @property
    def words(self) -> list[str]:
        """What an event says beside its kind."""
        if not isinstance(self.row, Event):
            return []
        by_itself = "came back by itself" if self.row.returned_by_itself else ""
        activation = f"before the restart: {self.row.get_activation_display()}" if self.row.activation else ""
        which = self.row.cathode.label if self.row.cathode_id else ""
        said = [which, self.row.get_cause_display(), self.row.get_handling_display(), by_itself, activation]
        return [word for word in said if word]


@dataclass(frozen=True)
class Sheet:
    """`until_at` is the stop, or the present while the run goes on."""

    lines: tuple[Line, ...]
    currents: tuple[SheetLine, ...]
    charge: SheetCharge
    charge_spread_ah: float
    started_at: datetime | None
    stopped_at: datetime | None
    until_at: datetime | None

    @property
    def is_running(self) -> bool:
        return self.started_at is not None and self.stopped_at is None

    @property
    def current_a(self) -> float:
        """What flows now, by the last line that says so."""
        return self.currents[-1].current_a if self.currents else 0.0

    @property
    def last_at(self) -> datetime | None:
        return self.lines[-1].row.at if self.lines else None

    @property
    def quantity(self) -> Quantity:
        """The charge, with ± where the readings carry one."""
        value = self.charge.until_ah
        return ureg.Quantity(ufloat(value, self.charge_spread_ah) if self.charge_spread_ah else value, "A*h")

    def charge_by(self, instants: list[datetime]) -> list[float]:
        """Charge in ampere-hours by each of these instants."""
        seconds = [line.at.timestamp() for line in self.currents]
        amperes = [line.current_a for line in self.currents]
        return [float(each) for each in charge_at(seconds, amperes, [at.timestamp() for at in instants])]


def sheet_of(run: Run) -> Sheet:
    """The sheet as it stands now; readings and events come from what was prefetched, if it was."""
    readings, events = list(run.readings.all()), list(run.events.all())
    marks = {event.kind: event.at for event in events}
    started, stopped = marks.get(Event.Kind.ENTRY), marks.get(Event.Kind.STOP)
    currents = sheet_lines(readings, events)
    rows = sorted([*readings, *events], key=lambda row: (row.at, isinstance(row, Reading)))
    until = stopped or (max([clock.now(), *(row.at for row in rows)]) if started else None)
    charge = charge_of_lines(currents, until)
    bare = Sheet((), tuple(currents), charge, _spread(currents, until), started, stopped, until)
    drifted = {id(currents[drift.index_count].row) for drift in charge.drifts}
    passed = bare.charge_by([row.at for row in rows])
    lines = tuple(Line(row, ah, id(row) in drifted) for row, ah in zip(rows, passed, strict=True))
    return replace(bare, lines=lines)


def _spread(currents: list[SheetLine], until: datetime | None) -> float:
    """± of the charge: readings of one ammeter err together, so their ± adds up like the current itself."""
    spreads = [line.row.plus_minus("current_a") or 0.0 for line in currents]
    if not any(spreads):
        return 0.0
    return sheet_charge(
        [line.at.timestamp() for line in currents], spreads, until.timestamp() if until else None
    ).until_ah


def hours(span: timedelta) -> float:
    """A difference of instants in hours: no clock change can add one."""
    return span.total_seconds() / 3600
