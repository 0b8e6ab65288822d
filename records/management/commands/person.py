"""Give a person a sign-in, their roles, and their name among the parties."""

import getpass
import sys
from argparse import ArgumentParser

from django.contrib.auth.models import Group, User
from django.contrib.auth.password_validation import validate_password
from django.core.exceptions import ValidationError
from django.core.management.base import BaseCommand, CommandError
from django.db import transaction

from records.models import Party
from records.roles import ROLES
from records.seeding import ensure_roles


class Command(BaseCommand):
    help = "Enter or change a person who signs in. The password is asked for, or read from standard input."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("sign_in", help="short name to sign in with")
        parser.add_argument("--name", help="name as it stands under what the person signs")
        parser.add_argument("--role", action="append", choices=ROLES, default=[], help="may be given several times")
        parser.add_argument("--keep-password", action="store_true", help="leave the password as it is")

    def handle(self, *args: object, **options) -> None:
        known = User.objects.filter(username=options["sign_in"]).first()
        password = None if known and options["keep_password"] else self._password()
        with transaction.atomic():
            user = known or User(username=options["sign_in"])
            if password is not None:
                user.set_password(password)
            user.save()
            ensure_roles()
            user.groups.set(Group.objects.filter(name__in=options["role"]))
            party = self._party(user, options["name"])
        roles = ", ".join(options["role"]) or "no role: may look, not write"
        self.stdout.write(f"{party.name} signs in as {user.username} ({roles}).")

    def _password(self) -> str:
        password = getpass.getpass("Password: ") if sys.stdin.isatty() else sys.stdin.readline().rstrip("\n")
        try:
            validate_password(password)
        except ValidationError as error:
            raise CommandError(" ".join(error.messages)) from error
        return password

    def _party(self, user: User, name: str | None) -> Party:
        """The person's own entry; a party of that name that belongs to someone else is not taken over."""
        party = Party.objects.filter(user=user).first() or Party.objects.filter(name=name or user.username).first()
        if party and party.user_id not in (None, user.pk):
            raise CommandError(f"“{party.name}” signs in as {party.user.username} already: choose another name.")
        party = party or Party(name=name or user.username)
        party.name, party.user = name or party.name, user
        party.save()
        return party
