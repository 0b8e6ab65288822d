"""The ground that every walk stands on: the door, the roles, the small screen."""

from records.roles import ROLES


def test_a_stranger_is_shown_the_door(page, axe):
    page.goto("/")
    assert "sign" in page.url
    axe(page)


def test_the_door_fits_a_phone(phone, axe):
    phone.goto("/")
    axe(phone)


def test_each_role_comes_home(page, axe, sign_in_as):
    for role in ROLES:
        sign_in_as(page, role)
        answer = page.goto("/")
        assert answer.status == 200
        assert "sign" not in page.url
        axe(page)
