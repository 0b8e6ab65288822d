"""What a run’s sheet and choices said before, who changed them and why: a trail that a person can read."""

import re

import pytest
from django.urls import reverse

from process.models import Reading
from process.seeding import ensure_ranges
from records.models import Party
from tests.factories import make_user
from tests.process.scenario_runs import coin_run, reading

pytestmark = pytest.mark.django_db


@pytest.fixture
def pell(client):
    ensure_ranges()
    client.force_login(make_user("technician", "pell"))
    return client


def trail(client, run) -> str:
    return re.sub(r"\s+", " ", re.sub(r"<.*?>", "", client.get(reverse("run_history", args=[run.number])).text))


def test_a_corrected_reading_and_another_choice_are_told_with_their_reasons(pell):
    run = coin_run()
    reading(run, "2026-03-02 15:00", 0.08, meter_ah=0)
    row = reading(run, "2026-03-02 20:00", 0.42, meter_ah=1.3)
    changed = {
        "at": "2026-03-02T20:00",
        "current_a": "0.41",
        "meter_ah": "1.3",
        "reason": "misread",
        "version": row.version,
    }
    chosen = {"charge_from": "meter", "charge_reason": "the sheet has a hole of a night", "version": run.version}

    assert pell.post(reverse("reading_edit", args=[row.pk]), changed).status_code == 302
    assert pell.post(reverse("charge_choose", args=[run.number]), chosen).status_code == 302

    told = trail(pell, run)
    assert Reading.objects.get(pk=row.pk).current_a == 0.41
    assert "0.42 A → became 0.41 A" in told and "(misread)" in told
    assert "the sheet → became the ampere-hour meter" in told and "(the sheet has a hole of a night)" in told
    assert told.count(str(Party.objects.get(user__username="pell"))) >= 2
    assert reverse("run_history", args=[run.number]) in pell.get(run.get_absolute_url()).text


def test_answers_about_an_interruption_stand_in_words(pell):
    run = coin_run()
    answers = {"handling": "wet", "out_of_bath_s": "90", "activation": ["rinse", "acid"], "version": 0}
    address = reverse("interruption_answer", args=[run.number, "20260303T012000"])

    assert pell.post(address, answers).status_code == 302

    told = trail(pell, run)
    assert "answers entered:" in told and "rinse, acid" in told and "[" not in told
