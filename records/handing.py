"""Where a handover stands, and what a copy's page says of the hands that it was in."""

from django.http import HttpRequest

from records import access, clock
from records.clock import day_words
from records.extensions import Panel, item_panels
from records.hands import hands_of
from records.models import HandlingSession, Handover, Item
from records.services.handovers import GONE


def state_of(row: Handover) -> tuple[str, str]:
    """The shape and the word of where it stands today, computed from its days."""
    if row.called_off_on:
        return "done", "called off"
    if row.back_on:
        return "done", f"back since {day_words(row.back_on)}"
    if row.out_on is None:
        return "open", "agreed, still here"
    if row.is_final:
        return "done", f"gone since {day_words(row.out_on)}"
    if row.due_on is None:
        return "look", f"out since {day_words(row.out_on)}"
    if row.overdue_on(clock.today()):
        return "blocked", f"overdue since {day_words(row.due_on)}"
    return "look", f"out, due back {day_words(row.due_on)}"


def handovers_panel(request: HttpRequest, item: Item) -> Panel | None:
    """In whose hands the copy is and was, and how long hands were on it."""
    if not item.is_copy:
        return None
    hands = hands_of(item)
    rows, sessions = hands.handovers, hands.sessions
    context = {
        "item": item, "lines": [(row, *state_of(row)) for row in rows], "sessions": sessions[:12],
        "sessions_count": len(sessions), "hours": sum(each.time_h for each in sessions),
        "may_write": access.may(request.user, "write", Handover) and item.status not in GONE,
        "may_log": access.may(request.user, "write", HandlingSession) and item.status not in GONE,
    }  # fmt: skip
    return Panel("In other hands", "records/_item_handovers.html", context, order=80, anchor="hands")


item_panels.append(handovers_panel)
