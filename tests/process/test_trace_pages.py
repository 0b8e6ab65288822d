"""A logger's trace through its pages: in, confirmed, argued, accepted, chosen; SCENARIO 9 and 12."""

from hashlib import sha256
from uuid import uuid4

import pytest
from django.core.management import CommandError, call_command
from django.urls import reverse

from process.forms.traces import DecisionsForm
from process.models import Run, Trace, TraceShape
from process.summaries.runs import summarise
from tests.factories import make_user
from tests.process.trace_runs import BEST, coin_run, decisions_of, mapping_answers, send
from tests.tracing.files import SCENARIO, hostile

pytestmark = pytest.mark.django_db
FIRST = b"timestamp,current_A\n2026-03-02T14:00:00Z,0.42\n"


@pytest.fixture
def bench(client, settings, tmp_path):
    settings.MEDIA_ROOT = tmp_path
    client.force_login(make_user("technician"))
    return client


def mapped(bench, run, content=None, **answers) -> Trace:
    send(bench, run, content)
    trace = Trace.objects.latest("pk")
    page = bench.post(reverse("trace_mapping", args=[trace.pk]), mapping_answers(**answers))
    assert page.status_code == 302, page.context["form"].errors
    trace.refresh_from_db()
    return trace


def accepted(bench, trace, reason="the voltage did not move", **more) -> Trace:
    answers = decisions_of(trace, **BEST) | {"reason": reason, "accept": "1"} | more
    page = bench.post(reverse("trace_decide", args=[trace.pk]), answers)
    assert page.status_code == 302, page.context["form"].errors
    trace.refresh_from_db()
    return trace


def test_the_scenario_walks_from_file_to_figure(bench):
    run = coin_run()
    trace = accepted(bench, mapped(bench, run))
    assert trace.charge_ah == pytest.approx(8.86, abs=5e-3)
    summary = summarise(Run.objects.with_sheet().get(pk=run.pk))
    by_trace, by_meter, by_sheet = summary.charge.beside
    assert [round(each.figure.value, 2) for each in (by_trace, by_meter, by_sheet)] == [8.86, 8.93, 8.94]
    assert by_trace.apart_words == "−0.9\u2009%" and by_sheet.is_chosen


def test_the_hostile_form_gives_the_same_figure(bench):
    run = coin_run()
    send(bench, run, hostile().encode("utf-16"))
    trace = Trace.objects.get()
    page = bench.get(reverse("trace_mapping", args=[trace.pk]))
    assert page.context["proposal"].asks("zone")
    answers = {"time_kind": "local", "date_order": "dmy", "decimal": ",", "current_unit": "mA"}
    page = bench.post(reverse("trace_mapping", args=[trace.pk]), mapping_answers(**answers))
    assert page.status_code == 302, page.context["form"].errors
    trace.refresh_from_db()
    assert accepted(bench, trace).charge_ah == pytest.approx(8.86, abs=5e-3)


def test_nothing_is_accepted_while_a_finding_waits(bench):
    trace = mapped(bench, coin_run())
    page = bench.post(reverse("trace_decide", args=[trace.pk]), {"reason": "it looks right", "accept": "1"})
    assert page.status_code == 422 and "Decide every finding" in page.text
    assert "it looks right" in page.text
    trace.refresh_from_db()
    assert trace.state == Trace.State.FOUND


def test_a_page_from_before_answers_only_the_findings_that_it_showed(bench):
    trace = mapped(bench, coin_run())
    stale = decisions_of(trace, **BEST)
    trace.findings = trace.findings[1:]  # what another person's decision leaves
    form = DecisionsForm(stale, trace=trace)
    assert form.is_valid(), form.errors
    shown = {each["key"] for each in trace.findings}
    assert set(form.decisions) <= shown
    assert all(form.decisions[each["key"]] == BEST[each["kind"]] for each in trace.findings if each["kind"] in BEST)


def test_a_withdrawn_trace_keeps_its_first_reason(bench):
    trace = accepted(bench, mapped(bench, coin_run()))
    bench.post(reverse("trace_withdraw", args=[trace.pk]), {"reason": "logger of another tank"})
    page = bench.post(reverse("trace_withdraw", args=[trace.pk]), {"reason": "second thought"})
    trace.refresh_from_db()
    assert page.status_code == 422 and trace.withdrawn_reason == "logger of another tank"


