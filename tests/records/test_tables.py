"""The tables made at once for an empty database are the ones that the migrations make (these tests ran them)."""

import os
import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest
from django.apps import apps
from django.db import connection
from django.db.migrations.recorder import MigrationRecorder

ROOT = Path(__file__).parents[2]
MAKE = "import django; django.setup(); from records.serving import make_tables; make_tables(print)"


@pytest.fixture(scope="module")
def made_at_once(tmp_path_factory):
    """The file that a first start makes, in a process of its own."""
    folder = tmp_path_factory.mktemp("first_start")
    kept = {k: v for k, v in os.environ.items() if not k.startswith(("REGISTER_", "DJANGO_", "DATABASE_"))}
    environment = kept | {"REGISTER_DATA": str(folder), "DJANGO_SETTINGS_MODULE": "records.settings"}
    subprocess.run([sys.executable, "-c", MAKE], cwd=ROOT, env=environment, check=True, stdout=subprocess.DEVNULL)
    file = sqlite3.connect(folder / "register.sqlite3")
    yield file
    file.close()


def tables(file) -> dict[str, set[tuple[str, bool]]]:
    """Each table's columns, with whether they may be empty."""
    names = [name for (name,) in file.execute("select name from sqlite_master where type = 'table'")]
    return {
        name: {(row[1], not row[3] and not row[5]) for row in file.execute(f"pragma table_info({name})")}
        for name in names
        if not name.startswith("sqlite_")
    }


@pytest.mark.django_db
def test_every_table_and_column_is_there(made_at_once):
    with connection.cursor() as cursor:
        migrated = {
            name: {(column.name, bool(column.null_ok)) for column in _columns(cursor, name)}
            for name in connection.introspection.table_names(cursor)
        }

    assert tables(made_at_once) == migrated


def _columns(cursor, name):
    return connection.introspection.get_table_description(cursor, name)


@pytest.mark.django_db
def test_every_rule_that_a_model_declares_stands_in_the_database(made_at_once):
    declared = {rule.name for model in apps.get_models() for rule in model._meta.constraints}
    said = " ".join(sql or "" for (sql,) in made_at_once.execute("select sql from sqlite_master"))

    assert {name for name in declared if f'"{name}"' not in said} == set()


@pytest.mark.django_db
def test_every_step_of_the_past_is_entered_as_done(made_at_once):
    entered = set(made_at_once.execute("select app, name from django_migrations"))

    assert entered == set(MigrationRecorder(connection).applied_migrations())


@pytest.mark.parametrize("table", ["auth_group", "auth_permission", "records_term", "process_range"])
def test_seeded_rows_are_there(made_at_once, table):
    assert made_at_once.execute(f"select count(*) from {table}").fetchone()[0] > 4
