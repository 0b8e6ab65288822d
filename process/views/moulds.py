"""Moulds: the negatives, each with its uses and its end."""

from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import render
from django.urls import path, reverse

from process.forms.moulds import MouldChangeForm, MouldForm
from process.models import Mould
from process.services.mould_ends import keep_mould
from process.services.moulds import take_mould
from records import access
from records.filters import by_words
from records.lost import with_flags
from records.models import Item
from records.views.answering import answer_form, wants_afterwards
from records.views.listing import export, page, wants_export
from records.views.writing import correct

SENTENCE = "One number for each mould, from one side of one piece: the link between copy and original runs through it."
COLUMNS = [
    ("number", "item.number"), ("taken from", "model.number"), ("side", "get_side_display"), ("material", "material"),
    ("made on", "made_on"), ("linear change %", "shrinkage_pct"), ("pulls allowed", "pulls_allowed_count"),
    ("pulls used", lambda mould: len(mould.pulls.all())), ("fate", "get_fate_display"), ("flag", "flag"),
]  # fmt: skip


def mould_list(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "view", Mould)
    shown = request.GET.get("show", "")
    rows = with_flags(Mould.objects.select_related("item", "model", "material").prefetch_related("pulls"))
    if shown in Mould.Fate.values:
        rows = rows.filter(fate=shown)
    words = request.GET.get("q", "").strip()
    rows = by_words(rows, words, "item__number", "model__number", "model__title", "material__label")
    if wants_export(request):
        return export(list(rows), COLUMNS, "moulds")
    context = {"page": page(rows, request, key="pk"), "shown": shown, "fates": Mould.Fate.choices, "q": words}
    return render(request, "process/mould_list.html", context)


def mould_add(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "write", Mould)
    model = Item.objects.filter(number=request.GET.get("of", "")).first()
    form = MouldForm(request.POST or None, initial=_offered(request, model))
    return answer_form(
        request, form, title="Record a mould", sentence=SENTENCE, verb="Record the mould",
        back_url=model.get_absolute_url() if model else reverse("mould_list"),
        act=lambda form: take_mould(
            mould=form.save(commit=False), afterwards=wants_afterwards(request), **form.identity()
        ),
        then=lambda mould: mould.item,
    )  # fmt: skip


def _offered(request: HttpRequest, model: Item | None) -> dict:
    """What is known already: the piece, its owner, its latest commission."""
    offered = {"made_by": access.party_of(request.user)}
    if model:
        last = model.commissions.order_by("-number").first()
        offered |= {
            "model": model,
            "owner": model.owner,
            "commission": last,
            "title": f"Mould of {model.number}, {model.title}",
        }
    return offered


def mould_edit(request: HttpRequest, number: str) -> HttpResponseBase:
    def act(form: MouldChangeForm) -> Mould:
        anew = any(name.startswith("fate") for name in form.changed_data)
        return keep_mould(mould=form.save(commit=False), anew=anew, afterwards=wants_afterwards(request))

    return correct(
        request, MouldChangeForm, where={"item__number": number}, related=("item", "model", "commission"),
        sentence=SENTENCE, title=lambda mould: f"Correct {number}", then=lambda mould: mould.item, act=act,
    )  # fmt: skip


urls = [
    path("moulds/", mould_list, name="mould_list"),
    path("moulds/new/", mould_add, name="mould_add"),
    path("moulds/<str:number>/edit/", mould_edit, name="mould_edit"),
]
