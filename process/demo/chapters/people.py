"""Who works there, who lends and lets copy, and where things are kept."""

from django.contrib.auth.hashers import make_password
from django.contrib.auth.models import Group, User
from django.db import transaction

from process.demo.acting import without
from process.demo.rows import Table, instant, save
from process.demo.studio import Studio
from records import clock
from records.models import Party, Place


def tell(part: Table, studio: Studio) -> None:
    open_word = part["museum"].get("password", "")
    password = make_password(open_word) if open_word else ""  # slow on purpose: once for all
    for table in part.get("party", []):
        with clock.held_at(instant(part["museum"]["opened_on"])), transaction.atomic():
            user = _sign_in(table, password) if "sign_in" in table else None
            save(Party, without(table, "sign_in", "role"), user=user)
    for table in part.get("place", []):
        with clock.held_at(instant(part["museum"]["opened_on"])):
            save(Place, table)


def _sign_in(table: Table, password: str) -> User:
    first, _, last = table["name"].partition(" ")
    user = User.objects.create(username=table["sign_in"], password=password, first_name=first, last_name=last)
    user.groups.add(Group.objects.get(name=table["role"]))
    return user
