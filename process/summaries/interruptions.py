"""Stretches without current inside a run, and how deep in the wall each one lies."""

from dataclasses import dataclass
from datetime import datetime

from pint import Quantity

from process.chemistry.deposit import interface_depth
from process.models import Event
from process.summaries.figures import figure
from process.summaries.sheet import Sheet, hours
from records.figures import Figure
from records.units import ureg


@dataclass(frozen=True)
class Interruption:
    """From the line that found no current to the next one that found some; the sheet's own words beside it."""

    began_at: datetime
    ended_at: datetime | None
    hours: float
    charge_before_ah: float
    words: tuple[str, ...]
    depths: tuple[Figure, ...] = ()

    @property
    def duration(self) -> str:
        """3 h 10 min."""
        whole, minutes = divmod(round(self.hours * 60), 60)
        return f"{whole} h {minutes} min" if whole else f"{minutes} min"


def interruptions_of(sheet: Sheet, thicknesses: dict[str, Quantity]) -> tuple[Interruption, ...]:
    """Each interruption with the depth of its interface in every cathode of known thickness, from the contact face."""
    found, began = [], None
    for line in sheet.currents:
        row_is_stop = isinstance(line.row, Event) and line.row.kind == Event.Kind.STOP
        if began is None and line.current_a == 0 and not row_is_stop:
            began = line
        elif began is not None and (line.current_a > 0 or row_is_stop):
            found.append(_interruption(sheet, began, line, thicknesses))
            began = None
    if began is not None:
        found.append(_interruption(sheet, began, None, thicknesses))
    return tuple(found)


def _interruption(sheet: Sheet, began, ended, thicknesses: dict[str, Quantity]) -> Interruption:
    before_ah = sheet.charge_by([began.at])[0]
    end_at = ended.at if ended else None
    rows = [began.row, *([ended.row] if ended else [])]
    return Interruption(
        began.at, end_at, hours((end_at or sheet.until_at) - began.at), before_ah,
        tuple(word for row in rows for word in _words(row)), _depths(sheet, before_ah, thicknesses),
    )  # fmt: skip


def _depths(sheet: Sheet, before_ah: float, thicknesses: dict[str, Quantity]) -> tuple[Figure, ...]:
    if sheet.charge.until_ah <= 0:
        return ()
    before = ureg.Quantity(before_ah, "A*h")
    return tuple(
        figure(f"Interface in {label}", "_mm", interface_depth,
               thickness=thickness, charge_before=before, charge_total=ureg.Quantity(sheet.charge.until_ah, "A*h"))
        for label, thickness in thicknesses.items()
    )  # fmt: skip


def _words(row) -> list[str]:
    """What the sheet says of it: cause, what it did meanwhile, what was done before the restart."""
    if not isinstance(row, Event):
        return [row.note] if row.note else []
    words = [row.get_cause_display(), row.get_handling_display()]
    if row.kind == Event.Kind.RESTART or row.returned_by_itself:
        words.append("the current came back by itself" if row.returned_by_itself else "")
        words.append(f"before the restart: {row.get_activation_display() or 'not said'}")
    return [word for word in [*words, row.note] if word]
