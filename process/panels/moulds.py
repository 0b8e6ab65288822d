"""What a mould's, a core's and a model's page show of the making."""

from urllib.parse import quote

from django.db.models import Count, OuterRef
from django.http import HttpRequest
from django.urls import reverse

from process.models import Core, Mould, MouldWear, Run, Weighing
from process.services.moulds import pulls_allowed
from process.summaries.core_drying import core_drying
from process.summaries.cores import summarise
from process.summaries.struck import take_weighings, weighings_riding
from records import access
from records.extensions import Panel, Struck, item_panels, strikables
from records.line import line_of
from records.models import Item


def mould_of(item: Item) -> Mould | None:
    """The mould behind a thing, with its people; read once for the parts of its page."""
    if item.kind != Item.Kind.MOULD:
        return None
    if not hasattr(item, "_mould"):
        rows = Mould.objects.select_related(
            "model", "material", "made_by", "present", "accepted_by", "fate_witness", "commission", "custodian"
        )
        item._mould = rows.filter(pk=item.pk).first()
        if item._mould:
            item._mould.item = item
    return item._mould


def mould_panel(request: HttpRequest, item: Item) -> Panel | None:
    mould = mould_of(item)
    if mould is None:
        return None
    pulls = list(mould.pulls.select_related("cathode__run", "cathode__shell__item", "core__item"))
    allowed = pulls_allowed(mould)
    worn, parts = list(mould.wear_seen.select_related("pull", "seen_by")), list(mould.parts.select_related("place"))
    for pull in pulls:
        pull.worn = [each for each in worn if each.pull_id == pull.pk]
    context = {
        "mould": mould, "pulls": pulls, "allowed": allowed, "parts": parts,
        "worn_before": [each for each in worn if each.pull_id is None],
        "worn_out": any(each.bearing == MouldWear.Bearing.ENDS for each in worn),
    }  # fmt: skip
    usable = mould.fate == Mould.Fate.IN_STORE and len(pulls) < allowed and not context["worn_out"]
    step = ("Plan a run with it", f"{reverse('run_add')}?mould={quote(item.number)}")
    may_run = usable and access.may(request.user, "write", Run)
    return Panel("The mould", "process/_mould_panel.html", context, 40, "mould", step if may_run else None)


def core_panel(request: HttpRequest, item: Item) -> Panel | None:
    if item.kind != Item.Kind.CORE:
        return None
    rows = Core.objects.select_related("item", "pull__mould__item")
    core = rows.annotate(weighing_rows=weighings_riding(OuterRef("pk"))).filter(pk=item.pk).first()
    if core is None:
        return None
    struck = take_weighings(core.item, core.weighing_rows)
    weighings = [each for each in core.item.weighings.all() if each.kind == Weighing.Kind.CORE]
    context = {
        "core": core, "summary": summarise(core), "weighings": weighings,
        "drying": core_drying(core), "struck": struck,
        "may_write": access.may(request.user, "write", Core),
    }  # fmt: skip
    return Panel("The core", "process/_core_panel.html", context, order=40, anchor="core")


def moulds_of(request: HttpRequest, item: Item) -> Panel | None:
    """The moulds that were taken from a piece, and the verb to record another."""
    if item.kind in {Item.Kind.MOULD, Item.Kind.SHELL, Item.Kind.CORE}:
        return None
    rows = item.moulds.select_related("item", "material").annotate(used_count=Count("pulls"))
    moulds = rows if line_of(item).down else []
    return Panel(
        "Moulds taken from it", "process/_moulds_of.html", {"item": item, "moulds": moulds}, order=45, anchor="moulds"
    )


item_panels += [mould_panel, core_panel, moulds_of]
strikables["wear"] = Struck(
    rows=lambda: MouldWear.every.select_related("mould__item", "struck_by"),
    words=lambda row: str(row),
    back=lambda row: row.get_absolute_url(),
)
