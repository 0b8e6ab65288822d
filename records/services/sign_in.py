"""How often a wrong password may be tried: the fifth failure within a quarter of an hour begins a wait."""

import math
from datetime import timedelta

from django.db import transaction

from records import clock
from records.models import FailedSignIn

TRIES = 5
WITHIN = timedelta(minutes=15)
KEPT = timedelta(hours=1)


def minutes_to_wait(*, name: str, address: str) -> int:
    """Until the oldest of the last failures with this name from this address is old enough; 0 if it may be tried."""
    now = clock.now()
    failures = FailedSignIn.objects.filter(name=_same(name), address=address, at__gt=now - WITHIN)
    last = list(failures.order_by("-at").values_list("at", flat=True)[:TRIES])
    if len(last) < TRIES:
        return 0
    return max(1, math.ceil((last[-1] + WITHIN - now) / timedelta(minutes=1)))


def keep_failure(*, name: str, address: str) -> None:
    with transaction.atomic():
        FailedSignIn.objects.filter(at__lt=clock.now() - KEPT).delete()
        FailedSignIn.objects.create(name=_same(name), address=address)


def forget_failures(*, name: str, address: str) -> None:
    FailedSignIn.objects.filter(name=_same(name), address=address).delete()


def _same(name: str) -> str:
    return name.casefold()[:150]
