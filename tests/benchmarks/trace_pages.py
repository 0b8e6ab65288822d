"""The pages of a run whose trace has millions of samples, and other people's pages and readings while it is read."""

import threading
import uuid
from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from statistics import median
from time import perf_counter, process_time, sleep

from django.core.files import File
from django.db import connection

from tests.benchmarks.clock import median_ms

BEGAN = datetime(2026, 3, 2, 14, tzinfo=UTC)
MOST_MS = 150


def lines(path: Path, rows: int, times: int) -> Iterator[str]:
    from process.services import traces
    from process.tracing import Mapping
    from records.serving import make_tables
    from tests.benchmarks.pages import everybody
    from tests.factories import make_party

    make_tables(lambda line: None)
    client, run = everybody(f"trace of {rows}"), _run(rows)
    with path.open("rb") as file:
        brought = traces.receive(run=run, file=File(file), name=path.name, token=uuid.uuid4())
    mapping, where = Mapping.from_json(brought.mapping), run.get_absolute_url()
    yield "while it is read    " + _beside(
        lambda: traces.map_trace(trace=brought, mapping=mapping), lambda: client.get(where), run
    )
    traces.decide(trace=brought, decisions={each["key"]: each["choices"][0]["key"] for each in brought.findings})
    traces.accept(trace=brought, reason="made for the benchmark", ruling="", person=make_party())
    for name, address in (("run", where), ("trace", brought.get_absolute_url())):
        cpu = process_time()
        ms = median_ms(lambda address=address: client.get(address).getvalue(), times)
        cpu = (process_time() - cpu) * 1000 / (times + 1)
        yield f"page of its {name:<8}{ms:>9.1f} ms, {cpu:.1f} of the processor{' ▲ slow' * (ms > MOST_MS)}"


def _run(rows: int):
    from process.models import Event
    from tests import factories as make

    run = make.make_run(number=f"D-{rows}", planned_current_density_a_dm2=1.5)
    make.make_cathode(run, total_area_dm2=0.28, face_area_dm2=0.162)
    Event.objects.create(run=run, kind="entry", at=BEGAN, current_a=0.42)
    Event.objects.create(run=run, kind="stop", at=BEGAN + timedelta(seconds=rows / 10), current_a=0.0)
    return run


def _beside(act: Callable[[], object], look: Callable[[], object], run) -> str:
    """Both in one process, which is harder than the worker of its own that reads large files."""
    from process.models import Reading

    look()
    thread = threading.Thread(target=lambda: (act(), connection.close()))
    looked, written = [], []
    began = perf_counter()
    thread.start()
    while thread.is_alive():
        looked.append(_ms(look))
        at = BEGAN + timedelta(minutes=len(written) + 1)
        written.append(_ms(lambda at=at: Reading.objects.create(run=run, at=at, current_a=0.42)))
        sleep(0.01)
    taken = perf_counter() - began
    return (
        f"{taken:.1f} s: {len(looked)} pages, middle {median(looked):.0f} ms, longest {max(looked):.0f} ms; "
        f"{len(written)} readings written, longest {max(written):.0f} ms"
    )


def _ms(call: Callable[[], object]) -> float:
    began = perf_counter()
    call()
    return (perf_counter() - began) * 1000
