"""A concession passes what it names, from its day to its end, and nothing else; its limits go with what is made."""

from datetime import date, timedelta

import pytest
from django.urls import reverse
from pypdf import PdfReader

from process.models import Mould, Run
from process.services.runs import start_run
from records import clock, extensions, gates
from records.gates import GateClosed
from records.limits import limits_of
from records.models import Concession, DescentLink, Gate, Item, LabelWording, UnmetGate
from records.services import papers
from records.services.permissions import give_concession
from tests.factories import (
    NINE,
    make_copy,
    make_inspection,
    make_mark,
    make_mould,
    make_party,
    make_report,
    make_run,
    make_shell,
    make_user,
)

pytestmark = pytest.mark.django_db

START = date(2026, 2, 16)  # NINE, by the museum's clock


def concede(*items: Item, checks=("bath analysed",), gate="G5", given_on=START, **fields) -> Concession:
    return give_concession(
        gate=gate, check_names=list(checks), items=list(items), given_by=make_party(), role="conservator",
        reason="the titrant is on its way", given_on=given_on, **fields,
    )  # fmt: skip


@pytest.fixture
def mould() -> Mould:
    """Its model was examined after the moulding; its bath was never analysed."""
    mould = make_mould(pulls_allowed_count=1)
    make_report(mould.model, "after", change="no_change")
    return mould


@pytest.fixture
def run(mould) -> Run:
    return make_run(moulds=[mould])


def start(run: Run, **how):
    return start_run(run=run, at=NINE, current_a=0.24, **{"afterwards": False} | how)


def test_it_passes_the_check_that_it_names(run, mould):
    concede(mould.item)

    assert start(run).pk
    assert not UnmetGate.objects.exists()


def test_another_check_of_the_same_gate_still_needs_its_evidence(run, mould):
    mould.pulls.create(number_count=1, used_on=START)
    concede(mould.item)

    with pytest.raises(GateClosed) as closed:
        start(run)

    assert [check.name for check in closed.value.unmet] == ["pull left"]


@pytest.mark.parametrize(
    ("when", "passes"),
    [
        ({"given_on": START - timedelta(days=9)}, True),
        ({"given_on": START}, True),  # a day is all that it is dated by
        ({"given_on": START + timedelta(days=1)}, False),
        ({"given_on": START - timedelta(days=9), "valid_to": START}, True),
        ({"given_on": START - timedelta(days=9), "valid_to": START - timedelta(days=1)}, False),
    ],
)
def test_it_holds_from_its_day_to_its_end(run, mould, when, passes):
    concede(mould.item, **when)

    start(run, afterwards=True)

    assert [row.check_name for row in UnmetGate.objects.all()] == ([] if passes else ["bath analysed"])


def test_one_written_before_checks_were_named_passes_its_whole_gate_and_says_so(client, run, mould):
    mould.pulls.create(number_count=1, used_on=START)
    old = Concession.objects.create(
        number="C-1", gate="G5", given_on=START, given_by=make_party(), given_role="conservator", reason="old"
    )
    old.items.add(mould.item)
    client.force_login(make_user("reader"))

    start(run)

    assert not UnmetGate.objects.exists()
    assert "It was written before checks were named." in client.get(old.get_absolute_url()).content.decode()


@pytest.mark.parametrize("names", [[], ["bath analysed", "no such check"], ["permanent mark"]])
def test_the_service_takes_only_checks_that_stand_at_the_gate(mould, names):
    with pytest.raises(Exception, match="check"):
        concede(mould.item, checks=names)

    assert not Concession.objects.exists()


@pytest.mark.parametrize("gate", Gate)
def test_every_gate_knows_its_checks_without_running_them(gate):
    assert gates.names_of(gate) == list(extensions.gate_checks[gate])


def test_the_closed_gate_leads_to_a_form_that_names_the_check_and_the_mould(client, run, mould):
    client.force_login(make_user("conservator"))
    at = clock.now()
    url = reverse("run_start", args=[run.number])
    typed = {"at_0": f"{at:%Y-%m-%d}", "at_1": f"{at:%H:%M}", "at": f"{at:%Y-%m-%dT%H:%M}", "current_a": "0.24",
             "current_a_unit": "A", "token": "11111111-1111-4111-8111-111111111111"}  # fmt: skip

    page = client.post(url, typed).content.decode()
    query = f"?gate=G5&amp;check=bath+analysed&amp;item={mould.item.number}"
    assert query in page

    form = client.get(reverse("concession_add") + query.replace("&amp;", "&")).content.decode()
    assert 'value="G5:bath analysed" ' in form and "G6:permanent mark" not in form
    assert form.count(" checked") == 1


