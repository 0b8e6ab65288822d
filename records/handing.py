"""Where a handover stands, on a copy's page and on the home page."""

from collections.abc import Iterable
from datetime import timedelta

from django.db.models import Q
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
    soon = clock.today() + WEEK * 4
    waiting = Q(out_on=None) | Q(out_on__isnull=False, due_on__lte=soon, kind__in=Handover.RETURNING)
    rows = Handover.objects.filter(waiting, back_on=None, called_off_on=None).select_related("item", "party")
    for row in rows.order_by("due_on", "number")[: SHOWN * 2]:
        yield _card_of(row)


def _card_of(row: Handover) -> HomeCard:
    today, things = clock.today(), (row.item.number,)
    if row.out_on is None:
        sentence = f"Hand {row.item.number} to {row.party}, {row.get_kind_display()}"
        return HomeCard(sentence, row.get_absolute_url(), "week", things=things)
    when = "now" if row.due_on <= today else "week" if row.due_on <= today + WEEK else "later"
    late = row.due_on < today
    sentence = f"{'Overdue: ask' if late else 'Ask'} for {row.item.number} back from {row.party}"
    return HomeCard(sentence, row.get_absolute_url(), when, "blocked" if late else "look", row.due_on, things=things)


item_panels.append(handovers_panel)
home_cards.append(cards)
