"""What a density may mean: mixtures and fillings that would have it too. A question; nothing is kept."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path

from process.forms.mixtures import MixtureForm
from process.summaries.densities import densities_of
from process.summaries.mixtures import WARNINGS, KnownDensity, Mixture, Part, alloys_of, filled_of, known_densities
from process.summaries.mixtures import mixture_of as mixed
from records import access
from records.models import Item
from records.units import Parsed, show, ureg


def mixture(request: HttpRequest, number: str) -> HttpResponse:
    item = access.fetch(request, Item, number=number)
    known = known_densities(
        densities_of(item.hydrostatic_weighings.all()), item.measurements.filter(density_g_cm3__isnull=False)
    )
    wanted = request.GET.get("of")
    chosen = next((each for each in known if each.key == wanted), next(iter(known), None))
    form = MixtureForm(request.GET if "one_g_cm3" in request.GET else None, initial={"of": chosen and chosen.key})
    context = {
        "item": item, "known": known, "chosen": chosen, "form": form, "warnings": WARNINGS,
        "asked": _asked(chosen, form),
        "alloys": alloys_of(chosen.quantity) if chosen else [], "filled": filled_of(chosen.quantity) if chosen else [],
    }  # fmt: skip
    return render(request, "process/mixture.html", context, status=422 if form.errors else 200)


def _asked(chosen: KnownDensity | None, form: MixtureForm) -> Mixture | None:
    if chosen is None or not form.is_bound or not form.is_valid():
        return None
    return mixed(chosen.quantity, *(_part(form.cleaned_data[name]) for name in ("one_g_cm3", "other_g_cm3")))


def _part(given: Parsed) -> Part:
    density = ureg.Quantity(given.canonical, "g/cm**3")
    return Part(f"the part of {show(given.canonical, '_g_cm3')}", density)


urls = [path("things/<str:number>/mixture/", mixture, name="mixture")]
