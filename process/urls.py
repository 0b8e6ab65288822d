"""Addresses of the making: each room of views lists its own."""

from process.views import (
    analyses,
    baths,
    cathodes,
    copies,
    cores,
    finishing,
    inspections,
    moulds,
    range_rows,
    runs,
    sheet,
    shells,
)  # fmt: skip

ROOMS = [moulds, cores, baths, analyses, runs, cathodes, sheet, shells, copies, finishing, inspections, range_rows]

urlpatterns = [address for room in ROOMS for address in room.urls]
