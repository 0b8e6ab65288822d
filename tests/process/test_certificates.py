"""Certificates and acknowledgements: the word copy in the heading, the conceded limits, the moulds, nothing lost."""

from datetime import date

import pytest
from django.core.exceptions import ValidationError

from records import clock
from records.models import Concession, LabelWording, Measurement
from records.services.papers import issue, path_of
from tests.factories import make_consent, make_copy, make_inspection, make_item, make_mark, make_mould, make_party
from tests.pdf import reading

pytestmark = pytest.mark.django_db
LIMIT = "Display only, no handling, no further heat"


@pytest.fixture(autouse=True)
def _own_papers(settings, tmp_path):
    settings.DOCUMENTS_DIR = tmp_path


@pytest.fixture
def copy():
    coin = make_item("L.2026.003", title="Silver ten-groat piece", owner=make_party("Almshouse Trust"))
    Measurement.objects.create(item=coin, what="mass", mass_g=15.82)
    copy = make_copy("R.2026.2", model=coin, about={"title": "Electrotype copy of a coin"})
    make_mark(copy, text="COPY", face="obverse", photo=None)
    mark = copy.marks.get()
    make_consent(coin, owner=coin.owner, copies_max_count=1)
    given = Concession.objects.create(
        number="C-2026-02", gate="G7", given_on=date(2026, 3, 10), given_by=make_party(), given_role="conservator",
        reason="layers part", limits_of_use=LIMIT,
    )  # fmt: skip
    given.items.set([copy])
    pass_mark = Concession.objects.create(
        number="C-9", gate="G6", given_on=date(2026, 3, 10), given_by=make_party(), given_role="conservator",
        reason="photograph follows",
    )  # fmt: skip
    pass_mark.items.set([copy])
    LabelWording.objects.create(
        item=copy, kind_of_copy="Electrotype copy", copy_date="2026", after="after a silver ten-groat piece, 1571",
        body=f"Silvered copper, marked {mark.text}.", signed_at=clock.now(), signed_role="curator",
    )  # fmt: skip
    make_inspection(copy, mass_g=8.78, diameter_mm=31.19, signed_at=clock.now(), signed_role="conservator")
    return copy


def _text(kind, subject):
    paper = issue(kind=kind, subject=subject, party=make_party("Odalys"), role="curator")
    return " ".join(reading.text(path_of(paper).read_bytes()).split())


def test_a_certificate_says_in_its_heading_that_this_is_no_original(copy):
    text = _text("certificate", copy)

    assert "Certificate of reproduction (not an original work)" in text
    assert "This piece must always be described as a copy." in text and "Electrotype copy, 2026" in text
    assert "L.2026.003" in text and "Almshouse Trust" in text and "At most 1 copies" not in text
    assert "8.78" in text and "31.19" in text and "COPY" in text and LIMIT in text and "C-2026-02" in text


def test_nothing_is_certified_before_acceptance_or_approval(copy):
    copy.inspections.all().delete()
    copy.label.signed_at = None
    copy.label.save()

    with pytest.raises(ValidationError) as refused:
        _text("certificate", copy)

    assert "not accepted" in " ".join(refused.value.messages) and "not approved" in " ".join(refused.value.messages)


def test_a_destruction_is_certified_with_day_witness_and_consent():
    coin = make_item("L.2026.003")
    make_consent(coin, owner=make_party("Almshouse Trust"), mould_fate="destroy", mould_fate_by=date(2026, 4, 30))
    mould = make_mould(
        coin, "M-2026-03", fate="destroyed", fate_on=date(2026, 4, 17), fate_witness=make_party("Lettice")
    )

    text = _text("mould-destruction", mould.item)

    assert "M-2026-03 was destroyed on 17 April 2026 before Lettice" in text
    assert "Almshouse Trust" in text and "30 April 2026" in text


def test_a_destruction_without_a_witness_is_not_certified():
    mould = make_mould(number="M-2026-03", fate="destroyed", fate_on=date(2026, 4, 17))

    with pytest.raises(ValidationError, match="witness"):
        _text("mould-destruction", mould.item)


def test_a_receiver_acknowledges_that_it_is_a_copy_and_how_it_may_be_used(copy):
    text = _text("acknowledgement", copy)

    assert "Received: a copy, not an original work" in text and "Electrotype copy, 2026" in text
    assert LIMIT in text and "Photograph of electrotype copy R.2026.2, not of the original." in text
    assert "Receiver" in text
