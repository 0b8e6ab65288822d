"""In whose hands a thing was, how long hands were on it, and how it ended: one question for the three tables."""

from dataclasses import dataclass

from django.db.models import OuterRef, QuerySet

from records.models import Disposal, HandlingSession, Handover, Item
from records.riding import read_rows, riding

COLUMNS = {
    Handover: ("number", "kind", "purpose", "agreed_on", "due_on", "out_on", "back_on", "called_off_on", "party__name"),
    HandlingSession: (
        "id", "happened_on", "time_h", "people_count", "occasion", "seen", "as_typed", "supervised_by__name",
    ),
    Disposal: (
        "number", "reason", "decided_on", "authority", "way", "done_on", "method", "kept", "photo_id",
        "decided_by__name", "done_by__name", "witness__name",
    ),
}  # fmt: skip
ROWS = {"handover_rows": Handover, "session_rows": HandlingSession, "disposal_rows": Disposal}


@dataclass(frozen=True)
class Hands:
    handovers: list[Handover]
    sessions: list[HandlingSession]
    disposal: Disposal | None


def hands_of(item: Item) -> Hands:
    """Remembered on the row, for two parts of its page ask; a row that was read `with_hands` has them along."""
    if not hasattr(item, "_hands"):
        row = item if hasattr(item, "handover_rows") else with_hands(Item.objects.filter(pk=item.pk)).get()
        handovers, sessions, disposals = (
            read_rows(model, getattr(row, name), item=item) for name, model in ROWS.items()
        )
        handovers.sort(key=lambda each: (each.agreed_on, each.number), reverse=True)
        sessions.sort(key=lambda each: (each.happened_on, each.pk), reverse=True)
        item._hands = Hands(handovers, sessions, next(iter(disposals), None))
    return item._hands


def with_hands(things: QuerySet[Item]) -> QuerySet[Item]:
    """The things with the rows of the three tables beside them."""
    mine = {name: model.objects.filter(item=OuterRef("pk")) for name, model in ROWS.items()}
    return things.annotate(**{name: riding(rows, COLUMNS[rows.model]) for name, rows in mine.items()})
