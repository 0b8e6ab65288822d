"""Serve the site for real use: one process, no second server, nothing shown that is only for developers."""

from argparse import ArgumentParser
from typing import Any

from django.conf import settings
from django.contrib.auth.models import User
from django.core.management.base import BaseCommand, CommandError

from records.listening import listen
from records.serving import lead_codes_here, make_tables, shortcomings


class Command(BaseCommand):
    help = "Serve the site. An empty data folder is prepared; older tables are never changed unasked."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--host", default="127.0.0.1", help="address to listen at; 0.0.0.0 for the whole network")
        parser.add_argument("--port", type=int, default=8000)

    def handle(self, *args: object, **options: Any) -> None:
        if settings.DEBUG:
            raise CommandError("REGISTER_DEBUG=1 shows the inside of the site to everyone: unset it, then serve.")
        lead_codes_here(options["host"], options["port"])
        make_tables(self._say)
        self._say(f"Data folder: {settings.DATA_DIR.resolve()}")
        has_administrator = User.objects.filter(is_superuser=True).exists()
        for sentence in shortcomings(options["host"], has_administrator=has_administrator):
            self._say(f"  ▲ {sentence}")
        listen(options["host"], options["port"], self._say)

    def _say(self, line: str) -> None:
        self.stdout.write(line)
        self.stdout.flush()
