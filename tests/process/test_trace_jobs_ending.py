"""Large traces in the worker: what was typed is never lost, reckoning again and withdrawing wait for nobody."""

import pytest
from django.urls import reverse

from process.models import Trace
from process.services import traces
from process.services.trace_reckoning import COMPARED, READ
from process.tracing import Mapping, fast, read, survey, watching
from process.tracing.watching import fetched
from records.models import Job
from tests.factories import make_user
from tests.process.trace_runs import BEST, coin_run, decisions_of, mapping_answers, send
from tests.records.test_jobs import work_off
from tests.tracing.files import LIMIT, SCENARIO, mapped

pytestmark = pytest.mark.django_db
REASON = "the voltage did not move"


@pytest.fixture
def bench(client, settings, tmp_path):
    settings.MEDIA_ROOT, settings.TRACE_AT_ONCE_BYTES = tmp_path, 100
    client.force_login(make_user("technician"))
    return client


def brought(bench, run, content: bytes | None = None) -> Trace:
    send(bench, run, content)
    work_off()
    trace = Trace.objects.latest("pk")
    bench.post(reverse("trace_mapping", args=[trace.pk]), mapping_answers())
    work_off()
    trace.refresh_from_db()
    return trace


def decide(bench, trace, **more):
    answer = bench.post(reverse("trace_decide", args=[trace.pk]), {"reason": REASON, "accept": "1"} | more)
    work_off()
    trace.refresh_from_db()
    return answer


def test_a_refused_acceptance_keeps_reason_and_decisions(bench):
    trace = brought(bench, coin_run())
    some = {kind: choice for kind, choice in BEST.items() if kind != "zero"}

    answer = decide(bench, trace, **decisions_of(trace, **some))

    assert "Decide every finding first" in bench.get(answer.url).text and not trace.is_accepted
    form = bench.get(trace.get_absolute_url()).context["form"]
    assert form["reason"].value() == REASON
    assert {bound.value() for bound, each in form.findings if each["kind"] == "spike"} == {"exclude"}


def test_a_file_that_went_missing_while_it_was_decided_loses_no_word(bench, tmp_path):
    trace = brought(bench, coin_run())
    path = tmp_path / trace.path
    path.rename(tmp_path / "elsewhere")

    answer = decide(bench, trace, **decisions_of(trace, **BEST))

    assert "is not in the data folder" in bench.get(answer.url).text and not trace.decisions
    form = bench.get(trace.get_absolute_url()).context["form"]
    chosen = {each["kind"]: bound.value() for bound, each in form.findings}
    assert form["reason"].value() == REASON and chosen["spike"] == "exclude" and chosen["zero"] == "gone"


def accepted(bench, run, content: bytes | None = None, **more) -> Trace:
    trace = brought(bench, run, content)
    decide(bench, trace, **decisions_of(trace, **BEST))
    return trace if trace.is_accepted else _with_gaps(bench, trace, **more)


def _with_gaps(bench, trace, **more) -> Trace:
    decide(bench, trace, **decisions_of(trace, **BEST), **more)
    assert trace.is_accepted
    return trace


def test_once_it_is_kept_nothing_is_offered_again(bench):
    trace = accepted(bench, coin_run())
    assert Job.objects.filter(arguments__step="decide").get().state == Job.State.DONE
    assert bench.get(trace.get_absolute_url()).context["form"] is None


def test_reckoning_again_is_the_worker_s_and_its_answer_stands_on_the_page(bench, tmp_path):
    trace = accepted(bench, coin_run())
    answer = bench.post(reverse("trace_again", args=[trace.pk]))
    assert answer.url.startswith("/jobs/")
    work_off()
    assert bench.get(answer.url).url == trace.get_absolute_url()
    assert "the same figures" in bench.get(trace.get_absolute_url()).text

    path = tmp_path / trace.path
    path.write_bytes(path.read_bytes().replace(b"0.422", b"0.522"))
    bench.post(reverse("trace_again", args=[trace.pk]))
    work_off()
    assert "digest differs" in bench.get(trace.get_absolute_url()).text
    trace.refresh_from_db()
    assert trace.charge_ah == pytest.approx(8.86, abs=5e-3)  # SCENARIO 9: nothing but the sentence changed


def test_reckoning_a_lost_file_again_says_so(bench, tmp_path):
    trace = accepted(bench, coin_run())
    (tmp_path / trace.path).unlink()
    answer = bench.post(reverse("trace_again", args=[trace.pk]))
    work_off()
    assert "restore it from the backup" in bench.get(answer.url).text


def test_withdrawing_the_one_that_ruled_reckons_the_other_in_the_worker(bench):
    run = coin_run()
    first = accepted(bench, run)
    whole = first.charge_ah
    second = accepted(bench, run, SCENARIO.read_bytes().replace(b"0.423", b"0.424"), ruling="this")
    first.refresh_from_db()
    assert traces.ruled_by(second) == [first] and first.charge_ah < 1

    answer = bench.post(reverse("trace_withdraw", args=[second.pk]), {"reason": "another tank"})

    assert answer.url.startswith("/jobs/")
    work_off()
    assert bench.get(answer.url).url == run.get_absolute_url()
    first.refresh_from_db()
    second.refresh_from_db()
    assert first.charge_ah == pytest.approx(whole) and second.state == Trace.State.WITHDRAWN


def test_progress_only_grows_and_the_reading_has_nine_tenths_of_it(bench):
    run, told = coin_run(), []
    send(bench, run)
    trace = Trace.objects.get()
    traces.take_up(trace=trace, tell=lambda step, share: told.append(share))
    assert told == sorted(told) and told[-1] <= 1
    told.clear()
    traces.map_trace(trace=trace, mapping=Mapping.from_json(trace.mapping), tell=lambda step, share: told.append(share))
    assert told == sorted(told) and READ < COMPARED in told


def test_two_orders_of_day_and_month_are_two_halves_of_one_reading(bench):
    rows = "".join(f"02/03/2026 15:{minute:02d}:00;0,42\n" for minute in range(30))
    send(bench, coin_run(), ("Datum;I [A]\n" + rows).encode())
    told = []
    traces.take_up(trace=Trace.objects.get(), tell=lambda step, share: told.append(share))
    assert told == sorted(told) and 0.5 in told


def test_the_fast_reader_is_watched_to_the_same_samples(monkeypatch):
    """duckdb tells while it works; the one that asked hears it, and gets what it gets unwatched."""
    monkeypatch.setattr(watching, "LOOK_EVERY_S", 0.0001)
    surveyed, mapping, heard = survey(SCENARIO, LIMIT), mapped(SCENARIO), []
    watched = read(surveyed, mapping, tell=heard.append)
    assert all(0 <= share <= 1 for share in heard)
    assert watched.currents_a.tolist() == read(surveyed, mapping).currents_a.tolist()
    assert fast.fetched is fetched
