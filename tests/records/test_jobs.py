"""Long work: asked for, done by the worker, shown as it goes, offered again where the worker died."""

import logging
from datetime import timedelta
from uuid import uuid4

import pytest
from django.core.management import call_command
from django_tasks_db.models import DBTaskResult

from records import clock, extensions
from records.models import Job
from records.services import jobs
from tests.factories import make_user

pytestmark = pytest.mark.django_db
DONE: list[int] = []


def fold(job: Job, tell) -> str:
    """A stand-in for something long: it counts what it was given, or cannot."""
    tell("folding paper", 0.25)
    DONE.append(job.arguments["sheets"])
    if job.arguments["sheets"] < 0:
        raise jobs.JobRefused("There is no such thing as −1 sheets: count again.", "/somewhere/")
    if job.arguments["sheets"] == 0:
        raise RuntimeError("a fault of ours")
    return "/folded/"


@pytest.fixture(autouse=True)
def folding(monkeypatch):
    DONE.clear()
    monkeypatch.setitem(extensions.job_kinds, "fold", f"{__name__}.fold")


def ask(sheets: int, token=None) -> Job:
    user = make_user("technician")
    token = token or uuid4()
    return jobs.begin(token=token, kind="fold", title="Folding", arguments={"sheets": sheets}, url="/begin/", user=user)


def work_off() -> None:
    """What the worker does, without a process of its own."""
    for waiting in DBTaskResult.objects.ready():
        jobs.run(*waiting.args_kwargs["args"])
        waiting.delete()


def test_the_worker_does_what_was_asked_and_the_page_leads_on(client):
    asked = ask(3)
    client.force_login(asked.asked_by)
    assert "waiting for its turn" in client.get(asked.get_absolute_url()).text
    work_off()
    answer = client.get(asked.get_absolute_url())
    assert (answer.status_code, answer.url) == (302, "/folded/")
    assert client.get(asked.get_absolute_url(), headers={"HX-Request": "true"})["HX-Redirect"] == "/folded/"


def test_the_page_shows_how_far_it_is(client):
    asked = ask(3)
    Job.objects.filter(pk=asked.pk).update(state="working", step="folding paper", done_pct=25.0)
    client.force_login(asked.asked_by)
    page = client.get(asked.get_absolute_url()).text
    assert "25 %: folding paper" in page and 'value="25"' in page and "Look again" in page


def test_asking_twice_is_asking_once():
    first = ask(3)
    assert ask(3, first.token).attempt_count == 1
    work_off()
    assert DONE == [3]


def test_what_cannot_be_done_says_why_and_where_to_go_on(client):
    asked = ask(-1)
    work_off()
    client.force_login(asked.asked_by)
    page = client.get(asked.get_absolute_url()).text
    assert "count again" in page and 'href="/somewhere/"' in page


def test_a_fault_is_said_and_the_work_offered_again(client, caplog):
    asked = ask(0)
    with caplog.at_level(logging.CRITICAL):
        work_off()
    client.force_login(asked.asked_by)
    assert "Begin it again" in client.get(asked.get_absolute_url()).text
    client.post(f"{asked.get_absolute_url()}again/")
    asked.refresh_from_db()
    assert (asked.state, asked.attempt_count) == (Job.State.WAITING, 2)


def test_a_worker_that_died_is_noticed_and_its_late_word_is_not_heard(client):
    asked = ask(3)
    silent = clock.now() - timedelta(minutes=1)
    Job.objects.filter(pk=asked.pk).update(state="working", step="folding paper", seen_at=silent)
    client.force_login(asked.asked_by)
    shown = client.get(asked.get_absolute_url()).text
    assert "gave no sign" in shown and "Begin it again" in shown
    client.post(f"{asked.get_absolute_url()}again/")
    jobs.run(asked.pk, 1)  # the first attempt, come back
    assert DONE == []
    jobs.run(asked.pk, 2)
    assert DONE == [3]


def test_work_without_any_worker_says_what_to_start(client):
    asked = ask(3)
    Job.objects.filter(pk=asked.pk).update(seen_at=clock.now() - timedelta(minutes=1))
    client.force_login(asked.asked_by)
    assert "manage.py work" in client.get(asked.get_absolute_url()).text
    Job.objects.create(
        kind="fold", title="Another", asked_at=clock.now(), seen_at=clock.now(), state="working", url="/"
    )
    assert "waiting for its turn" in client.get(asked.get_absolute_url()).text  # behind the other


def test_a_job_in_hand_is_not_begun_again(client):
    asked = ask(3)
    client.force_login(asked.asked_by)
    client.post(f"{asked.get_absolute_url()}again/")
    asked.refresh_from_db()
    assert asked.attempt_count == 1


@pytest.mark.django_db(transaction=True)
def test_the_command_does_what_waits():
    asked = ask(3)
    call_command("work", once=True)
    asked.refresh_from_db()
    assert (asked.state, DONE) == (Job.State.DONE, [3])
