"""Signing in and out, and never being sent to another site."""

from datetime import UTC, datetime, timedelta

import pytest
from django.contrib.auth.models import User
from django.contrib.sessions.backends.db import SessionStore
from django.test import Client
from django.urls import reverse

from records import clock

pytestmark = pytest.mark.django_db
SIGN_IN = {"username": "ines", "password": "tide-mill-1624"}


@pytest.fixture
def ines() -> User:
    return User.objects.create_user("ines", password="tide-mill-1624")


def test_a_stranger_is_shown_the_door_and_comes_back_to_the_page_asked_for(client, ines):
    answer = client.get(reverse("duty_list"))
    assert answer.status_code == 302 and answer.url.startswith(reverse("sign_in"))
    answer = client.post(reverse("sign_in"), SIGN_IN | {"next": reverse("duty_list")})
    assert answer.url == reverse("duty_list")
    assert client.session["_auth_user_id"] == str(ines.pk)


@pytest.mark.parametrize(
    "elsewhere",
    ["https://example.org/", "//example.org", "javascript:alert(1)", "\\\\example.org", "foo", "a.b", "/\0"],
)
def test_the_way_back_never_leaves_the_site(client, ines, elsewhere):
    assert client.post(reverse("sign_in"), SIGN_IN | {"next": elsewhere}).url == reverse("home")


def test_a_wrong_password_keeps_the_name_and_says_what_to_do(client, ines):
    answer = client.post(reverse("sign_in"), SIGN_IN | {"password": "wrong"})
    page = answer.content.decode()
    assert 'value="ines"' in page and "the administrator can set a new one" in page
    assert "_auth_user_id" not in client.session


def test_signing_out_takes_a_button_not_a_link(client, ines):
    client.force_login(ines)
    assert client.get(reverse("sign_out")).status_code == 405
    assert client.post(reverse("sign_out")).url == reverse("sign_in")
    assert "_auth_user_id" not in client.session


def test_someone_signed_in_does_not_see_the_door_again(client, ines):
    client.force_login(ines)
    assert client.get(reverse("sign_in")).url == reverse("home")


def test_the_session_of_before_signing_in_is_worth_nothing_afterwards(client, ines):
    planted = client.session
    planted["seen"] = "before"
    planted.save()
    client.cookies["sessionid"] = planted.session_key

    client.post(reverse("sign_in"), SIGN_IN)

    assert client.session.session_key != planted.session_key
    assert not SessionStore().exists(planted.session_key)


def test_after_five_wrong_passwords_even_the_right_one_has_to_wait(client, ines):
    start = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)
    with clock.held_at(start):
        for _ in range(5):
            client.post(reverse("sign_in"), SIGN_IN | {"password": "wrong"})
        refused = client.post(reverse("sign_in"), SIGN_IN | {"username": "INES"})
        elsewhere = Client().post(reverse("sign_in"), SIGN_IN, REMOTE_ADDR="192.0.2.7")
    with clock.held_at(start + timedelta(minutes=16)):
        later = client.post(reverse("sign_in"), SIGN_IN)

    assert "wait 15 minutes" in refused.content.decode() and 'value="INES"' in refused.content.decode()
    assert elsewhere.status_code == 302  # who waits is this address, not the person
    assert later.status_code == 302


def test_a_name_that_nobody_has_waits_like_any_other(client, ines):
    typed = {"username": "nobody", "password": "wrong"}

    pages = [client.post(reverse("sign_in"), typed).content.decode() for _ in range(6)]

    assert "No one signs in" in pages[4] and "Too many wrong passwords" in pages[5]


def test_a_right_password_begins_the_count_anew(client, ines):
    for _ in range(3):
        for _ in range(4):
            client.post(reverse("sign_in"), SIGN_IN | {"password": "wrong"})
        assert client.post(reverse("sign_in"), SIGN_IN).status_code == 302
        client.post(reverse("sign_out"))
