"""A verb sent twice acts once; a form about a row that moved on meanwhile is shown again before it counts."""

import re

import pytest
from django.test import Client
from django.urls import reverse

from process.models import Trace
from records.models import Document
from tests.factories import make_item, make_user
from tests.process.test_trace_pages import BEST, bench, decisions_of, mapped  # noqa: F401
from tests.process.trace_runs import coin_run

pytestmark = pytest.mark.django_db


def test_a_double_click_issues_one_paper(client: Client):
    item = make_item()
    client.force_login(make_user("registrar"))
    page = client.get(item.get_absolute_url()).content.decode()
    address = reverse("paper_issue", args=["object-tag", item.number])
    mark = re.search(rf'action="{address}">.*?name="sending" value="([0-9a-f-]+)"', page, re.DOTALL)

    answers = [client.post(address, {"sending": mark[1]}, follow=True) for _ in range(2)]

    assert Document.objects.filter(kind="object-tag").count() == 1
    assert "is issued once" in answers[1].content.decode()
    client.post(address, {"sending": "0f3d2c52-6a35-4f0c-9d3c-0d6a4a1b7d11"})
    assert Document.objects.filter(kind="object-tag").count() == 2


def test_decisions_on_a_trace_that_was_read_otherwise_meanwhile_are_shown_again(bench):  # noqa: F811
    trace = mapped(bench, coin_run())
    before = str(trace.version)
    trace.save()
    answers = decisions_of(trace, **BEST) | {"reason": "the voltage did not move", "accept": "1", "version": before}
    address = reverse("trace_decide", args=[trace.pk])

    late = bench.post(address, answers)

    assert late.status_code == 422 and "look at it as it stands now" in late.text
    assert Trace.objects.get(pk=trace.pk).state == Trace.State.FOUND
    assert bench.post(address, answers | {"version": late.context["form"].data["version"]}).status_code == 302
