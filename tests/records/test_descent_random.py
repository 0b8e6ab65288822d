"""Random nets of descent, held against every single way through them: no walk of the kit is used to check the kit.

Rules of the trade (common practice of the workshop, no published source): a transfer of the surface flips and counts;
skin, making-up, scan and print do neither; joined parts take the maximum; what nobody knows means "at least".
"""

from datetime import date, timedelta

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from records.descent import TRANSFERS, DescentError, Link, Span, refuse_impossible, trace, trace_all, tree, words

FLIPS = {"moulding", "casting", "deposit_in_mould"}
COUNTS = {**dict.fromkeys(TRANSFERS, 0), **dict.fromkeys(FLIPS, 1), "unknown": 2}
# What must have stood before a thing whose model nobody knows: its transfers, and its positives.
BEFORE = {"casting": (1, 0), "deposit_in_mould": (1, 0), "skin": (2, 1), "making_up": (2, 1)}
ANY = tuple(sorted(TRANSFERS))
DAY = date(1624, 1, 1)


@st.composite
def nets(draw, most=9, ways=ANY):
    """Things 0 … n, each made from up to three earlier ones, or from nobody knows what."""
    links = []
    for thing in range(1, draw(st.integers(1, most))):
        before = st.sampled_from([None, *range(thing)])
        for source in draw(st.lists(before, max_size=3, unique=True)):
            links.append(Link(source, thing, draw(st.sampled_from(ways))))
    return links


def ways_to(links: list[Link], thing: int) -> list[list[Link]]:
    """Every chain of links that ends in the thing."""
    into = [link for link in links if link.target == thing]
    if not into:
        return [[]]
    return [[*way, link] for link in into for way in ([[]] if link.source is None else ways_to(links, link.source))]


def followed(way: list[Link]) -> tuple[int, int, bool]:
    """Transfers, positives, and whether they are a lower bound, reckoned step by step along one way."""
    begins_nowhere = bool(way) and way[0].source is None
    count, positives = BEFORE.get(way[0].transfer, (0, 0)) if begins_nowhere else (0, 0)
    for link in way:
        count += COUNTS[link.transfer]
        if link.transfer == "unknown" or (link.transfer in FLIPS and count % 2 == 0):
            positives += 1
    return count, positives, begins_nowhere or any(link.transfer == "unknown" for link in way)


def things(links: list[Link]) -> set[int]:
    return {end for link in links for end in (link.source, link.target) if end is not None}


@given(nets())
def test_every_thing_of_a_net_agrees_with_all_ways_that_lead_to_it(links):
    found = trace_all(links)

    for thing in things(links):
        ways = [followed(way) for way in ways_to(links, thing)]
        signs = {(-1) ** count for count, _, _ in ways}
        assert found[thing].transfer_count == max(count for count, _, _ in ways)
        assert found[thing].at_least == any(open_end for _, _, open_end in ways)
        assert found[thing].polarity == (signs.pop() if len(signs) == 1 else None)


@given(nets())
def test_generation_is_that_of_the_furthest_way_where_no_negative_was_joined_to_a_positive(links):
    found = trace_all(links)
    assume(all(lineage.polarity is not None for lineage in found.values()))

    for thing in things(links):
        assert found[thing].generation == max(positives for _, positives, _ in map(followed, ways_to(links, thing)))


@given(nets(ways=("making_up", "print", "scan", "skin")))
def test_skin_making_up_scan_and_print_alone_never_flip_or_count(links):
    assume(all(link.source is not None for link in links))

    for lineage in trace_all(links).values():
        assert (lineage.polarity, lineage.transfer_count, lineage.generation) == (1, 0, 0)


@given(nets())
def test_one_thing_asked_for_alone_stands_where_the_whole_net_puts_it(links):
    for thing, lineage in trace_all(links).items():
        assert trace(links, thing) == lineage


@given(nets())
def test_what_is_a_lower_bound_says_so_in_words(links):
    for lineage in trace_all(links).values():
        assert lineage.at_least == ("undocumented" in words(lineage))
        assert not (lineage.at_least and words(lineage) == "original")


@given(nets(), st.data())
def test_no_ring_is_accepted_anywhere(links, data):
    assume(any(link.source is not None for link in links))
    link = data.draw(st.sampled_from([link for link in links if link.source is not None]))
    ring = [*links, Link(link.target, link.source, data.draw(st.sampled_from(sorted(TRANSFERS))))]

    for walk in (trace_all, lambda ring: tree(ring, link.source), lambda ring: refuse_impossible(ring, {})):
        with pytest.raises(DescentError, match="made from themselves"):
            walk(ring)


@st.composite
def dated(draw):
    links = draw(nets())
    days = st.integers(0, 400)
    made = {}
    for thing in things(links):
        first, last = sorted((draw(days), draw(days)))
        bounds = (DAY + timedelta(first), DAY + timedelta(last))
        made[thing] = Span(*(bound if draw(st.booleans()) else None for bound in bounds))
    return links, made


def forebears(links: list[Link], thing: int) -> set[int]:
    return {link.source for way in ways_to(links, thing) for link in way if link.source is not None}


@given(dated())
def test_dates_are_refused_exactly_where_some_forebear_is_younger(case):
    links, made = case
    impossible = any(
        made[thing].latest and made[old].earliest and made[thing].latest < made[old].earliest
        for thing in things(links)
        for old in forebears(links, thing)
    )

    if impossible:
        with pytest.raises(DescentError, match="cannot be older than its model"):
            refuse_impossible(links, made)
    else:
        refuse_impossible(links, made)


@given(nets())
def test_every_thing_of_a_tree_has_one_place_with_its_branches(links):
    named = things(links)
    roots = sorted(named - {link.target for link in links if link.source is not None})
    rows = tree(links, *roots)

    assert sorted(row.key for row in rows if row.key is not None and not row.repeated) == sorted(named)
    assert all(rows[row.parent].depth < row.depth for row in rows if row.parent is not None)


def test_the_reckoning_of_these_tests_knows_the_shortest_chain():
    """A mould and a deposit in it: two transfers, one positive, by hand."""
    way = [Link("medal", "mould", "moulding"), Link("mould", "shell", "deposit_in_mould")]
    assert followed(way) == (2, 1, False)
