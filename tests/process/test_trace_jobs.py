"""Large traces are read by the worker: the same figures, the same messages, and nobody else waits."""

import pytest
from django.urls import reverse

from process.models import Trace
from records.models import Job
from records.services import jobs
from tests.factories import make_user
from tests.process.trace_runs import BEST, coin_run, decisions_of, mapping_answers, send
from tests.records.test_jobs import work_off
from tests.tracing.files import SCENARIO

pytestmark = pytest.mark.django_db
BROKEN = SCENARIO.read_bytes().replace(b",0.423,", b",n/a,", 1)


@pytest.fixture
def bench(client, settings, tmp_path):
    settings.MEDIA_ROOT, settings.TRACE_AT_ONCE_BYTES = tmp_path, 100
    client.force_login(make_user("technician"))
    return client


def brought(bench, run) -> Trace:
    send(bench, run)
    work_off()
    return Trace.objects.get()


def test_the_scenario_walks_through_the_worker_to_the_same_figure(bench):
    run = coin_run()
    answer = send(bench, run)
    trace = Trace.objects.get()
    assert trace.state == Trace.State.READING
    assert bench.get(trace.get_absolute_url()).url == answer.url  # to its progress
    work_off()
    assert bench.get(answer.url).url == reverse("trace_mapping", args=[trace.pk])
    mapping = bench.post(reverse("trace_mapping", args=[trace.pk]), mapping_answers())
    work_off()
    assert bench.get(mapping.url).url == trace.get_absolute_url()
    trace.refresh_from_db()
    answers = decisions_of(trace, **BEST) | {"reason": "the voltage did not move", "accept": "1"}
    decided = bench.post(reverse("trace_decide", args=[trace.pk]), answers)
    work_off()
    assert bench.get(decided.url).url == f"{run.get_absolute_url()}#charge"
    trace.refresh_from_db()
    assert trace.is_accepted and trace.charge_ah == pytest.approx(8.86, abs=5e-3)


def test_a_broken_file_is_refused_with_its_line_and_is_gone(bench):
    answer = send(bench, coin_run(), BROKEN)
    work_off()
    page = bench.get(answer.url).text
    assert "Line 21: “n/a”" in page or "“n/a” stands where a figure belongs" in page
    assert "Nothing was kept." in page and reverse("trace_add", args=["D-2026-003"]) in page
    assert not Trace.objects.exists()


def test_a_file_that_is_no_table_is_refused_at_once(bench):
    answer = send(bench, coin_run(), b"nothing to see\n" * 100)
    assert answer.status_code == 422 and "No table of samples" in answer.text
    assert not Job.objects.exists()


def test_a_wrong_answer_keeps_file_and_answers(bench):
    trace = brought(bench, coin_run())
    answer = bench.post(reverse("trace_mapping", args=[trace.pk]), mapping_answers(date_order="dmy", decimal=","))
    work_off()
    page = bench.get(answer.url).text
    assert "It cannot be read so." in page and "Your answers are kept." in page
    form = bench.get(reverse("trace_mapping", args=[trace.pk])).context["form"]
    assert form["decimal"].value() == "," and form["date_order"].value() == "dmy"
    trace.refresh_from_db()
    assert trace.state == Trace.State.FOUND and not trace.is_mapped


def test_a_file_taken_away_while_it_waits_is_not_missed(bench):
    answer = send(bench, coin_run())
    trace = Trace.objects.get()
    bench.post(reverse("trace_withdraw", args=[trace.pk]), {"reason": "another tank"})
    work_off()
    assert "taken away meanwhile" in bench.get(answer.url).text


def test_reading_it_twice_is_reading_it_once(bench):
    trace = brought(bench, coin_run())
    Job.objects.update(state="waiting", attempt_count=1)
    jobs.run(Job.objects.get().pk, 1)
    trace.refresh_from_db()
    assert trace.state == Trace.State.FOUND and Job.objects.get().state == Job.State.DONE
