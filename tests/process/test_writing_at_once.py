"""Several tablets write to one run in the same moment: nothing is lost, nothing is counted twice, nobody is refused."""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta
from uuid import UUID

import pytest
from django.db import connection

from process.models import Event, Reading, Run
from process.services.runs import add_reading, start_run
from records.gates import GateClosed
from tests.factories import NINE, make_analysis, make_bath, make_mould, make_report, make_run

TABLETS, EACH = 4, 25

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def run() -> Run:
    run = make_run()
    Event.objects.create(run=run, kind=Event.Kind.ENTRY, at=NINE, current_a=0.24)
    return run


def at_once(tablet: Callable[[int], None]) -> None:
    """Each tablet in a thread with a connection of its own, as the server's threads have."""

    def work(number: int) -> None:
        try:
            tablet(number)
        finally:
            connection.close()

    with ThreadPoolExecutor(TABLETS) as pool:
        list(pool.map(work, range(TABLETS)))


def test_every_reading_of_four_tablets_is_kept_with_its_history(run):
    def tablet(number: int) -> None:
        for minute in range(EACH):
            at = NINE + timedelta(minutes=minute)
            add_reading(run=run, at=at, current_a=number + minute / 100, token=UUID(int=number * EACH + minute))

    at_once(tablet)

    kept = sorted(run.readings.values_list("current_a", flat=True))
    assert kept == sorted(number + minute / 100 for number in range(TABLETS) for minute in range(EACH))
    assert Reading.history.filter(run=run).count() == TABLETS * EACH


def test_the_same_form_from_four_tablets_is_one_reading(run):
    def tablet(number: int) -> None:
        for minute in range(5):
            add_reading(run=run, at=NINE + timedelta(minutes=minute), current_a=1.2, token=UUID(int=minute))

    at_once(tablet)

    assert run.readings.count() == 5


def test_two_runs_cannot_both_take_the_last_pull_of_a_mould():
    mould, bath = make_mould(pulls_allowed_count=1), make_bath()
    make_analysis(bath)
    make_report(mould.model, "after", change="none")
    runs = [make_run(bath=bath, moulds=[mould]) for _ in range(TABLETS)]
    refused = []

    def tablet(number: int) -> None:
        try:
            start_run(run=runs[number], at=NINE, afterwards=False, current_a=0.24)
        except GateClosed as gate:
            refused.append([check.name for check in gate.unmet])

    at_once(tablet)

    assert mould.pulls.count() == 1
    assert len(refused) == TABLETS - 1 and all("pull left" in names for names in refused)