def test_the_form_requires_a_check_and_one_gate_only(client, mould):
    client.force_login(make_user("conservator"))
    typed = {"items": mould.item.number, "reason": "the titrant is on its way"}
    add = reverse("concession_add")

    without = client.post(add, typed)
    mixed = client.post(add, typed | {"check_names": ["G5:bath analysed", "G6:permanent mark"]})
    past = client.post(add, typed | {"check_names": ["G5:bath analysed"], "valid_to": "2020-01-01"})

    assert (without.status_code, mixed.status_code, past.status_code) == (422, 422, 422)
    assert (
        "Name at least one check" in without.content.decode()
        and "the titrant is on its way" in without.content.decode()
    )
    assert "another concession for the rest" in mixed.content.decode() and "This day is past" in past.content.decode()
    assert not Concession.objects.exists()


def test_its_page_says_what_it_passes_and_until_when(client, mould):
    client.force_login(make_user("reader"))
    given = concede(mould.item, valid_to=date(2026, 3, 1))

    page = client.get(given.get_absolute_url()).content.decode()

    assert "Passes “bath analysed” without the evidence" in page
    assert "holds to 1 March 2026" in page and "ended" in page


# --- limits of use ----------------------------------------------------------------------------------------------------

LIMITS = "Display only, no handling."


@pytest.fixture
def copy() -> Item:
    copy = make_copy("R.2026.2")
    make_mark(copy, photo=None)
    concede(copy, gate="G6", checks=["permanent mark"])
    make_report(copy, number="CR-2026-50")
    return copy


def _shell(copy: Item) -> Item:
    return copy.making_up.shells.select_related("item").first().item


def text_of(subject, kind: str) -> str:
    document = papers.issue(kind=kind, subject=subject, party=make_party(), role="curator")
    pages = PdfReader(papers.path_of(document)).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


def test_the_limits_of_a_shell_stand_on_every_page_of_shell_run_and_copy(client, copy):
    shell = _shell(copy)
    concede(shell, gate="G7", checks=["inspected"], limits_of_use=LIMITS)
    client.force_login(make_user("curator"))
    run = Run.objects.get(cathodes__shell__item=shell)

    pages = [shell.get_absolute_url(), copy.get_absolute_url(), run.get_absolute_url(),
             reverse("label_edit", args=[copy.number])]  # fmt: skip

    for address in pages:
        assert LIMITS in client.get(address).content.decode(), address


@pytest.mark.parametrize("kind", ["object-tag", "process-report"])
def test_the_limits_of_a_shell_stand_on_the_papers_of_the_copy(copy, kind):
    make_inspection(copy)
    concede(_shell(copy), gate="G7", checks=["inspected"], limits_of_use=LIMITS)

    assert LIMITS in text_of(copy, kind)


def test_they_stand_on_its_condition_report_and_beside_its_label(copy):
    concede(_shell(copy), gate="G7", checks=["inspected"], limits_of_use=LIMITS)
    label_for(copy)

    assert LIMITS in text_of(copy.condition_reports.get(), "condition-report")
    assert f"Not part of the label. Limits of use of R.2026.2: {LIMITS}" in text_of(copy, "gallery-label")


def label_for(copy: Item) -> None:
    LabelWording.objects.create(
        item=copy, kind_of_copy="Electrotype copy", copy_date="2026", after="after a medal of 1624", body="Copper.",
        signed_by=make_party(), signed_role="curator", signed_at=NINE,
    )  # fmt: skip


def test_the_limits_of_a_mould_follow_what_is_grown_in_it_from_then_on():
    before, after = make_shell(number="S-01"), make_shell(number="S-02")
    for shell in (before, after):
        step = DescentLink.objects.get(target=shell.item)
        step.happened_on = date(2026, 2, 17)
        step.save()
    concede(before.cathode.mould.item, given_on=date(2026, 2, 20), limits_of_use="too late for it")
    concede(after.cathode.mould.item, given_on=date(2026, 2, 16), limits_of_use=LIMITS)

    assert limits_of(before.item) == []
    assert limits_of(after.item) == [LIMITS]


def test_the_limits_of_a_part_follow_also_when_they_are_written_later(copy):
    concede(_shell(copy), gate="G7", checks=["inspected"], given_on=date(2026, 10, 1), limits_of_use=LIMITS)

    assert limits_of(copy) == [LIMITS]


def test_a_copy_is_accepted_with_the_concession_of_its_shell(client, copy):
    given = concede(_shell(copy), gate="G7", checks=["inspected"], limits_of_use=LIMITS)
    client.force_login(make_user("conservator"))
    inspection = make_inspection(copy, decision="concession", concession=given)

    answer = client.post(reverse("inspection_sign", args=[inspection.pk]), {"status": "accessioned"})

    assert answer.status_code == 302
