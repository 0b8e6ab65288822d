"""The tables of an empty database, made at once from the models: every step of the past would take a minute.

The migrations are entered as done, so that the next change finds its place; that both ways end in the same tables is
a test (`tests/records/test_tables.py`). Other apps' tables come by their own migrations, which may carry rows.
"""

from django.apps import apps
from django.core.management.sql import emit_post_migrate_signal
from django.db import connection
from django.db.migrations.executor import MigrationExecutor
from django.db.migrations.recorder import MigrationRecorder

OWN = ("records", "process")


def make_at_once() -> None:
    """Every table and seeded row of a database that holds nothing yet."""
    executor = MigrationExecutor(connection)
    executor.migrate([leaf for leaf in executor.loader.graph.leaf_nodes() if leaf[0] not in OWN])
    _make_own([step for step in executor.loader.graph.nodes if step[0] in OWN])
    emit_post_migrate_signal(verbosity=0, interactive=False, db=connection.alias)


def is_untouched() -> bool:
    """Whether no table of the register was ever made here."""
    return not any(label in OWN for label, _ in MigrationRecorder(connection).applied_migrations())


def _make_own(steps: list[tuple[str, str]]) -> None:
    models = [model for label in OWN if apps.is_installed(label) for model in apps.get_app_config(label).get_models()]
    with connection.schema_editor() as editor:
        for model in models:
            if model._meta.can_migrate(connection) and not model._meta.proxy:
                editor.create_model(model)
        recorder = MigrationRecorder(connection)
        for step in steps:
            recorder.record_applied(*step)
