"""A copy that may leave, and one whose mark was only conceded."""

import pytest

from records import clock
from records.models import Document, Item
from records.services.permissions import give_concession
from tests.factories import NINE, make_copy, make_inspection, make_item, make_mark, make_party
from tests.records.test_papers import label_for


@pytest.fixture
def copy() -> Item:
    """Marked, accepted, labelled; its certificate is issued."""
    made = make_copy("R.2026.1", model=make_item("OVM.1931.0044", object_type="medal"))
    make_mark(made, photo=None)
    give_concession(
        gate="G6", check_names=["permanent mark"], items=[made], given_by=make_party(), role="conservator",
        reason="photograph follows",
    )  # fmt: skip
    label_for(made)
    make_inspection(made, signed_at=clock.now(), signed_role="conservator")
    made.status = Item.Status.ACCESSIONED
    made.save()
    return made


@pytest.fixture
def marked(copy):
    """As above, with the photograph of its mark; it prints no pictures, for there is no file."""
    copy.marks.all().delete()
    make_mark(copy)
    return Item.objects.get(pk=copy.pk)


def certify(copy) -> None:
    Document.objects.create(
        kind="certificate", number=copy.number, title="Certificate of reproduction", item=copy, issued_at=NINE,
        path="c.pdf", sha256="0" * 64, record_sha256="0" * 64, size_bytes_count=1,
    )  # fmt: skip
