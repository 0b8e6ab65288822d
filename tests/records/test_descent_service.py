"""Steps written by hand on random nets: the register takes what can be and refuses what cannot, storing nothing."""

from datetime import date

import pytest
from django.core.exceptions import ValidationError
from django.db import transaction
from hypothesis import given, settings
from hypothesis import strategies as st

from records.descent import Link, trace
from records.forms.descent import DescentForm
from records.lineage import descent_of, refuse_impossible
from records.models import DescentLink, Item
from tests.factories import make_item, make_user
from tests.records.test_descent_random import nets

pytestmark = pytest.mark.django_db

# A print is written together with its scan, and the register has its own word for a deposit.
WAYS = {"deposit_in_mould": "deposit"}
WRITTEN = ("casting", "deposit_in_mould", "making_up", "moulding", "scan", "skin", "unknown")
YEARS = range(1600, 1606)


class _Undone(Exception):
    """Takes every row of one example back."""


def write(link: Link, things: dict[int, Item]) -> bool:
    """One step through the form that a curator fills; whether it was taken."""
    source = things[link.source].number if link.source is not None else ""
    typed = {"source": source, "transfer": WAYS.get(link.transfer, link.transfer)}
    typed |= {} if source else {"source_words": "not known"}
    form = DescentForm(typed, instance=DescentLink(target=things[link.target]))
    if not form.is_valid():
        return False
    try:
        form.save()
    except ValidationError:
        return False
    return True


def make_things(years: list[int | None]) -> dict[int, Item]:
    """Originals, so that nothing is presumed of them beyond the steps; dated by a year or not at all."""
    things = {}
    for number, year in enumerate(years):
        span = {"date_earliest": date(year, 1, 1), "date_latest": date(year, 12, 31)} if year else {}
        things[number] = Item.objects.create(number=f"N.{number}", kind="original", title="Medal", **span)
    return things


def can_be(links: list[Link], years: list[int | None]) -> bool:
    """No thing comes from itself, and none is dated before one of its forebears; found without the kit's walk."""
    ends = {link.target for link in links}
    for thing in ends:
        before, waiting = set(), [thing]
        while waiting:
            found = {link.source for link in links if link.target == waiting[-1] and link.source is not None} - before
            waiting = [*waiting[:-1], *found]
            before |= found
        dated = [years[old] for old in before if years[old]]
        if thing in before or (years[thing] and any(year > years[thing] for year in dated)):
            return False
    return True


dates = st.lists(st.one_of(st.none(), st.sampled_from(YEARS)), min_size=7, max_size=7)
numbers = st.integers(0, 6)
steps = st.builds(Link, st.one_of(st.none(), numbers), numbers, st.sampled_from(WRITTEN))


@settings(max_examples=40, deadline=None)
@given(dates, st.lists(steps, max_size=9))
def test_a_step_is_taken_exactly_where_the_line_can_be(years, wanted):
    with pytest.raises(_Undone), transaction.atomic():
        things, kept = make_things(years), []
        for link in dict.fromkeys(wanted):
            possible = can_be([*kept, link], years)

            assert write(link, things) == possible
            kept += [link] if possible else []
            assert DescentLink.objects.count() == len(kept)
        raise _Undone


@settings(max_examples=25, deadline=None)
@given(nets(most=6, ways=WRITTEN))
def test_what_was_written_by_hand_is_reckoned_as_the_kit_reckons_it(links):
    with pytest.raises(_Undone), transaction.atomic():
        things = make_things([None] * 7)
        for link in links:
            assert write(link, things)

        for number, thing in things.items():
            found = descent_of(thing).lineage
            told = trace(links, number)
            figures = [(line.polarity, line.transfer_count, line.generation, line.at_least) for line in (found, told)]
            assert figures[0] == figures[1]
        raise _Undone


@pytest.fixture
def registrar(client):
    client.force_login(make_user("registrar"))
    return client


def send(client, item: Item, **changed):
    """The record of a thing sent back as its page offers it, with some fields changed."""
    form = client.get(f"/things/{item.number}/edit/").context["form"]
    kept = {name: "" if (value := form[name].value()) is None else value for name in form.fields}
    return client.post(f"/things/{item.number}/edit/", kept | changed)


@pytest.mark.parametrize(("words", "status"), [("1889", 302), ("1890", 422), ("about 1700", 302), ("2026", 422)])
def test_an_original_cannot_be_dated_after_its_copy(registrar, words, status):
    model = make_item("OVM.1", date_words="1624")
    copy = Item.objects.create(
        number="R.1", kind="historic_copy", title="Electrotype", date_words="1889", date_earliest="1889-01-01",
        date_latest="1889-12-31",
    )  # fmt: skip
    DescentLink.objects.create(source=model, target=copy, transfer="unknown")

    answer = send(registrar, model, date_words=words)

    model.refresh_from_db()
    assert answer.status_code == status
    assert (model.date_words == words) == (status == 302)
    assert ("A copy cannot be older than its model" in answer.content.decode()) == (status == 422)


def test_a_step_dated_before_its_mould_was_made_is_refused():
    model, mould, shell = (make_item(f"N.{n}", date_words="") for n in range(3))
    DescentLink.objects.create(source=model, target=mould, transfer="moulding", happened_on=date(2026, 2, 4))
    step = DescentLink(source=mould, target=shell, transfer="deposit", happened_on=date(2026, 2, 3))

    with pytest.raises(ValidationError, match=r"N\.2 was made by 2026-02-03, but N\.1"):
        refuse_impossible(step)

    step.happened_on = date(2026, 2, 4)
    refuse_impossible(step)
