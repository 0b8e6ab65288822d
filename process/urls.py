"""Addresses of the making: each room of views lists its own."""

from process.views import (
    acceptance,
    analyses,
    areas,
    bath_diary,
    bath_work,
    baths,
    care_rules,
    cathodes,
    charge,
    closings,
    copies,
    cores,
    costs,
    coupons,
    drying,
    failures,
    finishing,
    gauges,
    hydrostatics,
    inspections,
    interruptions,
    mixtures,
    moulds,
    pasting,
    plans,
    power_units,
    prices,
    range_rows,
    runs,
    sheet,
    shells,
    thickness,
    throwing,
    traces,
    walls,
    work,
)  # fmt: skip

ROOMS = [
    moulds, gauges, cores, baths, bath_diary, bath_work, throwing, analyses, runs, charge, traces, plans, power_units,
    prices, cathodes, areas, sheet, pasting, interruptions, shells, thickness, walls, coupons, failures, drying,
    closings, copies, finishing, work, costs, care_rules, hydrostatics, mixtures, inspections, acceptance,
    range_rows,
]  # fmt: skip

urlpatterns = [address for room in ROOMS for address in room.urls]
