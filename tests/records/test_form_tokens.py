"""The same reading sent twice is kept once."""

import uuid

import pytest

from process.models import Reading
from records.forms.base import RecordForm
from records.forms.tokens import SentOnce
from tests.factories import make_run


class ReadingForm(SentOnce, RecordForm):
    token_scope = ("run",)

    class Meta:
        model = Reading
        fields = ["at", "current_a", "voltage_v"]


def reading_data(token, **changes):
    return {
        "at": "2026-02-16T09:30",
        "current_a": "1,21",
        "current_a_unit": "A",
        "token": str(token),
    } | changes


@pytest.mark.django_db
def test_same_reading_sent_twice_is_kept_once():
    run, token = make_run(), uuid.uuid4()
    rows = []
    for _ in range(2):
        form = ReadingForm(reading_data(token), instance=Reading(run=run))
        assert form.is_valid(), form.errors
        rows.append(form.save())

    assert rows[0] == rows[1]
    assert form.was_sent_before
    assert run.readings.count() == 1
    assert ReadingForm(reading_data(token), instance=Reading(run=run)).sent_before() == rows[0]


@pytest.mark.django_db
def test_equal_readings_from_two_forms_are_two_readings():
    run = make_run()
    for _ in range(2):
        form = ReadingForm(reading_data(uuid.uuid4()), instance=Reading(run=run))
        assert form.is_valid(), form.errors
        form.save()

    assert run.readings.count() == 2


@pytest.mark.django_db
def test_token_of_another_run_finds_nothing():
    token = uuid.uuid4()
    form = ReadingForm(reading_data(token), instance=Reading(run=make_run()))
    assert form.is_valid()
    form.save()

    assert ReadingForm(reading_data(token), instance=Reading(run=make_run())).sent_before() is None


def test_each_shown_form_has_a_token_of_its_own():
    shown = [str(ReadingForm(instance=Reading())["token"]) for _ in range(2)]

    assert shown[0] != shown[1]
    assert 'type="hidden"' in shown[0]


@pytest.mark.django_db
@pytest.mark.parametrize("token", ["", "not a token"])
def test_form_with_a_lost_token_comes_back_with_a_new_one(token):
    run = make_run()
    form = ReadingForm(reading_data(token), instance=Reading(run=run))

    assert not form.is_valid()
    assert "send it again" in form.non_field_errors()[0]

    again = ReadingForm(form.data, instance=Reading(run=run))
    assert again.is_valid(), again.errors


@pytest.mark.django_db
def test_two_sendings_at_the_same_moment_are_one_reading(monkeypatch):
    run, token = make_run(), uuid.uuid4()
    first = ReadingForm(reading_data(token), instance=Reading(run=run))
    second = ReadingForm(reading_data(token), instance=Reading(run=run))
    assert first.is_valid() and second.is_valid()
    row = first.save()
    looks = iter([None, row])  # at its first look the other one was not yet there
    monkeypatch.setattr(second, "sent_before", lambda: next(looks))

    assert second.save() == row
    assert second.was_sent_before
    assert run.readings.count() == 1
