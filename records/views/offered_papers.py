"""The papers that a record can have, each with its verb or with what forbids it."""

from typing import Any

from records import extensions


def papers_of(subject: Any) -> list[dict[str, Any]]:
    fitting = (kind for kind in extensions.paper_kinds.values() if kind.applies_to(subject))
    return [{"code": kind.code, "title": kind.title, "refusals": kind.refusals(subject)} for kind in fitting]
