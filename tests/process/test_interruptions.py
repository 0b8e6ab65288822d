"""Interruptions through the pages: found, asked about, judged by the rule, limiting what is made of the wall."""

from datetime import timedelta

import pytest
from django.urls import reverse

from process.models import CouponTest, Event, InterruptionAnswers, RiskRule, Run
from process.seeding import ensure_ranges, ensure_risk_rules
from process.services.copies import make_up
from process.summaries.runs import summarise
from process.summaries.wall_limits import limits_of
from records.gates import GateClosed
from records.models import Item
from tests.everything import make_trace
from tests.factories import NINE, make_cathode, make_mould, make_run, make_user
from tests.process.scenario_runs import at, coin_run, event, reading

pytestmark = pytest.mark.django_db
KEY = "20260303T012000"


@pytest.fixture(autouse=True)
def _rule():
    ensure_risk_rules()


def look(run: Run):
    return summarise(Run.objects.with_sheet().get(pk=run.pk))


def sign_in(client, role="conservator"):
    client.force_login(make_user(role))
    return client


ANSWERS = {
    "cause": "power", "handling": "immersed", "returned_by_itself": "yes", "activation": ["none"], "version": 0,
}  # fmt: skip


def test_the_silent_restart_of_the_coin_is_a_high_risk_and_its_second_boundary_is_not_answered_yet():
    """SCENARIO 7.3 and 11: 3 h 10 min, boundaries at 0.1850 and 0.241 mm; scaled to the trimmed face 0.173 mm."""
    first, second = look(coin_run()).interruptions

    assert (first.duration, first.risk_word) == ("3 h 10 min", "high risk")
    assert first.boundaries[0].depth.value == pytest.approx(0.1850, abs=0.0003)
    assert first.boundaries[0].at_face.value == pytest.approx(0.173, abs=0.001)
    assert second.boundaries[0].depth.value == pytest.approx(0.241, abs=0.0005)
    assert second.unanswered == ["how long they were out of the bath"]
    assert second.risk_word == "high risk"


def test_answers_change_the_risk(client):
    run = coin_run()
    address = reverse("interruption_answer", args=[run.number, "20260303T072000"])

    page = sign_in(client).get(address)
    answer = client.post(address, {
        "cause": "inspection", "handling": "wet", "out_of_bath_s": "100", "out_of_bath_s_unit": "s",
        "returned_by_itself": "no", "activation": ["rinse", "acid"], "acid_pct": "5", "acid_s": "60", "version": 0,
    })  # fmt: skip

    assert page.status_code == 200
    assert answer.status_code == 302
    second = look(run).interruptions[1]
    assert (second.risk_word, second.unanswered) == ("medium risk", [])
    assert "before the restart: rinsed, acid dip 5" in " ".join(second.words)


def test_nothing_and_something_before_the_restart_exclude_each_other(client):
    run = coin_run()
    answer = sign_in(client).post(
        reverse("interruption_answer", args=[run.number, KEY]), ANSWERS | {"activation": ["none", "acid"]}
    )
    assert answer.status_code == 422 and "exclude each other" in answer.content.decode()
    assert not InterruptionAnswers.objects.exists()


def test_an_answer_that_cannot_be_is_asked_about(client):
    """SCENARIO 7.3: 3 h 10 min without current, 0.280 dm² on the rail."""
    ensure_ranges()
    given = {"handling": "wet", "out_of_bath_s": "4", "out_of_bath_s_unit": "h", "restart_current_a": "420",
             "restart_current_a_unit": "A", "version": 0}  # fmt: skip

    page = sign_in(client).post(reverse("interruption_answer", args=[coin_run().number, KEY]), given)

    said = page.content.decode()
    assert page.status_code == 422 and not InterruptionAnswers.objects.exists()
    assert "nothing flowed for 3 h 10 min only" in said and "420 mA would be usual. Is the unit right?" in said


def test_an_interruption_seen_only_in_readings_lies_between_two_instants():
    run = make_run("D-2026-050")
    make_cathode(run)
    Event.objects.create(run=run, kind="entry", at=NINE, current_a=1.0)
    for hours, current in ((1, 1.0), (2, 0.0), (3, 1.0)):
        reading(run, f"2026-02-16 {9 + hours:02d}:00", current)
    entry = run.events.get()
    entry.at = run.readings.first().at - timedelta(hours=1)
    entry.save()

    (found,) = look(run).interruptions

    assert found.is_silent and found.is_bounded
    assert found.duration == "between 0 s and 2 h 0 min"
    assert found.unanswered[0] == "cause"
    assert found.risk_word == "high risk"


def test_a_named_person_sets_another_risk_with_a_reason(client):
    run = coin_run()
    address = reverse("interruption_risk", args=[run.number, KEY])
    sign_in(client)

    bare = client.post(address, {"set_risk": "medium", "set_risk_reason": " ", "version": 0})
    kept = client.post(address, {"set_risk": "medium", "set_risk_reason": "Section polished: no line.", "version": 0})

    assert bare.status_code == 422
    assert kept.status_code == 302
    first = look(run).interruptions[0]
    assert (first.risk_word, first.rule_word) == ("medium risk", "high risk")
    assert first.set_by_hand.set_risk_by is not None
    assert "Section polished" in client.get(run.get_absolute_url()).content.decode()


