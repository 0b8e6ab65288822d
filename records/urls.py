"""The site's addresses: each room of views lists its own; process adds its own by name."""

from django.apps import apps
from django.urls import include, path

from records.views import (
    apart,
    commissions,
    concessions,
    condition,
    consents,
    descent,
    documents,
    duties,
    examinations,
    family,
    file_checks,
    findings,
    health,
    home,
    items,
    labels,
    limits,
    lookup,
    marks,
    measurements,
    parties,
    photos,
    places,
    provenance,
    risks,
    search,
    session,
    specifications,
    striking,
    vocabulary,
)  # fmt: skip

ROOMS = [
    home,
    session,
    health,
    search,
    lookup,
    items,
    measurements,
    photos,
    descent,
    provenance,
    marks,
    labels,
    apart,
    limits,
    commissions,
    consents,
    risks,
    specifications,
    striking,
    concessions,
    condition,
    findings,
    file_checks,
    documents,
    parties,
    places,
    vocabulary,
    duties,
    examinations,
    family,
]

urlpatterns = [address for room in ROOMS for address in room.urls]
if apps.is_installed("process"):
    urlpatterns += [path("", include("process.urls"))]
