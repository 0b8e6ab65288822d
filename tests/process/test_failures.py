"""The failure library, defects and coupons through the pages."""

from datetime import date

import pytest
from django.urls import reverse

from process.models import CouponTest, Defect, Failure
from process.summaries.similar_failures import similar_failures
from records.models import Term
from tests.factories import make_bath, make_cathode, make_mould, make_run, make_user
from tests.process.scenario_runs import coin_run, failed_run, medal_run

pytestmark = pytest.mark.django_db
ENTRY = {
    "number": "F-2026-01", "title": "15 A/ft² set as 15 A/dm²", "happened_on": "2026-02-11", "what": "Dark powder",
    "cause": "Unit mix-up", "certainty": "confirmed", "lesson": "Show both units", "action": "Both units shown",
    "version": 0,
}  # fmt: skip


@pytest.fixture
def signed_in(client):
    client.force_login(make_user("conservator"))
    return client


def failure(run=None, **fields) -> Failure:
    columns = {
        "number": "F-2026-01",
        "title": "Burnt",
        "happened_on": date(2026, 2, 11),
        "what": "dark",
        "lesson": "ask",
    }
    return Failure.objects.create(run=run, **columns | fields)


def test_a_failed_run_is_written_into_the_library(signed_in):
    run = failed_run()
    run.outcome, run.outcome_words = "failed", "Unit mix-up."
    run.save()
    page = signed_in.get(reverse("failure_add") + f"?run={run.number}")
    answer = signed_in.post(reverse("failure_add") + f"?run={run.number}", ENTRY | {"run": run.number})
    assert "Unit mix-up." in page.content.decode()
    assert answer.status_code == 302
    kept = Failure.objects.get()
    assert (kept.run, kept.certainty) == (run, "confirmed")
    assert "Show both units" in signed_in.get(kept.get_absolute_url()).content.decode()


def test_a_confirmed_cause_is_written_down(signed_in):
    answer = signed_in.post(reverse("failure_add"), ENTRY | {"cause": ""})
    assert answer.status_code == 422 and "15 A/ft² set as 15 A/dm²" in answer.content.decode()


def test_a_failed_run_without_an_entry_is_named_on_the_list(signed_in):
    run = failed_run()
    run.outcome = "failed"
    run.save()
    assert f"?run={run.number}" in signed_in.get(reverse("failure_list")).content.decode()


def test_the_library_is_filtered_and_exported(signed_in):
    failure(certainty="confirmed", cause="unit mix-up")
    failure(number="F-2026-02", title="Torn bag", certainty="suspected", cause="bag")
    shown = signed_in.get(reverse("failure_list"), {"certainty": "suspected", "q": "bag"}).content.decode()
    assert "F-2026-02" in shown and "F-2026-01" not in shown
    export = signed_in.get(reverse("failure_list"), {"export": "csv"})
    assert b"".join(export.streaming_content).count(b"F-2026-") == 2


def test_the_search_finds_a_lesson(signed_in):
    failure(lesson="Look at the deposit after ten minutes")
    assert "F-2026-01" in signed_in.get(reverse("search"), {"q": "ten minutes"}).content.decode()


def test_the_plan_of_a_similar_run_names_what_went_wrong_before(signed_in):
    mould, bath = make_mould(), make_bath()
    old, new = make_run(bath=bath), make_run(bath=bath)
    make_cathode(old, mould=mould)
    make_cathode(new, mould=mould)
    failure(old)
    (found,) = similar_failures(new)
    assert found.shared[:2] == ("mould", "model")
    assert "What went wrong before" in signed_in.get(new.get_absolute_url()).content.decode()


def test_an_unlike_run_hears_of_nothing():
    failure(medal_run(weigh=False))
    assert similar_failures(make_run(bath=make_bath())) == ()


def test_a_defect_is_kept_in_the_words_of_the_vocabulary(signed_in):
    coin_run()
    term = Term.objects.filter(scheme="defect").first() or Term.objects.create(scheme="defect", label="burning")
    answer = signed_in.post(reverse("defect_add", args=["S-05"]), {
        "term": term.pk, "location": "rim", "severity": 2, "stage": "inspection", "certainty": "unknown", "version": 0,
    })  # fmt: skip
    assert answer.status_code == 302
    assert Defect.objects.get().term == term
    assert "rim" in signed_in.get(reverse("item", args=["S-05"])).content.decode()


def test_a_coupon_says_bends_and_layers_together(signed_in):
    coin_run()
    address = reverse("coupon_add", args=["S-05"])
    half = signed_in.post(address, {"number": "S-05-a", "bends_count": 3, "version": 0})
    whole = signed_in.post(address, {"number": "S-05-a", "bends_count": 3, "layers": "yes", "layers_at_mm": "0.19",
                                     "version": 0})  # fmt: skip
    assert (half.status_code, whole.status_code) == (422, 302)
    assert CouponTest.objects.get().words == "the layers part after 3 bends, at 0.19\u2009mm"


def test_a_reader_only_reads(client):
    client.force_login(make_user("reader"))
    assert client.get(reverse("failure_list")).status_code == 200
    assert client.post(reverse("failure_add"), ENTRY).status_code == 403
