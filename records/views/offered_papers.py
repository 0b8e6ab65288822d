"""The papers that a record can have, each with its verb or with what forbids it."""

from typing import Any

from records import extensions


def kinds_for(subject: Any) -> list[extensions.PaperKind]:
    """Those that are made of it at all; what forbids one now is told when it is asked for."""
    return [kind for kind in extensions.paper_kinds.values() if kind.applies_to(subject)]


def papers_of(subject: Any) -> list[dict[str, Any]]:
    return [{"code": k.code, "title": k.title, "refusals": k.refusals(subject)} for k in kinds_for(subject)]