def test_accepting_asks_for_a_reason(bench):
    trace = mapped(bench, coin_run())
    page = bench.post(reverse("trace_decide", args=[trace.pk]), decisions_of(trace, **BEST) | {"accept": "1"})
    assert page.status_code == 422 and "Say why" in page.text


def test_a_restart_that_nobody_wrote_is_found(bench):
    trace = mapped(bench, coin_run(without=("03T04:30",)))
    assert any("Silent restart" in each["sentence"] for each in trace.findings)
    assert trace.stretches[0]["restart"] == "silent"


def test_choosing_another_evidence_changes_what_follows_and_leaves_a_trail(bench):
    run = coin_run()
    accepted(bench, mapped(bench, run))
    before = summarise(Run.objects.with_sheet().get(pk=run.pk)).theory.value
    chosen = {"version": run.version, "charge_from": "trace", "charge_reason": "the sheet has a hole"}
    page = bench.post(reverse("charge_choose", args=[run.number]), chosen)
    assert page.status_code == 302, page.context["form"].errors
    summary = summarise(Run.objects.with_sheet().get(pk=run.pk))
    assert summary.theory.value / before == pytest.approx(8.8603 / 8.94, abs=1e-3)
    trail = run.history.first()
    assert (trail.charge_from, trail.prev_record.charge_from) == ("trace", "sheet")
    assert trail.history_change_reason == "the sheet has a hole"


def test_a_trace_cannot_be_chosen_before_one_is_accepted(bench):
    run = coin_run()
    chosen = {"version": run.version, "charge_from": "trace", "charge_reason": "why not"}
    page = bench.post(reverse("charge_choose", args=[run.number]), chosen)
    assert page.status_code == 422 and "No trace of this run is accepted" in page.text


def test_the_same_form_sent_twice_keeps_one_trace(bench):
    run, token = coin_run(), uuid4()
    first, second = (send(bench, run, token=token) for _ in range(2))
    assert first["Location"] == second["Location"] and Trace.objects.count() == 1


def test_the_same_file_again_is_named_and_not_kept(bench):
    run = coin_run()
    send(bench, run)
    page = send(bench, run, name="again.csv")
    assert page.status_code == 422 and "stands at the run already, as logger.csv" in page.text
    assert Trace.objects.count() == 1


def test_the_next_file_of_the_shape_is_read_as_this_one(bench):
    mapped(bench, coin_run(), current_column="1")
    assert TraceShape.objects.count() == 1
    send(bench, coin_run("D-2026-103"))
    trace = Trace.objects.latest("pk")
    proposal = bench.get(reverse("trace_mapping", args=[trace.pk])).context["proposal"]
    assert proposal.remembered and proposal.mapping.current_column == 1


def test_reckoned_again_it_gives_the_same_and_a_changed_file_is_told(bench, tmp_path):
    trace = accepted(bench, mapped(bench, coin_run()))
    page = bench.post(reverse("trace_again", args=[trace.pk]), follow=True)
    assert "the same figures" in page.text
    path = tmp_path / trace.path
    path.write_bytes(path.read_bytes().replace(b"0.422", b"0.522"))
    page = bench.post(reverse("trace_again", args=[trace.pk]), follow=True)
    assert "digest differs" in page.text and "integrated: 8.4388" in page.text


def test_one_that_never_counted_is_taken_away_with_its_file(bench, tmp_path, django_capture_on_commit_callbacks):
    send(bench, coin_run())
    trace = Trace.objects.get()
    assert (tmp_path / trace.path).exists()
    with django_capture_on_commit_callbacks(execute=True):
        bench.post(reverse("trace_withdraw", args=[trace.pk]), {"reason": "wrong tank"})
    assert not Trace.objects.exists() and not (tmp_path / trace.path).exists()


def test_an_accepted_one_is_withdrawn_with_a_reason_and_stays(bench):
    run = coin_run()
    trace = accepted(bench, mapped(bench, run))
    bench.post(reverse("trace_withdraw", args=[trace.pk]), {"reason": "wrong tank"})
    trace.refresh_from_db()
    assert (trace.state, trace.withdrawn_reason) == ("withdrawn", "wrong tank")
    assert summarise(Run.objects.with_sheet().get(pk=run.pk)).charge.trace is None


