"""Addresses of the making: each room of views lists its own."""

from process.views import (
    analyses,
    areas,
    baths,
    cathodes,
    closings,
    copies,
    cores,
    drying,
    finishing,
    inspections,
    moulds,
    plans,
    power_units,
    prices,
    range_rows,
    runs,
    sheet,
    shells,
    thickness,
    throwing,
)  # fmt: skip

ROOMS = [
    moulds, cores, baths, throwing, analyses, runs, plans, power_units, prices, cathodes, areas, sheet,
    shells, thickness, drying, closings, copies, finishing, inspections, range_rows,
]  # fmt: skip

urlpatterns = [address for room in ROOMS for address in room.urls]
