"""The run D-2026-003 as its bench sheet had it, and sending a logger's file to it."""

from datetime import datetime
from uuid import uuid4

from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import TestCase
from django.urls import reverse

from process.forms.traces import entry_of
from process.models import Event, Reading, Run
from tests import factories as make
from tests.tracing.files import SCENARIO

LINES = (("02T14:00", 0.08, "entry"), ("02T15:30", 0.2, "current"), ("02T17:00", 0.42, "current"),
         ("03T01:20", 0.0, "interruption"), ("03T04:30", 0.42, "restart"), ("03T07:20", 0.0, "interruption"),
         ("03T07:45", 0.2, "restart"), ("03T08:00", 0.42, "current"), ("03T17:00", 0.0, "stop"))  # fmt: skip


def coin_run(number: str = "D-2026-003", *, without: tuple[str, ...] = ()) -> Run:
    """SCENARIO 7.3; `without` names lines that nobody wrote."""
    run = make.make_run(number=number, planned_current_density_a_dm2=1.5, planned_thickness_mm=0.42)
    make.make_cathode(run, label="both sides", total_area_dm2=0.28, face_area_dm2=0.162)
    for at, amperes, kind in LINES:
        if at not in without:
            Event.objects.create(run=run, kind=kind, at=datetime.fromisoformat(f"2026-03-{at}Z"), current_a=amperes)
    for at, meter in (("02T14:00", 0.0), ("03T17:00", 8.93)):
        Reading.objects.create(run=run, at=datetime.fromisoformat(f"2026-03-{at}Z"), meter_ah=meter)
    return run


def send(client, run: Run, content: bytes | None = None, name: str = "logger.csv", token=None):
    file = SimpleUploadedFile(name, SCENARIO.read_bytes() if content is None else content)
    with TestCase.captureOnCommitCallbacks(execute=True):  # a test never commits: the file takes its place now
        return client.post(reverse("trace_add", args=[run.number]), {"file": file, "token": str(token or uuid4())})


def mapping_answers(**answers) -> dict:
    """The form of the scenario's file as the page offers it."""
    return {
        "time_kind": "instant", "time_column": "0", "clock_column": "", "date_order": "ymd", "zone": "Europe/Berlin",
        "doubled_hour": "", "elapsed_unit": "", "starts_at": "", "decimal": ".", "current_column": "2",
        "current_unit": "A", "sign": "1", "voltage_column": "1", "voltage_unit": "V", "temperature_column": "3",
        "temperature_unit": "°C",
    } | answers  # fmt: skip


def decisions_of(trace, **by_kind) -> dict:
    """The radio buttons of the page, pressed by kind of finding."""
    return {entry_of(each): by_kind[each["kind"]] for each in trace.findings if each["kind"] in by_kind}


BEST = {"spike": "exclude", "zero": "gone", "restart": "by itself", "gap": "bridge"}
