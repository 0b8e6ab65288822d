"""Rows of a small table that ride along with another question."""

from typing import Any

from django.db.models import Aggregate, JSONField


class JsonRows(Aggregate):
    """Rows as one list of JSON."""

    function = "JSON_GROUP_ARRAY"
    output_field = JSONField()

    def as_postgresql(self, compiler: Any, connection: Any, **context: Any) -> tuple[str, Any]:
        return self.as_sql(compiler, connection, function="JSONB_AGG", **context)
