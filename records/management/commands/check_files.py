"""Read every kept file again and compare it with its digest; fails where one is missing, changed or unknown."""

from typing import Any

from django.core.management.base import BaseCommand, CommandError

from records.kept_files import every_file
from records.models import FileCheck
from records.progress import Bar
from records.services.file_checks import check_files

GIGABYTE = 1e9


class Command(BaseCommand):
    help = "Reads every photograph, paper and trace again and compares digests; changes nothing."

    def handle(self, *args: object, **options: Any) -> None:
        bar = Bar(sum(1 for _ in every_file()), self.stderr)
        try:
            result = check_files(tell=lambda count, size: bar.show(count, f"{size / GIGABYTE:.1f} GB"))
        finally:
            bar.close()
        for one in result.found:
            self.stdout.write(f"{one['state']:8} {one['path']}  {one['words']}".rstrip())
        took_s = (result.ended_at - result.started_at).total_seconds()
        size = result.size_bytes_count / GIGABYTE
        self.stdout.write(f"{result.read_count:,} files, {size:.2f} GB read in {took_s:.0f} s: {result.trouble_words}.")
        _fail_if_unsound(result)


def _fail_if_unsound(result: FileCheck) -> None:
    if not result.is_sound:
        raise CommandError(
            "Restore what is missing or changed from the backup; look at what is unknown before taking it away."
        )
