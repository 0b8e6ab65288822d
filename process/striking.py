"""What of the making can be struck out: lines of the sheet and measured points of a wall."""

from django.core.exceptions import ValidationError
from django.db.models import Exists, OuterRef

from process.models import Event, Reading, Shell, ThicknessPoint
from process.services.rail import take_back
from process.services.runs import refuse_outside
from process.services.stays import RAIL_CHANGES, refuse_disorder
from records.extensions import Struck, strikables

BEGINS = "The run begins with this line: correct its time; if the run never was, judge it as given up."
WEIGHED = "{} was weighed after this stop: correct its time instead."
JOINED = "{} grew on what was hung in here: correct the time instead."
LEFT = "{} was weighed after it was taken out: correct the time instead."
STILL = "Strike out the line that took it out first."
HANG_AGAIN = "Its pull of the mould was given back when this was struck out: hang it in again instead."
ANOTHER = "The run has another stop: strike that one out first."


def refuse_line(line: Reading | Event) -> str:
    """Why this line cannot be taken out of its sheet, or put back into it; else nothing."""
    kind = getattr(line, "kind", "")
    if kind == Event.Kind.ENTRY:
        return BEGINS
    if line.is_struck:
        return _refuse_back(line, kind)
    if kind in RAIL_CHANGES:
        return _refuse_rail(line)
    if kind == Event.Kind.STOP:
        out = Event.objects.filter(cathode=OuterRef("cathode"), kind=Event.Kind.TAKEN_OUT)
        shell = Shell.objects.filter(~Exists(out), cathode__run=line.run_id).select_related("item").first()
        if shell:
            return WEIGHED.format(shell.item.number)
        if line.run.outcome:
            return "The run is judged: correct the time of its stop instead."
    return ""


def _refuse_rail(line: Event) -> str:
    """What was weighed hung there, and came off when the line says."""
    joined = line.kind == Event.Kind.HUNG_IN
    shell = Shell.objects.filter(cathode=line.cathode_id).select_related("item").first()
    if shell and (joined or not line.run.events.filter(kind=Event.Kind.STOP).exists()):
        return (JOINED if joined else LEFT).format(shell.item.number)
    return STILL if joined and line.cathode.events.filter(kind=Event.Kind.TAKEN_OUT).exists() else ""


def _follow(line: Event) -> None:
    if line.kind == Event.Kind.HUNG_IN and line.is_struck:
        take_back(line=line, party=line.struck_by)


def _refuse_back(line: Reading | Event, kind: str) -> str:
    if kind == Event.Kind.HUNG_IN:
        return HANG_AGAIN
    if kind == Event.Kind.TAKEN_OUT and line.cathode and line.cathode.is_struck:
        return HANG_AGAIN
    if kind == Event.Kind.STOP and line.run.events.filter(kind=kind).exists():
        return ANOTHER
    try:
        refuse_outside(line)
        if kind == Event.Kind.TAKEN_OUT:
            refuse_disorder(line)
    except ValidationError as error:
        return " ".join(error.messages)
    return ""


def _of_sheet(model: type, words, **more) -> Struck:
    return Struck(
        rows=lambda: model.every.select_related("run", "struck_by"), words=words, refuse=refuse_line,
        back=lambda line: f"{line.run.get_absolute_url()}#sheet", **more,
    )  # fmt: skip


strikables["reading"] = _of_sheet(Reading, lambda line: f"reading of {line.run.number}")
strikables["event"] = _of_sheet(Event, lambda line: f"“{line.get_kind_display()}”, {line.run.number}", follow=_follow)
strikables["thickness"] = Struck(
    rows=lambda: ThicknessPoint.every.select_related("shell__item", "struck_by"),
    words=lambda point: f"thickness at {point.place}, {point.shell.item.number}",
    back=lambda point: f"{point.shell.get_absolute_url()}#wall",
)
