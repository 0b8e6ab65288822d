"""Reckon every accepted trace again from its kept file and decisions, and say where another figure comes out."""

from typing import Any

from django.core.management.base import BaseCommand, CommandError, CommandParser

from process.models import Trace
from process.services.traces import differences
from process.tracing import AskFirst, TraceRefused


class Command(BaseCommand):
    help = "Reckons accepted logger traces again from their files; changes nothing."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--run", default="", help="only those of this run")

    def handle(self, *args: object, **options: Any) -> None:
        rows = Trace.objects.accepted().select_related("run").order_by("run__number")
        apart_count = 0
        for trace in rows.filter(run__number=options["run"]) if options["run"] else rows:
            try:
                found = differences(trace)
            except (TraceRefused, AskFirst) as error:
                found = [str(error)]
            apart_count += bool(found)
            self.stdout.write(f"{trace.run.number}  {trace.original_name}: {'; '.join(found) or 'the same figures'}")
        if apart_count:
            raise CommandError(f"{apart_count} of the traces give other figures than they did.")
