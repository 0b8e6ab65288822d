"""Signing in and out, and never being sent to another site."""

import pytest
from django.contrib.auth.models import User
from django.urls import reverse

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


@pytest.mark.parametrize("elsewhere", ["https://example.org/", "//example.org", "javascript:alert(1)"])
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
