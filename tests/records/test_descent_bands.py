"""A tree cut into bands for paper: nothing lost, nothing off the page, and each cut says what it hangs from."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from records.descent import Caption, Link, bands, lay_out, tree
from records.descent.drawing import LEFT, ROW, TOP
from tests.records.test_descent_random import nets, things

WIDTH, HEIGHT = 830.0, 1100.0  # an A4 page at the scale of the descent sheet


def drawn(links, *roots):
    keys = {end for link in links for end in (link.source, link.target) if end is not None}
    captions = {key: Caption(f"N.{key}", "a piece of the line") for key in keys} | {None: Caption("?", "not known")}
    return lay_out(tree(links, *roots), captions)


def chain(length: int) -> list[Link]:
    ways = ("moulding", "deposit_in_mould", "making_up")
    return [Link(n, n + 1, ways[n % 3]) for n in range(length)]


def test_a_short_tree_is_one_band_as_it_was_drawn():
    drawing = drawn(chain(6), 0)

    (band,) = bands(drawing, WIDTH, HEIGHT)

    assert (band.nodes, band.elbows, band.above) == (drawing.nodes, drawing.elbows, {})


def test_a_chain_of_two_hundred_steps_stays_on_its_pages():
    drawing = drawn(chain(200), 0)

    cut = bands(drawing, WIDTH, HEIGHT)

    assert len(cut) > 8
    assert all(node.right <= WIDTH and node.x >= LEFT for band in cut for node in band.nodes)
    assert all(band.height <= HEIGHT for band in cut)
    for before, band in pairwise(cut):
        assert list(band.above.values()) == [before.nodes[-1].caption.number]
        assert band.nodes[0] in band.above


def test_a_branch_that_runs_past_a_page_is_drawn_down_to_its_foot_and_on_from_the_top():
    links = [Link(0, 1, "moulding"), *(Link(1, n, "deposit_in_mould") for n in range(2, 30)), Link(0, 30, "moulding")]

    first, second = bands(drawn(links, 0), WIDTH, TOP + ROW * 20)

    foot = TOP + ROW * 20
    running_on = [elbow for elbow in first.elbows if elbow.bottom == foot]
    assert {elbow.x for elbow in running_on} == {LEFT, first.nodes[1].x}
    assert all(elbow.end == elbow.x for elbow in running_on)
    assert {elbow.top for elbow in second.elbows} == {0.0}
    assert set(second.above.values()) == {"N.0", "N.1"}


@given(nets(), st.integers(2, 12))
def test_every_row_stands_in_one_band_in_its_order(links, rows):
    roots = sorted(things(links) - {link.target for link in links if link.source is not None})
    drawing = drawn(links, *roots)

    cut = bands(drawing, WIDTH, TOP + ROW * rows)

    assert [node.caption for band in cut for node in band.nodes] == [node.caption for node in drawing.nodes]
    assert all(0 <= elbow.top <= elbow.bottom <= band.height for band in cut for elbow in band.elbows)
    arms = [elbow for band in cut for elbow in band.elbows if elbow.end != elbow.x]
    assert len(arms) == len(drawing.elbows)
