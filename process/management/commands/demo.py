"""Fill an empty data folder with an invented museum, print what it shows, and serve it."""

import time
from argparse import ArgumentParser
from typing import Any

from django.conf import settings
from django.contrib.auth.models import User
from django.core.management.base import BaseCommand, CommandError

from process.demo import report, scenario
from process.demo.naming import belongs_to_demo, name_museum
from records.listening import listen
from records.models import Item, Party
from records.services.file_checks import check_files
from records.serving import lead_codes_here, make_tables


class Command(BaseCommand):
    help = "Load the demonstration into an empty data folder and serve it. A second run changes nothing."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--no-serve", action="store_true", help="load and print, then end")
        parser.add_argument("--host", default="127.0.0.1")
        parser.add_argument("--port", type=int, default=8000)

    def handle(self, *args: object, **options: Any) -> None:
        lead_codes_here(options["host"], options["port"])
        make_tables(self._say)
        if belongs_to_demo():
            self._say(f"The demonstration is in {settings.DATA_DIR.resolve()} already; nothing was loaded or changed.")
        elif Item.objects.exists() or Party.objects.exists() or User.objects.exists():
            raise CommandError(
                f"{settings.DATA_DIR.resolve()} holds other records, or a demonstration that was interrupted. "
                "Nothing was changed. Choose an empty folder, for example: REGISTER_DATA=./demo-data manage.py demo"
            )
        else:
            self._load()
        for line in report.lines(options["host"], options["port"]):
            self._say(line)
        if not options["no_serve"]:
            listen(options["host"], options["port"], self._say)

    def _load(self) -> None:
        began = time.monotonic()
        museum = scenario.read()["museum"]
        self._say(f"Loading the {museum['name']} (invented) into {settings.DATA_DIR.resolve()}")
        name_museum(museum)
        scenario.tell(self._say)
        self._say("  the papers")
        scenario.issue_papers()
        check_files(tell=lambda *_: None)
        name_museum(museum, finished=True)
        self._say(f"Loaded in {time.monotonic() - began:.0f} s.")

    def _say(self, line: str) -> None:
        self.stdout.write(line)
        self.stdout.flush()
