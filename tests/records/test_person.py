"""`manage.py person`: sign-ins and roles from the command line."""

import io

import pytest
from django.contrib.auth.models import User
from django.core.management import CommandError, call_command

from records.models import Party

pytestmark = pytest.mark.django_db


def run(monkeypatch, *arguments: str, password: str = "mill race and lantern") -> str:
    monkeypatch.setattr("sys.stdin", io.StringIO(f"{password}\n"))
    out = io.StringIO()
    call_command("person", *arguments, stdout=out)
    return out.getvalue()


def test_a_person_gets_a_sign_in_roles_and_a_name(monkeypatch):
    said = run(monkeypatch, "tobias", "--name", "Tobias Marrowby", "--role", "conservator", "--role", "technician")

    user = User.objects.get(username="tobias")
    assert user.check_password("mill race and lantern")
    assert set(user.groups.values_list("name", flat=True)) == {"conservator", "technician"}
    assert Party.objects.get(user=user).name == "Tobias Marrowby"
    assert "Tobias Marrowby signs in as tobias" in said


def test_roles_are_changed_and_the_password_kept(monkeypatch):
    run(monkeypatch, "tobias", "--role", "conservator")

    run(monkeypatch, "tobias", "--role", "reader", "--keep-password", password="")

    user = User.objects.get(username="tobias")
    assert user.check_password("mill race and lantern")
    assert list(user.groups.values_list("name", flat=True)) == ["reader"]


def test_a_weak_password_is_refused_and_nobody_is_entered(monkeypatch):
    with pytest.raises(CommandError, match="at least 10 characters"):
        run(monkeypatch, "tobias", password="short")

    assert not User.objects.exists()


def test_another_persons_name_is_not_taken_over(monkeypatch):
    run(monkeypatch, "tobias", "--name", "Tobias Marrowby")

    with pytest.raises(CommandError, match="signs in as tobias already"):
        run(monkeypatch, "someone", "--name", "Tobias Marrowby")
