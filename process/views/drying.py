"""Weighing a core again and again, before the bath and after it."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import redirect
from django.urls import path, reverse

from process.forms.weighings import WeighingForm, kind_for
from process.models import Weighing
from process.services.cores import keep_weighing
from records import access
from records.models import Item
from records.views.answering import answer_form

BENCH = "process/bench_form.html"
SENTENCES = {
    Weighing.Kind.CORE: "Dry before it is waterproofed: weighed until it loses no more.",
    Weighing.Kind.SKIN: "What it drank in the bath dries out through its holes. Two weighings at least "
    "seven days apart must agree within 0.02 % before it is closed.",
    Weighing.Kind.OTHER: "One weighing of a series.",
}


def weighing_add(request: HttpRequest, number: str) -> HttpResponseBase:
    access.require(request, "write", Weighing)
    item = access.fetch(request, Item, number=number)
    weighing = Weighing(item=item, kind=kind_for(item))
    last = item.weighings.filter(kind=weighing.kind).last()
    form = WeighingForm(request.POST or None, instance=weighing, user=request.user, last=last)
    if request.method == "POST" and (first := form.sent_before()):
        return redirect(first)

    def act(form: WeighingForm) -> Weighing:
        kept = keep_weighing(weighing=form.instance, save=form.save)
        messages.success(request, f"{kept.mass_g:g} g kept.")
        return kept

    return answer_form(
        request, form, title=f"Weigh {number}", number=number, verb="Keep the weighing", act=act, template=BENCH,
        then=Weighing.get_absolute_url, back_url=f"{item.get_absolute_url()}#drying", sentence=SENTENCES[weighing.kind],
    )  # fmt: skip


def weighing_edit(request: HttpRequest, pk: int) -> HttpResponseBase:
    weighing = access.fetch(request, Weighing.objects.select_related("item"), to="write", pk=pk)
    form = WeighingForm(request.POST or None, instance=weighing)
    return answer_form(
        request, form, title="Correct a weighing", number=weighing.item.number, verb="Keep the correction",
        act=lambda form: keep_weighing(
            weighing=form.instance, reason=form.cleaned_data["reason"], save=form.save
        ),
        template=BENCH,
        then=Weighing.get_absolute_url, back_url=weighing.get_absolute_url(),
        sentence="What stood there before stays in the history, with your reason.",
        strike_url=reverse("strike", args=["weighing", weighing.pk]),
    )  # fmt: skip


urls = [
    path("things/<str:number>/weighings/new/", weighing_add, name="weighing_add"),
    path("weighings/<int:pk>/edit/", weighing_edit, name="weighing_edit"),
]
