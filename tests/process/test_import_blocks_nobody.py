"""While a trace is read, checked, added up or drawn, other people's pages answer and their readings are written."""

import threading

import pytest
from django.db import connection
from django.test import Client
from django.urls import reverse

from process.models import Reading, Trace
from process.services import trace_reckoning, traces
from process.tracing import Mapping
from tests.factories import make_user
from tests.process.trace_runs import coin_run, send

pytestmark = pytest.mark.django_db(transaction=True)
PLACES = {"read": trace_reckoning, "argue": trace_reckoning, "evaluate": trace_reckoning, "reduce": trace_reckoning}


@pytest.fixture
def bench(settings, tmp_path):
    settings.MEDIA_ROOT = tmp_path
    client = Client()
    client.force_login(make_user("technician"))
    return client


class Held:
    """A step of the import that stands still until it is let go."""

    def __init__(self, step) -> None:
        self.step, self.reached, self.let_go = step, threading.Event(), threading.Event()

    def __call__(self, *args, **kwargs):
        self.reached.set()
        assert self.let_go.wait(30)
        return self.step(*args, **kwargs)


@pytest.mark.parametrize("step", PLACES)
def test_readings_are_written_while_a_trace_is_reckoned(bench, monkeypatch, step):
    run = coin_run()
    send(bench, run)
    trace = Trace.objects.get()
    held = Held(getattr(PLACES[step], step))
    monkeypatch.setattr(PLACES[step], step, held)
    importing = threading.Thread(target=_map, args=(trace,))
    importing.start()
    try:
        assert held.reached.wait(30)
        _others_go_on(bench, run)
    finally:
        held.let_go.set()
        importing.join(30)
    trace.refresh_from_db()
    assert trace.is_mapped


def test_readings_are_written_while_a_file_comes_in(bench, monkeypatch):
    run = coin_run()
    held = Held(traces.read_telling)
    monkeypatch.setattr(traces, "read_telling", held)
    importing = threading.Thread(target=_send, args=(bench.cookies, run))
    importing.start()
    try:
        assert held.reached.wait(30)
        _others_go_on(bench, run)
    finally:
        held.let_go.set()
        importing.join(30)
    assert Trace.objects.count() == 1


def _others_go_on(bench, run) -> None:
    before = Reading.objects.count()
    for address in (reverse("home"), run.get_absolute_url(), reverse("run_list")):
        assert bench.get(address).status_code == 200
    Reading.objects.create(run=run, at=run.events.first().at, current_a=0.41)
    assert Reading.objects.count() == before + 1


def _map(trace: Trace) -> None:
    try:
        traces.map_trace(trace=trace, mapping=Mapping.from_json(trace.mapping))
    finally:
        connection.close()


def _send(cookies, run) -> None:
    other = Client()
    other.cookies = cookies
    try:
        send(other, run)
    finally:
        connection.close()
