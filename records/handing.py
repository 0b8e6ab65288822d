"""Where a handover stands, on a copy's page and on the home page."""

from collections.abc import Iterable
from datetime import timedelta

from django.http import HttpRequest

from records import access, clock
from records.clock import day_words
from records.extensions import HomeCard, Panel, home_cards, item_panels
from records.models import HandlingSession, Handover, Item
from records.services.handovers import GONE

SHOWN = 12
WEEK = timedelta(days=7)


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
    rows = list(item.handovers.select_related("party"))
    sessions = list(item.handling.select_related("supervised_by"))
    context = {
        "item": item, "lines": [(row, *state_of(row)) for row in rows], "sessions": sessions[:12],
        "sessions_count": len(sessions), "hours": sum(each.time_h for each in sessions),
        "may_write": access.may(request.user, "write", Handover) and item.status not in GONE,
        "may_log": access.may(request.user, "write", HandlingSession) and item.status not in GONE,
    }  # fmt: skip
    return Panel("In other hands", "records/_item_handovers.html", context, order=80, anchor="hands")


def cards(request: HttpRequest) -> Iterable[HomeCard]:
    """What is due back, and what is agreed and still to be handed over."""
    if not access.may(request.user, "write", Handover):
        return
    today = clock.today()
    for row in Handover.objects.out().filter(due_on__lte=today + WEEK * 4).select_related("item", "party")[:SHOWN]:
        when = "now" if row.due_on <= today else "week" if row.due_on <= today + WEEK else "later"
        state = "blocked" if row.due_on < today else "look"
        late = "Overdue: ask" if row.due_on < today else "Ask"
        sentence = f"{late} for {row.item.number} back from {row.party}"
        yield HomeCard(sentence, row.get_absolute_url(), when, state, row.due_on, things=(row.item.number,))
    for row in Handover.objects.agreed().select_related("item", "party")[:SHOWN]:
        sentence = f"Hand {row.item.number} to {row.party}, {row.get_kind_display()}"
        yield HomeCard(sentence, row.get_absolute_url(), "week", things=(row.item.number,))


item_panels.append(handovers_panel)
home_cards.append(cards)
