"""Skinned cores on the home page: weighed again until their mass is constant, then closed and signed."""

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from urllib.parse import urlencode

from django.db.models import Case, F, OuterRef, Q, Subquery, When
from django.http import HttpRequest
from django.urls import reverse
from django.utils import timezone

from process.chemistry.drying import settled_since
from process.chemistry.judgement import SETTLED_SPAN, Weighing
from process.models import CoreClosing, Run, Shell
from process.models import Weighing as Row
from records import access, clock
from records.extensions import HomeCard
from records.units import ureg


@dataclass
class Waiting:
    """A kept shell that is in no copy yet; if it grew on a core, with its weighings."""

    shell: Shell
    weighings: list[Weighing] = field(default_factory=list)


def waiting_shells() -> list[Waiting]:
    """Shells with their weighings in one query, for the home page has few to give."""
    closings = CoreClosing.objects.filter(shell=OuterRef("pk"), decision=CoreClosing.Decision.CLOSE)
    skin = Q(item__weighings__struck_at__isnull=True, item__weighings__kind=Row.Kind.SKIN)
    rows = Shell.objects.filter(fate=Shell.Fate.KEPT, making_up=None)
    rows = rows.exclude(cathode__run__outcome=Run.Outcome.FAILED).select_related("item", "cathode__run")
    rows = rows.annotate(
        at=Case(When(skin, then=F("item__weighings__at"))), mass_g=F("item__weighings__mass_g"),
        signed_at=Subquery(closings.filter(signed_at__isnull=False).values("signed_at")[:1]),
        unsigned=Subquery(closings.filter(signed_at__isnull=True).values("pk")[:1]),
    )  # fmt: skip
    found: dict[int, Waiting] = {}
    for shell in rows[:200]:
        waiting = found.setdefault(shell.pk, Waiting(shell))
        if shell.at is not None:
            waiting.weighings.append(Weighing(shell.at, ureg.Quantity(shell.mass_g, "g")))
    return list(found.values())


def drying_card(request: HttpRequest, waiting: Waiting) -> HomeCard:
    """No efficiency is needed to say what is next: until two weighings a week apart agree, it stays open."""
    shell, number = waiting.shell, waiting.shell.item.number
    if shell.signed_at:
        url = f"{reverse('making_up_add')}?{urlencode({'shell': number})}"
        return HomeCard(f"Make up {number}: its core is closed", url, "week", things=(number,))
    if settled_since(waiting.weighings):
        if shell.unsigned and access.may(request.user, "close core"):
            url = reverse("closing_sign", args=[shell.unsigned])
            return HomeCard(f"Sign the closing of {number}", url, "now", "look")
        return HomeCard(f"Write how {number} is closed: its mass is constant", reverse("closing_add", args=[number]))
    return _weigh(number, max((each.instant for each in waiting.weighings), default=None))


def _weigh(number: str, last: datetime | None) -> HomeCard:
    due = timezone.localdate(last + SETTLED_SPAN) if last else clock.today()
    late, soon = due <= clock.today(), due <= clock.today() + timedelta(days=7)
    sentence = f"Weigh {number} again: still drying, do not close it"
    when = "now" if late else "week" if soon else "later"
    return HomeCard(sentence, reverse("weighing_add", args=[number]), when, "look" if late else "blocked", due)
