"""Copies: the list of those made here and the historic ones, and making shells up into a new one."""

from typing import Any

from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import render
from django.urls import path, reverse

from process.forms.copies import CopyFilter, MakingUpChangeForm, MakingUpForm
from process.lookups import kept_shells
from process.models import MakingUp, Shell
from process.services.copies import make_up
from process.services.hot_work import correct_making_up
from process.summaries.copy_fills import fillings_before
from process.summaries.copy_states import state_of, with_states
from records import access
from records.lost import with_flags
from records.models import Commission, Item
from records.portraits import with_portraits
from records.views.answering import answer_form, wants_afterwards
from records.views.listing import Page, export, page, wants_export

SENTENCE = "What lies inside cannot be seen again once it is closed: say it now."


def _making(name: str):
    """A column that only copies made here have."""

    def read(copy: Item) -> Any:
        making = getattr(copy, "making_up", None)
        value = getattr(making, name, "") if making else ""
        return value if value is not None else ""

    return read


COLUMNS = [
    ("number", "number"), ("state", lambda copy: state_of(copy).word), ("kind", "get_kind_display"), ("title", "title"),
    ("date", "date_words"), ("technique", _making("get_technique_display")), ("inside", _making("fill")),
    ("lead inside", _making("get_lead_inside_display")), ("held as", "get_status_display"),
    ("flag", "flag"), ("place", lambda copy: copy.place or ""), ("owner", lambda copy: copy.owner or ""),
]  # fmt: skip


def copy_list(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "view", Item)
    form = CopyFilter(request.GET)
    copies = with_flags(with_states(Item.objects.copies())).select_related("place", "owner", "making_up__fill")
    rows = form.narrow(copies)
    if wants_export(request):
        return export(rows, COLUMNS, "copies")
    shown = page(with_portraits(rows), request)
    lines = [{"item": copy, "state": state_of(copy)} for copy in shown.rows]
    context = {"form": form, "page": Page(lines, shown.next_key), "count": rows.count()}
    return render(request, "process/copy_list.html", context)


def making_up_add(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "write", MakingUp)
    offered = _offered(request)
    form = MakingUpForm(request.POST or None, instance=MakingUp(), initial=offered)
    return answer_form(
        request, form, title="Make up a copy", sentence=SENTENCE, verb="Make it up", back_url=reverse("copy_list"),
        act=lambda form: make_up(
            copy=form.identity(), making_up=form.instance, shells=list(form.cleaned_data["shells"]),
            afterwards=wants_afterwards(request),
        ),
        then=Item.get_absolute_url, template="process/making_up_form.html", kept=kept_shells().exists(),
        fillings=fillings_before(offered["shells"]),
    )  # fmt: skip


def _offered(request: HttpRequest) -> dict[str, Any]:
    """The shells and the commission from which the person came."""
    shells = list(kept_shells().filter(item__number__in=request.GET.getlist("shell")))
    number = request.GET.get("commission", "")
    commission = Commission.objects.filter(number=number).first() if number else None
    if shells and commission is None:
        commission = _commission_of(shells[0])
    return {"shells": shells, "commission": commission, "made_up_by": access.party_of(request.user)}


def _commission_of(shell: Shell) -> Commission | None:
    """For which request it grew: as the run says, else the mould."""
    cathode = shell.cathode
    return cathode.run.commission or (cathode.mould.commission if cathode.mould else None)


def making_up_edit(request: HttpRequest, number: str) -> HttpResponseBase:
    rows = MakingUp.objects.select_related("copy")
    making_up = access.fetch(request, rows, to="write", copy__number=number)
    form = MakingUpChangeForm(request.POST or None, instance=making_up)
    back = making_up.copy.get_absolute_url()
    return answer_form(
        request, form, title="Correct the making-up", number=number,
        sentence="What was written before is kept in the history.",
        verb="Save", back_url=back, then=lambda row: f"{back}#making",
        act=lambda form: correct_making_up(
            making_up=form.instance, save=form.save, afterwards=wants_afterwards(request)
        ),
    )  # fmt: skip


urls = [
    path("copies/", copy_list, name="copy_list"),
    path("copies/new/", making_up_add, name="making_up_add"),
    path("copies/<str:number>/edit/", making_up_edit, name="making_up_edit"),
]
