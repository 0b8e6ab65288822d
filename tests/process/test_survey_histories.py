"""What the making tells for surveys: interrupted or not, counted from the acceptance, else from the making-up.

Source of the intervals: common practice (three months for a core, six for an interrupted piece, twelve for others).
"""

from datetime import date, timedelta

import pytest

from process.models import Event
from records.surveys import surveyed, surveys_of
from tests.everything import make_core
from tests.factories import NINE, make_copy, make_inspection, make_mould, make_report

pytestmark = pytest.mark.django_db


def due(copy):
    copy.status = copy.Status.ACCESSIONED
    copy.save()
    (found,) = surveys_of(surveyed().filter(pk=copy.pk))
    return found.due_on, found.because


def accept(copy, **fields):
    inspection = make_inspection(copy, **fields)
    inspection.signed_by, inspection.signed_role, inspection.signed_at = inspection.inspector, "conservator", NINE
    inspection.save()


def test_a_copy_is_looked_at_a_year_after_its_acceptance():
    copy = make_copy()
    accept(copy, inspected_on=date(2026, 2, 24))

    assert due(copy) == (date(2027, 2, 24), "all other copies: 12 months after it was accepted on 24 February 2026")


def test_until_it_is_accepted_the_making_up_counts():
    copy = make_copy(made_up_on=date(2026, 2, 20))
    make_inspection(copy, decision="rework")

    assert due(copy)[0] == date(2027, 2, 20)


def test_an_interrupted_piece_is_looked_at_after_six_months():
    copy = make_copy(made_up_on=date(2026, 2, 20))
    run = copy.making_up.shells.first().cathode.run
    Event.objects.create(run=run, kind="interruption", at=NINE + timedelta(hours=2), current_a=0.0)

    assert due(copy)[0] == date(2026, 8, 20)


def test_a_core_is_looked_at_after_three_months():
    copy = make_copy(made_up_on=date(2026, 2, 20))
    making_up = copy.making_up
    making_up.core = make_core(make_mould(), 2)
    making_up.save()

    assert due(copy)[0] == date(2026, 5, 20)


def test_the_report_of_the_acceptance_is_no_survey():
    copy = make_copy(made_up_on=date(2026, 2, 20))
    accept(copy, inspected_on=date(2026, 2, 24))
    make_report(copy, "acceptance", examined_on=date(2026, 2, 25))

    assert due(copy)[0] == date(2027, 2, 24)
