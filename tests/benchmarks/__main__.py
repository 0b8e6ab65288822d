"""Make a throw-away register, ask it for every page and paper, and print what that took."""

import argparse
import logging
import os
import sys
import tempfile


def main() -> None:
    asked = argparse.ArgumentParser(prog="python -m tests.benchmarks", description=__doc__)
    asked.add_argument("--times", type=int, default=15, help="how often each page is asked for (15)")
    asked.add_argument("--items", type=int, default=2000, help="how many objects are added to the demo's (2000)")
    asked.add_argument(
        "--only", choices=["pages", "papers", "family", "chemistry", "traces", "photographs"], help="one part alone"
    )
    options = asked.parse_args()
    with tempfile.TemporaryDirectory(prefix="register-benchmark-") as folder:
        # The site's own settings, as `serve` has them: no debug, every write waits for the disk.
        os.environ.update(REGISTER_DATA=folder, DJANGO_SETTINGS_MODULE="records.settings", REGISTER_DEBUG="0")
        os.environ.pop("DATABASE_URL", None)
        import django

        django.setup()
        # A route that only takes forms says so each time; that is no news here.
        logging.disable(logging.ERROR)
        measure(options)


def measure(options: argparse.Namespace) -> None:
    from tests.benchmarks import chemistry, family, pages, papers, photographs, register, traces

    if options.only not in {"chemistry", "traces", "photographs"}:
        register.fill(options.items, say=lambda line: print(line, file=sys.stderr))
    for name, part in (
        ("pages", pages.lines),
        ("papers", papers.lines),
        ("family", family.lines),
        ("chemistry", chemistry.lines),
        ("traces", traces.lines),
        ("photographs", photographs.lines),
    ):
        if options.only in (None, name):
            print(f"\n{name.capitalize()}")
            for line in part(options.times):
                print(line)


if __name__ == "__main__":
    main()
