"""What of the making can be struck out: lines of the sheet and measured points of a wall."""

from django.core.exceptions import ValidationError

from process.models import Event, Reading, Shell, ThicknessPoint
from process.services.runs import refuse_outside
from records.extensions import Struck, strikables

BEGINS = "The run begins with this line: correct its time; if the run never was, judge it as given up."
WEIGHED = "{} was weighed after this stop: correct its time instead."
ANOTHER = "The run has another stop: strike that one out first."


def refuse_line(line: Reading | Event) -> str:
    """Why this line cannot be taken out of its sheet, or put back into it; else nothing."""
    kind = getattr(line, "kind", "")
    if kind == Event.Kind.ENTRY:
        return BEGINS
    if line.is_struck:
        return _refuse_back(line, kind)
    if kind == Event.Kind.STOP:
        shell = Shell.objects.filter(cathode__run=line.run_id).select_related("item").first()
        if shell:
            return WEIGHED.format(shell.item.number)
        if line.run.outcome:
            return "The run is judged: correct the time of its stop instead."
    return ""


def _refuse_back(line: Reading | Event, kind: str) -> str:
    if kind == Event.Kind.STOP and line.run.events.filter(kind=kind).exists():
        return ANOTHER
    try:
        refuse_outside(line)
    except ValidationError as error:
        return " ".join(error.messages)
    return ""


def _of_sheet(model: type, words) -> Struck:
    return Struck(
        rows=lambda: model.every.select_related("run", "struck_by"), words=words, refuse=refuse_line,
        back=lambda line: f"{line.run.get_absolute_url()}#sheet",
    )  # fmt: skip


strikables["reading"] = _of_sheet(Reading, lambda line: f"reading of {line.run.number}")
strikables["event"] = _of_sheet(Event, lambda line: f"“{line.get_kind_display()}”, {line.run.number}")
strikables["thickness"] = Struck(
    rows=lambda: ThicknessPoint.every.select_related("shell__item", "struck_by"),
    words=lambda point: f"thickness at {point.place}, {point.shell.item.number}",
    back=lambda point: f"{point.shell.get_absolute_url()}#wall",
)
