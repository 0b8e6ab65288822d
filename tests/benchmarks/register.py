"""The register that is measured: the demo, and many more objects beside it."""

from collections.abc import Callable
from io import StringIO

from django.core.management import call_command
from django.db import transaction

from records.models import Item, Measurement

HANDS, YEARS = ("Corvin Aldersey", "Maud Ferrigan", "the Sallowness mint", "an unknown hand"), range(1550, 1900)


def fill(items: int, say: Callable[[str], object]) -> None:
    say("Loading the demo …")
    call_command("demo", "--no-serve", stdout=StringIO())
    say(f"Adding {items} objects …")
    with transaction.atomic():
        for count in range(items):
            item = Item.objects.create(
                number=f"OVM.2000.{count:05d}",
                kind="original",
                title=f"Medal {count} of a series",
                maker=HANDS[count % len(HANDS)],
                date_words=str(YEARS[count % len(YEARS)]),
                materials="bronze, struck",
            )
            Measurement.objects.create(item=item, what="diameter", length_mm=20 + count % 60)
