"""What a shell's page shows of the making: its run, the balance, and its wall, measured apart from calculated."""

from django.http import HttpRequest

from process.models import MakingUp, Run, Shell, ThicknessPoint
from process.summaries.next_step import making_up_step
from process.summaries.runs import summarise
from records import access
from records.extensions import Panel, item_panels
from records.models import Item


def shell_panel(request: HttpRequest, item: Item) -> Panel | None:
    if item.kind != Item.Kind.SHELL:
        return None
    shell = Shell.objects.select_related("item", "cathode__run", "making_up__copy").filter(pk=item.pk).first()
    if shell is None:
        return None
    summary = summarise(Run.objects.with_sheet().get(pk=shell.cathode.run_id))
    each = next((each for each in summary.cathodes if each.cathode.pk == shell.cathode_id), None)
    points = list(ThicknessPoint.every.filter(shell=shell).select_related("measured_by", "struck_by"))
    context = {"shell": shell, "each": each, "summary": summary, "points": points,
               "may_write": access.may(request.user, "write", Shell)}  # fmt: skip
    onward = making_up_step(summary) if shell.is_free and access.may(request.user, "write", MakingUp) else None
    step = (onward.text, onward.url) if onward else None
    return Panel("The shell", "process/_shell_panel.html", context, 40, "shell", step)


item_panels.append(shell_panel)