def test_a_technician_answers_but_does_not_set_the_risk(client):
    run = coin_run()
    sign_in(client, "technician")
    assert client.post(reverse("interruption_answer", args=[run.number, KEY]), ANSWERS).status_code == 302
    assert client.post(reverse("interruption_risk", args=[run.number, KEY]), {"set_risk": "low"}).status_code == 403


def test_a_row_of_the_rule_is_changed_with_a_reason(client):
    row = RiskRule.objects.get(words="Dried")
    sign_in(client)
    data = {"words": "Dried", "handling": "dried", "risk": "medium", "version": row.version}

    bare = client.post(reverse("risk_rule_edit", args=[row.pk]), data)
    kept = client.post(reverse("risk_rule_edit", args=[row.pk]), data | {"reason": "Tests of 2026."})

    assert (bare.status_code, kept.status_code) == (422, 302)
    row.refresh_from_db()
    assert row.risk == "medium" and row.history.first().history_change_reason == "Tests of 2026."


def test_a_high_risk_bars_handling_until_the_coupon_passes():
    run = coin_run()
    summary = look(run)
    barred = limits_of(summary)[0]
    CouponTest.objects.create(shell=barred.shell, number="S-05-a", bends_count=14, layers="no")
    passed = limits_of(look(run))[0]

    assert "handling barred unless a bend test" in barred.sentence
    assert barred.bars_handling and not passed.bars_handling and passed.bars_heat


def test_layers_that_part_leave_it_barred():
    run = coin_run()
    shell = look(run).cathodes[0].shell
    CouponTest.objects.create(shell=shell, number="S-05-a", bends_count=3, layers="yes", layers_at_mm=0.19)
    limit = limits_of(look(run))[0]
    assert limit.has_failed and "did not pass" in limit.sentence


def test_the_limit_stands_on_the_pages_of_run_and_shell(client):
    run = coin_run()
    sign_in(client)
    for page in (run.get_absolute_url(), reverse("item", args=["S-05"])):
        assert "No hot soldering; handling barred" in client.get(page).content.decode()


def test_such_a_shell_is_not_soldered_without_a_concession():
    from process.models import MakingUp, Shell

    shells = list(Shell.objects.filter(cathode__run=coin_run()))
    making = MakingUp(technique="joined", lead_inside="no", join="solder", made_up_on=NINE.date())
    with pytest.raises(GateClosed, match="No hot soldering"):
        make_up(copy=Item(number="R.2026.9", title="Copy"), making_up=making, shells=shells)


def test_a_shell_filled_cold_carries_its_limit_to_the_copy(client):
    from process.models import MakingUp, Shell

    shells = list(Shell.objects.filter(cathode__run=coin_run()))
    making = MakingUp(
        technique="joined", lead_inside="no", join="adhesive", fill_temperature_degc=22, made_up_on=NINE.date()
    )
    copy = make_up(copy=Item(number="R.2026.9", title="Copy"), making_up=making, shells=shells)
    walls = reverse("copy_walls", args=[copy.number])
    assert walls in sign_in(client).get(copy.get_absolute_url()).content.decode()
    assert "No hot soldering" in client.get(walls).content.decode()


def test_a_cathode_taken_out_begins_a_segment_and_the_shares_add_up(client):
    run = make_run("D-2026-060")
    _, second = make_cathode(run, label="one"), make_cathode(run, label="two")
    Event.objects.create(run=run, kind="entry", at=NINE, current_a=1.2)
    sign_in(client)

    answer = client.post(reverse("cathode_take_out", args=[second.pk]), {
        "at": (NINE + timedelta(hours=2)).isoformat(), "current_a": "0.6", "current_a_unit": "A",
        "token": "6f1f3b4e-8f5e-4a53-9c1f-0d7a4f0a7a11", "version": 0,
    })  # fmt: skip
    Event.objects.create(run=run, kind="stop", at=NINE + timedelta(hours=4), current_a=0)

    assert answer.status_code == 302
    summary = look(run)
    assert [each.labels for each in summary.rail.shown] == [("one", "two"), ("one",)]
    assert [each.share.value for each in summary.cathodes] == pytest.approx([2.4, 1.2])
    assert "Segments with a constant set" in client.get(run.get_absolute_url()).content.decode()


def test_a_logger_shows_an_interruption_that_nobody_wrote_down():
    """The sheet says “found running”; only the trace knows that the current was gone."""
    run = make_run("D-2026-061", moulds=[make_mould()])
    event(run, "2026-03-02 15:00", "entry", 0.42)
    event(run, "2026-03-03 18:00", "stop", 0.0)
    trace = make_trace(run)
    gone, back = at("2026-03-03 02:20").timestamp(), at("2026-03-03 05:40").timestamp()
    trace.state = "accepted"
    trace.stretches = [
        {"last_on_s": gone - 1200, "from_s": gone, "to_s": back - 1200, "back_s": back, "restart": "silent",
         "charge_before_ah": 3.9, "back_a": 0.42}
    ]  # fmt: skip
    trace.save()

    (found,) = look(run).interruptions

    assert found.stretch.sources == ("a logger’s trace",)
    assert found.is_silent and found.risk_word == "high risk"
    assert found.stretch.began_after == at("2026-03-03 02:00") and found.stretch.ended_by == at("2026-03-03 05:40")
