"""What a copy and a commission took of hours and money; the same as a table."""

from collections.abc import Iterable
from typing import Any

from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import render
from django.urls import path

from process.models import Expense, WorkEstimate, WorkHours
from process.summaries.commission_costs import costs_of_commission, people_of
from process.summaries.copy_costs import Costs, costs_of_copy
from records import access
from records.models import Commission, Item
from records.views.listing import export, wants_export

Line = tuple[str, str, str, str, Any, str]
COLUMNS = [
    ("of", lambda line: line[0]), ("what", lambda line: line[1]), ("who", lambda line: line[2]),
    ("day", lambda line: line[3]), ("amount", lambda line: line[4]), ("unit", lambda line: line[5]),
]  # fmt: skip


def lines_of(number: str, costs: Costs) -> Iterable[Line]:
    """Every line behind the sum, then the sum in its parts."""
    money = costs.prices.currency if costs.prices else "¤"
    for row in costs.hours:
        what = f"{row.get_kind_display()}{', failed or done again' if row.is_rework else ''}"
        yield number, what, str(row.person), row.done_on.isoformat(), row.work_h, "h"
    for part in costs.grown:
        yield number, f"metal, {part.run.number}", "", "", round(part.mass_g, 2), "g"
        yield number, f"charge, {part.run.number}", "", "", round(part.charge_ah, 2), "Ah"
        yield number, f"energy, {part.run.number}", "", "", round(part.energy_kwh, 3), "kWh"
    for bill in costs.bills:
        yield number, bill.what, str(bill.paid_to or ""), bill.spent_on.isoformat(), bill.sum_money, money
    for figure in (*costs.parts, *([costs.total] if costs.total else [])):
        if figure.value is not None:
            yield number, f"{figure.label}, calculated", "", "", round(figure.value, 2), money


def copy_costs(request: HttpRequest, number: str) -> HttpResponseBase:
    copy = access.fetch(request, Item.objects.made_here(), number=number)
    costs = costs_of_copy(copy)
    if wants_export(request):
        return export(lines_of(number, costs), COLUMNS, f"costs of {number}")
    context = {"item": copy, "costs": costs, "people": people_of(costs.hours), **_may(request)}
    return render(request, "process/copy_costs.html", context)


def commission_costs(request: HttpRequest, number: str) -> HttpResponseBase:
    commission = access.fetch(request, Commission, number=number)
    found = costs_of_commission(commission)
    if wants_export(request):
        lines = [line for copy, costs in found.copies for line in lines_of(copy.number, costs)]
        return export([*lines, *lines_of(number, found.rest)], COLUMNS, f"costs of {number}")
    return render(request, "process/commission_costs.html", {"commission": commission, "found": found, **_may(request)})


def _may(request: HttpRequest) -> dict[str, bool]:
    models = {"may_work": WorkHours, "may_spend": Expense, "may_estimate": WorkEstimate}
    return {name: access.may(request.user, "write", model) for name, model in models.items()}


urls = [
    path("copies/<str:number>/costs/", copy_costs, name="copy_costs"),
    path("commissions/<str:number>/costs/", commission_costs, name="commission_costs"),
]
