"""Local museum time in, aware UTC out (Europe/Berlin is the museum's zone in the tests)."""

from datetime import UTC, datetime

import pytest
from django import forms
from django.core.exceptions import ValidationError
from hypothesis import given, settings
from hypothesis import strategies as st

from records import clock
from records.forms.dates import InstantField

NOON = datetime(2026, 11, 1, 12, 0, tzinfo=UTC)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2026-02-16T09:00", datetime(2026, 2, 16, 8, 0, tzinfo=UTC)),
        ("2026-07-16 09:00", datetime(2026, 7, 16, 7, 0, tzinfo=UTC)),
        ("2026-02-16T09:00:30", datetime(2026, 2, 16, 8, 0, 30, tzinfo=UTC)),
        ("2026-02-16 09:00 +05:00", datetime(2026, 2, 16, 4, 0, tzinfo=UTC)),
        ("2026-02-16T09:00Z", datetime(2026, 2, 16, 9, 0, tzinfo=UTC)),
        ("2026-10-25 02:30 +02:00", datetime(2026, 10, 25, 0, 30, tzinfo=UTC)),
        ("2026-10-25 02:30 +01:00", datetime(2026, 10, 25, 1, 30, tzinfo=UTC)),
    ],
)
def test_local_time_becomes_an_instant(text, expected):
    with clock.held_at(NOON):
        assert InstantField().clean(text) == expected


@pytest.mark.parametrize(
    ("text", "advice"),
    [
        (
            "2026-10-25T02:30",
            "write 2026-10-25 02:30 +02:00 for the first or 2026-10-25 02:30 +01:00 for the second",
        ),
        ("2026-03-29T02:30", "did not exist on that day"),
        ("2026-11-01T13:06", "has not come yet"),
        ("2027-11-01T12:00", "Is it the year?"),
        ("yesterday", "Write day and time as 2026-02-16 09:00."),
        ("2026-02-30T09:00", "There is no such day"),
        ("2026-02-16T25:00", "There is no such day"),
        ("0001-01-01T00:00", "Check the year"),
        ("9999-12-31 23:59 -14:00", "Check the year"),
        ("2026-02-16T09:00 +99:99", "There is no such day"),
        ("", "Write day and time"),
    ],
)
def test_wrong_time_is_refused_with_advice(text, advice):
    with clock.held_at(NOON), pytest.raises(ValidationError) as refusal:
        InstantField().clean(text)

    assert advice in refusal.value.messages[0]


def test_five_minutes_ahead_are_tolerated_and_plans_may_lie_ahead():
    with clock.held_at(NOON):
        assert InstantField().clean("2026-11-01T13:05") > NOON
        assert InstantField(allow_future=True).clean("2027-01-01T00:00") > NOON


class WhenForm(forms.Form):
    at = InstantField()


def test_instant_is_shown_in_the_museum_s_time():
    html = str(WhenForm(initial={"at": datetime(2026, 2, 16, 8, 0, tzinfo=UTC)})["at"])

    assert 'type="datetime-local"' in html
    assert 'value="2026-02-16T09:00"' in html


def test_an_hour_that_came_twice_turns_the_picker_into_a_plain_box():
    assert 'type="text"' in str(WhenForm({"at": "2026-10-25T02:30"})["at"])

    stored = str(WhenForm(initial={"at": datetime(2026, 10, 25, 1, 30, tzinfo=UTC)})["at"])
    assert 'value="2026-10-25 02:30 +01:00"' in stored


@settings(max_examples=200, deadline=None)
@given(text=st.text(max_size=40) | st.text(alphabet="0123456789-:T+Z. ", max_size=30))
def test_no_text_breaks_the_reading_of_instants(text):
    try:
        InstantField(allow_future=True, required=False).clean(text)
    except ValidationError as refusal:
        assert refusal.messages[0].endswith((".", "?"))
