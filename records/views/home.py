"""The day as a list of verbs, most urgent first."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path

from records import access, clock, extensions
from records.limits import limited_among
from records.models import Item

GROUPS = (("now", "Now"), ("week", "Soon"), ("later", "Later"))
RANK = {"blocked": 0, "look": 1, "open": 2, "done": 3}


def home(request: HttpRequest) -> HttpResponse:
    cards = [card for source in extensions.home_cards for card in source(request)]
    limited = limited_among({thing for card in cards for thing in card.things})
    running = [card for card in cards if card.template]
    waiting = sorted(
        (card for card in cards if not card.template), key=lambda c: (RANK[c.state], c.due_on or clock.today())
    )
    groups = [(title, [card for card in waiting if card.when == when]) for when, title in GROUPS]
    context = {
        "groups": [(title, cards) for title, cards in groups if cards],
        "running": running,
        "limited": limited,
        "nothing_entered": not cards and not Item.objects.exists(),
        "today": clock.now(),
        "roles": sorted(access.roles_of(request.user)),
    }
    return render(request, "records/home.html", context)


urls = [path("", home, name="home")]
