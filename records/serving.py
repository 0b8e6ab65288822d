"""Before the site is served: its tables, its address, and what is still missing."""

import os
from collections.abc import Callable, Iterator
from typing import Any

from django.conf import settings
from django.core.management.base import CommandError
from django.db import connection
from django.db.migrations.executor import MigrationExecutor

from records.tables import is_untouched, make_at_once

EVERYWHERE = {"0.0.0.0", "::", ""}
THIS_MACHINE = {"127.0.0.1", "localhost", "::1", "[::1]"}


def make_tables(say: Callable[[str], Any]) -> None:
    """An empty database gets its tables; one with older tables is left alone, with the command to run."""
    executor = MigrationExecutor(connection)
    waiting = executor.migration_plan(executor.loader.graph.leaf_nodes())
    if waiting and is_untouched():
        say("The database is empty: making its tables.")
        make_at_once()
    elif waiting:
        raise CommandError(
            f"{len(waiting)} changes of the tables are waiting. Back up {settings.DATA_DIR.resolve()}, "
            "run “manage.py migrate”, then start again."
        )


def address_of(host: str, port: int) -> str:
    """Where a browser on this machine finds the site."""
    name = "127.0.0.1" if host in EVERYWHERE else f"[{host}]" if ":" in host else host
    return f"http://{name}:{port}/"


def lead_codes_here(host: str, port: int) -> None:
    """Without a base address of its own, what is printed leads to where the site is served now."""
    if not os.environ.get("REGISTER_BASE_URL"):
        settings.BASE_URL = address_of(host, port).rstrip("/")


def shortcomings(host: str, *, has_administrator: bool) -> Iterator[str]:
    """One sentence for each thing that is missing, with what to do about it."""
    if not has_administrator:
        yield "No administrator yet: run “manage.py createsuperuser”, then “manage.py person” for everyone else."
    if settings.MUSEUM_NAME == "The Museum":
        yield "The museum has no name yet: set REGISTER_MUSEUM and REGISTER_MUSEUM_CODE, or write museum.toml."
    if not os.environ.get("REGISTER_SECRET_KEY"):
        key = (settings.DATA_DIR / "secret_key").resolve()
        yield f"The secret key was made here and lies in {key}: keep it with the folder, show it to nobody."
    if host not in THIS_MACHINE and set(settings.ALLOWED_HOSTS) <= THIS_MACHINE:
        yield "Other machines are refused: name the host that they will type in REGISTER_HOSTS."
    if not os.environ.get("REGISTER_BASE_URL"):
        yield f"Printed codes lead to {settings.BASE_URL}: set REGISTER_BASE_URL to the address that people will use."