def test_where_two_overlap_the_person_says_which_counts(bench):
    run = coin_run()
    first = accepted(bench, mapped(bench, run))
    lines = hostile().splitlines()
    half = "\n".join([lines[0], *lines[55:]]) + "\n"
    answers = {"time_kind": "local", "date_order": "dmy", "decimal": ",", "current_unit": "mA"}
    second = mapped(bench, run, half.encode(), **answers)
    page = bench.post(reverse("trace_decide", args=[second.pk]), {"reason": "both ran", "accept": "1"})
    assert page.status_code == 422 and "overlaps" in page.text
    accepted(bench, second, ruling="this")
    first.refresh_from_db()
    assert first.cuts[0]["trace"] == second.pk
    together = summarise(Run.objects.with_sheet().get(pk=run.pk)).charge.trace.value
    assert together == pytest.approx(8.86, abs=5e-3)


def test_a_reader_sees_the_trace_and_sends_none(client, bench):
    run = coin_run()
    trace = mapped(bench, run)
    client.force_login(make_user("reader"))
    assert client.get(trace.get_absolute_url()).status_code == 200
    assert send(client, run).status_code == 403


@pytest.mark.parametrize(("content", "said"), [
    (b"", "empty"),
    (FIRST, "at least two"),
    (FIRST + b"2026-03-02T14:01:00Z,nan\n2026-03-02T14:02:00Z,0.42\n", "Line 3"),
    (b"\x89PNG\r\n\x1a\n" + bytes(range(200)), "not text"),
    (FIRST + b"2026-03-02T14:01:00Z,0.42\n2026-03-02T14:0", "Line 4"),
])  # fmt: skip
def test_what_is_no_trace_leaves_nothing_behind(bench, tmp_path, content, said):
    page = send(bench, coin_run(), content)
    assert page.status_code == 422 and said in page.text
    assert not Trace.objects.exists()
    assert not [path for path in tmp_path.rglob("*") if path.is_file()]


def test_the_size_limit_is_a_setting(bench, settings, tmp_path):
    settings.TRACE_LIMIT_BYTES = 1000
    page = send(bench, coin_run())
    assert page.status_code == 422 and "more than the 0.0 MB that are taken" in page.text
    assert not [path for path in tmp_path.rglob("*") if path.is_file()]


def test_pages_read_rows_and_never_the_file(bench, tmp_path):
    run = coin_run()
    trace = accepted(bench, mapped(bench, run))
    (tmp_path / trace.path).unlink()
    assert bench.get(run.get_absolute_url()).status_code == 200
    page = bench.get(trace.get_absolute_url())
    assert page.status_code == 200 and "svg" in page.text
    assert "restore it from the backup" in bench.get(reverse("trace_file", args=[trace.pk]), follow=True).text


def test_the_file_comes_back_byte_for_byte(bench):
    trace = mapped(bench, coin_run())
    sent = b"".join(bench.get(reverse("trace_file", args=[trace.pk])).streaming_content)
    assert sent == SCENARIO.read_bytes() and sha256(sent).hexdigest() == trace.sha256


def test_the_command_says_where_another_figure_comes_out(bench, tmp_path, capsys):
    trace = accepted(bench, mapped(bench, coin_run()))
    call_command("traces")
    assert "the same figures" in capsys.readouterr().out
    path = tmp_path / trace.path
    path.write_bytes(path.read_bytes().replace(b"0.422", b"0.522"))
    with pytest.raises(CommandError, match="1 of the traces"):
        call_command("traces")


def test_the_list_of_words_is_edited_and_used(bench):
    bench.post(reverse("header_word_add"), {"word": "Quux", "meaning": "current"})
    send(bench, coin_run(), SCENARIO.read_bytes().replace(b"current_A", b"quux"))
    trace = Trace.objects.get()
    proposal = bench.get(reverse("trace_mapping", args=[trace.pk])).context["proposal"]
    assert proposal.mapping.current_column == 2 and proposal.asks("current_unit")
