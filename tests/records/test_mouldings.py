"""An examination “after moulding” belongs to a moulding: never of an earlier day; a new moulding asks for a new one."""

from datetime import date

import pytest
from django.core.exceptions import ValidationError

from records import gates
from records.checks import condition_after
from records.models import DescentLink, Duty, Item
from records.mouldings import advice, occasion_words
from records.services.signing import report_gaps, sign_report
from records.waiting import wanted_originals
from tests.factories import make_commission, make_item, make_party, make_report, make_user

pytestmark = pytest.mark.django_db
FIRST, SECOND = date(2026, 2, 4), date(2026, 9, 1)


@pytest.fixture
def medal() -> Item:
    return make_item("OVM.1")


def mould(item: Item, day: date | None, number: str) -> None:
    target = make_item(number, kind="mould")
    DescentLink.objects.create(source=item, target=target, transfer="moulding", happened_on=day)


def report(item: Item, day: date, **fields):
    return make_report(item, "after", examined_on=day, change="no_change", **fields)


def check(item: Item, on: date) -> gates.Check:
    return condition_after(gates.Subject(item, item.number, (item,)), on)


def test_a_second_moulding_asks_for_a_second_examination(medal):
    mould(medal, FIRST, "M-1")
    first = report(medal, date(2026, 2, 6))
    assert check(medal, date(2026, 8, 1)).met

    mould(medal, SECOND, "M-2")
    unmet = check(medal, date(2026, 9, 2))

    assert not unmet.met
    assert f"{first.number} is of 6 February 2026, before the moulding of 1 September 2026." in unmet.sentence
    report(medal, SECOND)
    assert check(medal, date(2026, 9, 2)).met


def test_what_an_earlier_run_stood_on_stays_met(medal):
    mould(medal, FIRST, "M-1")
    report(medal, date(2026, 2, 6))
    mould(medal, SECOND, "M-2")

    assert check(medal, date(2026, 2, 11)).met


def test_a_moulding_of_unknown_day_asks_for_any_examination_after_moulding(medal):
    mould(medal, None, "M-1")
    assert not check(medal, SECOND).met

    report(medal, FIRST)

    assert check(medal, SECOND).met


def test_an_examination_before_the_first_moulding_cannot_be_signed_as_one_after_it(medal):
    mould(medal, SECOND, "M-1")
    early = report(medal, FIRST, signed=False)

    assert any("lies on that day or later" in gap for gap in report_gaps(early))
    with pytest.raises(ValidationError):
        sign_report(report=early, party=make_party(), role="conservator")


def test_the_form_says_which_day_is_too_early_and_keeps_what_was_typed(client, medal):
    mould(medal, FIRST, "M-1")
    user = make_user("conservator", "tobias")
    client.force_login(user)
    typed = {"number": "CR-1", "occasion": "after", "examined_on": "2026-02-03", "light": "raking, left",
             "examiner": user.party.name}  # fmt: skip

    page = client.post("/things/OVM.1/condition/new/", typed).content.decode()

    assert "OVM.1 was moulded on 4 February 2026" in page and 'value="raking, left"' in page


def test_page_and_paper_name_the_moulding(client, medal):
    mould(medal, FIRST, "M-1")
    mould(medal, SECOND, "M-2")
    between = report(medal, date(2026, 2, 6))
    client.force_login(make_user("conservator", "tobias"))

    page = client.get(between.get_absolute_url()).content.decode()

    assert (
        "of 4 February 2026: " in page and ", 2 days before" in page and ">M-1</a>" in page and ">M-2</a>" not in page
    )
    assert occasion_words(between) == "after moulding of 4 February 2026"
    assert occasion_words(make_report(medal, "survey")) == "survey"


def test_an_examination_without_a_recorded_moulding_is_advised_of_it(client, medal):
    alone = report(medal, FIRST, signed=False)
    client.force_login(make_user("conservator", "tobias"))

    assert "No moulding of OVM.1 up to this day is recorded" in client.get(alone.get_absolute_url()).content.decode()


def test_the_day_s_list_asks_again_after_a_new_moulding(medal):
    commission = make_commission()
    commission.originals.add(medal)
    mould(medal, FIRST, "M-1")
    report(medal, date(2026, 2, 6))
    assert wanted_originals().get().is_begun_after

    mould(medal, SECOND, "M-2")

    assert not wanted_originals().get().is_begun_after


def test_the_second_look_is_due_thirty_days_after_the_moulding(medal):
    """The museum's coin: moulded on 25 February, looked at on the 27th and again on 27 March 2026."""
    mould(medal, date(2026, 2, 25), "M-1")
    first = report(medal, date(2026, 2, 27), signed=False)

    sign_report(report=first, party=make_party(), role="conservator")

    assert Duty.objects.get(sentence__contains="second time").due_on == date(2026, 3, 27)


@pytest.mark.parametrize(("day", "is_late"), [(date(2026, 2, 7), False), (date(2026, 2, 8), True)])
def test_a_look_later_than_three_days_is_advised_of(medal, day, is_late):
    """Within three days: common practice."""
    mould(medal, FIRST, "M-1")

    assert bool(advice(report(medal, day, signed=False))) is is_late
