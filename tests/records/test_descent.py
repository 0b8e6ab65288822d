"""Descent: only transfers of a surface flip and count (the trade's rules; pieces of the demo scenario)."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from records.descent import (
    TRANSFERS,
    DescentError,
    Link,
    Span,
    refuse_impossible,
    strip,
    trace,
    transfer_words,
    tree,
    words,
)

# The medal of Maud Ferrigan: two moulds, three pulls each, two copies.
MEDAL = [
    Link("OVM.1931.0044", "M-01", "moulding", "obverse"),
    Link("OVM.1931.0044", "M-02", "moulding", "reverse"),
    Link("M-01", "S-01", "deposit_in_mould", "obverse"),
    Link("M-02", "S-02", "deposit_in_mould", "reverse"),
    Link("M-01", "S-03", "deposit_in_mould", "obverse"),
    Link("M-02", "S-04", "deposit_in_mould", "reverse"),
    Link("S-03", "R.2026.1", "making_up", "obverse"),
    Link("S-04", "R.2026.1", "making_up", "reverse"),
]
# The lightship medal: an electrotype bought in 1889 whose own model nobody has seen since 1811.
LIGHTSHIP = [
    Link(None, "R.1889.7", "unknown"),
    Link("R.1889.7", "M-05", "moulding", "obverse"),
    Link("M-05", "S-07", "deposit_in_mould", "obverse"),
    Link("S-07", "R.2026.3", "making_up", "obverse"),
]
# The mask: a plaster core with a metal skin.
MASK = [
    Link("OVM.1907.0112", "M-07", "moulding"),
    Link("M-07", "P-01", "casting"),
    Link("P-01", "S-11", "skin"),
    Link("S-11", "R.2026.5", "making_up"),
]


def test_a_thing_without_a_link_is_an_original():
    found = trace(MEDAL, "OVM.1931.0044")
    assert (found.polarity, found.transfer_count, found.generation) == (1, 0, 0)
    assert words(found) == "original"


def test_a_mould_is_a_negative_and_no_copy():
    found = trace(MEDAL, "M-01")
    assert (found.polarity, found.transfer_count, found.generation, found.is_copy) == (-1, 1, 0, False)
    assert words(found) == "negative, from the original itself"


def test_the_copy_joined_from_two_shells_is_first_generation_after_two_transfers():
    found = trace(MEDAL, "R.2026.1")
    assert (found.polarity, found.transfer_count, found.generation, found.at_least) == (1, 2, 1, False)
    assert found.path == ("OVM.1931.0044", "M-01", "S-03", "R.2026.1")
    assert words(found) == "first generation"


def test_a_copy_of_a_historic_copy_is_second_generation_at_least():
    historic, copy = trace(LIGHTSHIP, "R.1889.7"), trace(LIGHTSHIP, "R.2026.3")
    assert (historic.generation, historic.at_least, historic.polarity) == (1, True, 1)
    assert (copy.generation, copy.transfer_count, copy.at_least) == (2, 4, True)
    assert copy.open_ends == ("R.1889.7",)
    assert words(historic) == "first generation or more; first link undocumented"
    assert words(copy) == "second generation or more; first link undocumented"
    assert transfer_words(copy) == "at least 4 transfers of the surface"


def test_a_skin_on_a_core_adds_no_generation():
    found = trace(MASK, "R.2026.5")
    assert (found.generation, found.transfer_count, found.skinned, found.polarity) == (1, 2, True, 1)
    assert words(found) == "first generation, with a metal skin"


def test_a_mould_of_a_skinned_copy_is_not_skinned_itself():
    links = [*MASK, Link("R.2026.5", "M-09", "moulding"), Link("M-09", "S-20", "deposit_in_mould")]
    assert trace(links, "S-20").skinned is False
    assert trace(links, "S-20").generation == 2


def test_a_scan_and_a_print_transfer_no_surface_but_are_said():
    links = [
        Link("mask", "scan", "scan"),
        Link("scan", "master", "print"),
        Link("master", "M", "moulding"),
        Link("M", "S", "deposit_in_mould"),
    ]
    found = trace(links, "S")
    assert (found.transfer_count, found.generation, found.by_scan) == (2, 1, True)
    assert words(found) == "first generation, by way of a scan, which is no transfer of the surface"
    assert words(trace(links, "master")).startswith("from the original itself, by way of a scan")


def test_joined_parts_take_the_maximum_and_doubt_is_catching():
    links = [*MEDAL, *LIGHTSHIP, Link("S-03", "mixed", "making_up"), Link("S-07", "mixed", "making_up")]
    found = trace(links, "mixed")
    assert (found.generation, found.transfer_count, found.at_least) == (2, 4, True)
    assert found.open_ends == ("R.1889.7",)
    assert found.path[0] is None


def test_joining_a_negative_to_a_positive_leaves_the_polarity_open():
    links = [*MEDAL, Link("M-01", "odd", "making_up"), Link("S-03", "odd", "making_up")]
    assert trace(links, "odd").polarity is None


@pytest.mark.parametrize(
    ("transfer", "polarity", "count", "generation"),
    [
        ("moulding", -1, 1, 0),
        ("casting", 1, 2, 1),
        ("deposit_in_mould", 1, 2, 1),
        ("unknown", 1, 2, 1),
        ("skin", 1, 2, 1),
        ("making_up", 1, 2, 1),
        ("scan", 1, 0, 0),
    ],
)
def test_an_unknown_model_is_never_taken_for_nothing(transfer, polarity, count, generation):
    found = trace([Link(None, "thing", transfer)], "thing")
    assert (found.polarity, found.transfer_count, found.generation) == (polarity, count, generation)
    assert found.at_least


def test_a_known_model_copied_in_an_unknown_way_is_also_at_least():
    found = trace([Link("medal", "old copy", "unknown")], "old copy")
    assert (found.generation, found.transfer_count, found.at_least) == (1, 2, True)
    assert words(found) == "first generation or more; a link between undocumented"


def test_a_ring_is_refused_and_named():
    ring = [Link("a", "b", "moulding"), Link("b", "c", "casting"), Link("c", "a", "moulding")]
    with pytest.raises(DescentError, match="made from themselves"):
        trace(ring, "a")
    with pytest.raises(DescentError):
        tree(ring, "a")


def test_a_thing_is_not_its_own_model():
    with pytest.raises(DescentError):
        trace([Link("a", "a", "moulding")], "a")


def test_an_unheard_of_transfer_is_refused():
    with pytest.raises(DescentError, match="no known way of transfer"):
        Link("a", "b", "conjuring")


def test_a_copy_older_than_its_model_is_refused():
    made = {
        "OVM.1931.0044": Span(date(1624, 1, 1), date(1624, 12, 31)),
        "M-01": Span(date(1620, 1, 1), date(1620, 12, 31)),
    }
    with pytest.raises(DescentError, match="cannot be older than its model"):
        refuse_impossible(MEDAL, made)


def test_an_undated_thing_between_does_not_hide_an_impossible_date():
    made = {
        "OVM.1931.0044": Span(date(1624, 1, 1), date(1624, 12, 31)),
        "R.2026.1": Span(date(1600, 1, 1), date(1610, 1, 1)),
    }
    with pytest.raises(DescentError, match=r"OVM\.1931\.0044"):
        refuse_impossible(MEDAL, made)


def test_overlapping_and_open_dates_are_let_be():
    year = Span(date(2026, 2, 4), date(2026, 2, 4))
    refuse_impossible(MEDAL, {"OVM.1931.0044": Span(None, None), "M-01": year, "S-01": year})


def test_the_strip_stands_in_columns_with_both_sides():
    found = strip(MEDAL, "R.2026.1")
    assert found.columns == (("OVM.1931.0044",), ("M-01", "M-02"), ("S-03", "S-04"), ("R.2026.1",))
    sides = [(edge.words, edge.side) for edge in found.between(1)]
    assert sides == [("moulded", "obverse"), ("moulded", "reverse")]
    assert found.lineages["M-02"].polarity == -1


def test_the_strip_starts_at_a_question_mark_where_the_model_is_unknown():
    found = strip(LIGHTSHIP, "R.2026.3")
    assert found.columns == ((None,), ("R.1889.7",), ("M-05",), ("S-07",), ("R.2026.3",))
    assert found.edges[0].source is None


def test_the_strip_of_a_lone_original_is_one_column():
    assert strip([], "OVM.1931.0044").columns == (("OVM.1931.0044",),)


def test_the_tree_shows_a_joined_piece_beneath_both_shells_and_says_so():
    rows = tree(MEDAL, "OVM.1931.0044")
    assert [row.key for row in rows] == [
        "OVM.1931.0044", "M-01", "S-01", "S-03", "R.2026.1", "M-02", "S-02", "S-04", "R.2026.1",
    ]  # fmt: skip
    assert [row.key for row in rows if row.repeated] == ["R.2026.1"]
    assert rows[rows[4].parent].key == "S-03"
    assert rows[4].depth == 3


def test_a_long_chain_needs_no_deep_stack():
    links = [Link(n, n + 1, "moulding") for n in range(5000)]
    assert trace(links, 5000).transfer_count == 5000
    assert len(tree(links, 0)) == 5001


COUNTED = {"moulding", "casting", "deposit_in_mould"}
chains = st.lists(st.sampled_from(sorted(set(TRANSFERS) - {"unknown"})), max_size=40)


@given(chains)
def test_only_transfers_flip_and_count(chain):
    links = [Link(n, n + 1, transfer) for n, transfer in enumerate(chain)]
    found = trace(links, len(chain))
    transfers = [transfer for transfer in chain if transfer in COUNTED]
    assert found.transfer_count == len(transfers)
    assert found.polarity == (-1) ** len(transfers)
    assert found.generation == len(transfers) // 2
    assert not found.at_least
    assert found.path == tuple(range(len(chain) + 1))


@given(chains, st.sampled_from(sorted(TRANSFERS)))
def test_an_unknown_beginning_is_never_less_than_the_known_one(chain, first):
    links = [Link(n, n + 1, transfer) for n, transfer in enumerate(chain)]
    known, unknown = trace(links, len(chain)), trace([Link(None, 0, first), *links], len(chain))
    assert unknown.at_least
    assert unknown.generation >= known.generation
    assert unknown.transfer_count >= known.transfer_count


@given(st.lists(chains, min_size=1, max_size=4))
def test_a_joined_piece_is_as_far_as_its_furthest_part(parts):
    links = []
    for p, chain in enumerate(parts):
        links += [Link((p, n), (p, n + 1), transfer) for n, transfer in enumerate(chain)]
        links.append(Link((p, len(chain)), "joined", "making_up"))
    ends = [trace(links, (p, len(chain))) for p, chain in enumerate(parts)]
    found = trace(links, "joined")
    assert found.generation == max(end.generation for end in ends)
    assert found.transfer_count == max(end.transfer_count for end in ends)
    assert found.skinned == any(end.skinned for end in ends)


@given(st.integers(2, 30), st.data())
def test_closing_any_chain_into_a_ring_is_refused(length, data):
    links = [Link(n, n + 1, "moulding") for n in range(length)]
    start = data.draw(st.integers(0, length))
    end = data.draw(st.integers(start, length))
    with pytest.raises(DescentError):
        trace([*links, Link(end, start, "making_up")], length)
