"""What the making tells for surveys: interrupted or not, counted from the acceptance, else from the making-up.

Source of the intervals: common practice (three months for a core, six for an interrupted piece, twelve for others).
"""

from datetime import date, timedelta

import pytest

from process.models import CareRule, Event, FinishStep, Weighing
from records.surveys import surveyed, surveys_of
from tests.everything import make_core
from tests.factories import NINE, make_copy, make_inspection, make_item, make_mould, make_report, make_term

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


def test_lead_inside_asks_for_a_look_sooner_than_the_history_of_the_piece():
    copy = make_copy(made_up_on=date(2026, 2, 20), lead_inside="yes")
    assert due(copy)[0] == date(2027, 2, 20)  # both tables say twelve months

    CareRule.objects.filter(trait="lead").first().delete()
    assert due(copy)[1].startswith("all other copies")
    CareRule.objects.create(trait="lead", sentence="No oak.", survey_months_count=4)

    assert due(copy) == (date(2026, 6, 20), "lead inside: 4 months after it was made up on 20 February 2026")


def test_after_a_report_too_the_sooner_of_the_two_tables_rules():
    """The table of histories says every 24 months, that of care every 12 for a skin of silver."""
    copy = make_copy(made_up_on=date(2026, 2, 20), lead_inside="no")
    FinishStep.objects.create(copy=copy, finish=make_term("finish", "silvered"), done_on="2026-02-22")
    report = make_report(copy, "survey", examined_on=date(2026, 9, 7))

    assert due(copy) == (date(2027, 9, 7), f"skin of silver: 12 months after {report.number}")


def test_a_core_that_never_came_to_rest_may_hold_acid_and_a_dry_one_does_not():
    copy = make_copy(made_up_on=date(2026, 2, 20), lead_inside="no")
    making_up = copy.making_up
    making_up.core = make_core(make_mould(), 2)
    making_up.save()
    report = make_report(copy, "survey", examined_on=date(2026, 6, 1))
    shell = making_up.shells.first()

    assert due(copy) == (
        date(2026, 9, 1), f"acid solution that may have stayed inside: 3 months after {report.number}",
    )  # fmt: skip
    for days, mass in ((0, 1507.2), (7, 1507.2), (14, 1507.2)):
        Weighing.objects.create(item=shell.item, kind="skin", at=NINE + timedelta(days=days), mass_g=mass)

    assert due(copy) == (date(2027, 6, 1), f"metal skin on a core: 12 months after {report.number}")


def test_a_historic_copy_with_lead_is_looked_at_by_what_its_materials_say():
    old = make_item("R.1889.7", kind="historic_copy", materials="copper shells on tin-lead solder")
    report = make_report(old, "survey", examined_on=date(2026, 6, 1))

    assert due(old) == (date(2027, 6, 1), f"lead inside: 12 months after {report.number}")
