"""Every page that answers a plain request: queries, middle time, and that time against the health page's."""

from collections.abc import Iterator
from typing import Any

from django.contrib.auth.models import Group, User
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from process import models as making
from records import models
from records.roles import ROLES
from tests.addresses import ADDRESSES, address, routes
from tests.benchmarks.clock import median_ms

MOST_MS, MOST_QUERIES = 100, 15
# The richest rows of the demo; of any other kind, the first.
RICHEST = {"item": "OVM.1931.0044", "copy": "R.2026.1", "run": "D-2026-002", "bath": "B-01", "report": "CR-2026-08"}
MODELS = {
    "measurement": models.Measurement,
    "photo": models.Photo,
    "descent": models.DescentLink,
    "mark": models.Mark,
    "provenance": models.ProvenanceEvent,
    "commission": models.Commission,
    "consent": models.Consent,
    "risk": models.RiskAssessment,
    "specification": models.Specification,
    "concession": models.Concession,
    "report": models.ConditionReport,
    "finding": models.Finding,
    "document": models.Document,
    "party": models.Party,
    "place": models.Place,
    "term": models.Term,
    "duty": models.Duty,
    "item": models.Item,
    "copy": models.Item,
    "mould": making.Mould,
    "core": making.Core,
    "bath": making.Bath,
    "analysis": making.BathAnalysis,
    "run": making.Run,
    "cathode": making.Cathode,
    "reading": making.Reading,
    "event": making.Event,
    "shell": making.Shell,
    "finish": making.FinishStep,
    "inspection": making.Inspection,
    "range": making.Range,
}


def rows() -> dict[str, Any]:
    found = {}
    for kind, model in MODELS.items():
        number = RICHEST.get(kind)
        some = models.Duty.objects.open() if kind == "duty" else model.objects.order_by("pk")
        row = model.objects.get(number=number) if number else some.first()
        if row is not None:
            found[kind] = row
    return found


def everybody(name: str = "benchmark") -> Client:
    """Signed in with every role, so that each page shows all it has."""
    user = User.objects.create_user(name)
    user.groups.set(Group.objects.filter(name__in=ROLES))
    models.Party.objects.create(name=name.capitalize(), user=user)
    client = Client(SERVER_NAME="localhost")
    client.force_login(user)
    return client


def lines(times: int) -> Iterator[str]:
    client, found = everybody(), rows()
    health = median_ms(lambda: client.get("/health/"), times)
    yield f"{'page':<20}{'queries':>8}{'ms':>9}{'× health':>10}   (health {health:.2f} ms)"
    for route in sorted(routes()):
        if all(part.startswith("=") or part.split(".")[0] in found for part in ADDRESSES[route]):
            where = address(route, found)
            with CaptureQueriesContext(connection) as asked:
                answer = client.get(where)
            if answer.status_code == 200:
                yield _line(
                    route, len(asked), median_ms(lambda where=where: client.get(where).getvalue(), times), health
                )


def _line(route: str, queries: int, ms: float, health: float) -> str:
    flag = " ▲ slow" * (ms > MOST_MS) + " ▲ many queries" * (queries > MOST_QUERIES)
    return f"{route:<20}{queries:>8}{ms:>9.1f}{ms / health:>10.1f}{flag}"
