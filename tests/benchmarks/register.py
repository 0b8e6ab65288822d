"""The register that is measured: the demo, and many more objects, people, places, commissions and moulds beside it."""

from collections.abc import Callable
from io import StringIO

from django.core.management import call_command
from django.db import transaction

from tests.many import many


def fill(items: int, say: Callable[[str], object]) -> None:
    say("Loading the demo …")
    call_command("demo", "--no-serve", stdout=StringIO())
    say(f"Adding {items} objects, people and places, and a quarter as many commissions and moulds …")
    with transaction.atomic():
        many(items)
