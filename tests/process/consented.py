"""A coin that is assessed and examined, and what a refused step answers; shared by tests of consents."""

from datetime import date

import pytest

from records.models import Item
from records.services.permissions import give_concession
from tests.factories import NINE, make_item, make_party, make_photo, make_report, make_user

TODAY = date(2026, 2, 25)


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator", "tobias"))
    return client


@pytest.fixture
def coin() -> Item:
    """Assessed and examined; what its owner allows is each test's matter."""
    coin = make_item("L.2026.003", title="Ten-groat piece")
    coin.risk_assessments.create(
        number="RA-1", assessed_on=TODAY, assessor=make_party(), surface="silver", decision="direct", reason="sound",
        signed_at=NINE, signed_role="conservator", signed_by=make_party(),
    )  # fmt: skip
    make_report(coin, "before", examined_on=TODAY).photos.add(make_photo(coin, taken_at=NINE))
    make_report(coin, "after", examined_on=TODAY, change="no_change")
    return coin


def concede(item, name, gate="G1", on=TODAY):
    return give_concession(
        gate=gate, check_names=[name], items=[item], given_by=make_party(), role="conservator",
        reason="agreed by letter", given_on=on,
    )  # fmt: skip


def refused(answer, *words) -> bool:
    page = answer.content.decode()
    assert answer.status_code == 422 and all(each in page for each in words), page[-3000:]
    return True
