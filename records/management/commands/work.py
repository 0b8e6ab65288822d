"""The worker: does what would keep a page waiting. `serve` and `demo` start it; another server needs it beside it."""

import logging
from argparse import ArgumentParser
from typing import Any

from django.core.management import call_command
from django.core.management.base import BaseCommand

from records.worker import end_with

LOOK_EVERY_S = 0.5
FORGET_AFTER_DAYS = 14


class Command(BaseCommand):
    help = "Do long work (large logger traces) until stopped."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--parent", type=int, help="end when this process, which started it, is gone")
        parser.add_argument("--once", action="store_true", help="do what waits, then end")

    def handle(self, *args: object, **options: Any) -> None:
        if options["parent"]:
            end_with(options["parent"])
        for name in ("django_tasks", "django_tasks_db"):
            logging.getLogger(name).setLevel(logging.ERROR)
        call_command("prune_db_task_results", min_age_days=FORGET_AFTER_DAYS, verbosity=0)
        call_command(
            "db_worker", interval=LOOK_EVERY_S, startup_delay=False, reload=False, batch=options["once"], verbosity=0
        )
