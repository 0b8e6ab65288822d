"""The line of descent on paper: what was done stands at the arrow at which it was done."""

import pytest

from records.lineage import descent_of
from records.models import DescentLink
from records.pdf import blocks as b
from records.reports.parts import strip
from tests.factories import make_item

pytestmark = pytest.mark.django_db


def step(source, target, transfer, **fields):
    DescentLink.objects.create(source=source, target=target, transfer=transfer, **fields)


def test_each_arrow_carries_the_step_that_it_stands_for():
    medal, mould = make_item("OVM.1"), make_item("M-1", kind="mould")
    shell, copy = make_item("S-1", kind="shell"), make_item("R.1", kind="copy")
    step(medal, mould, "moulding")
    step(mould, shell, "deposit")
    step(shell, copy, "making_up")

    pieces = [part.number if isinstance(part, b.Piece) else part.words for part in strip(descent_of(copy)).chain]

    assert pieces == ["OVM.1", "moulded", "M-1", "deposited in the mould", "S-1", "made up", "R.1"]


def test_a_step_that_nobody_recorded_is_drawn_as_unknown():
    old = make_item("R.1889.7", kind="historic_copy")
    step(None, old, "unknown", source_words="a medal of 1702")

    _, link, _ = strip(descent_of(old)).chain

    assert link == b.Link("copied in a way not recorded", known=False)
