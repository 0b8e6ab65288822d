"""A commission as a file: its eight gates, where it stands, what keeps it open, closed and opened again."""

from datetime import date, timedelta

import pytest
from django.urls import reverse

from process.services.copies import accept
from records import clock
from records.models import Commission, DescentLink, Duty, FileStep, LabelWording, UnmetGate
from records.services.permissions import record_duties_of
from records.services.signing import sign
from tests.factories import (
    NINE,
    make_commission,
    make_consent,
    make_copy,
    make_inspection,
    make_item,
    make_mark,
    make_mould,
    make_party,
    make_photo,
    make_report,
    make_run,
    make_user,
)

pytestmark = pytest.mark.django_db


@pytest.fixture
def registrar(client):
    client.force_login(make_user("registrar"))
    return client


def finished(**fields) -> Commission:
    """One copy made, marked, accepted and named."""
    commission = make_commission(**fields)
    copy = make_copy(commission=commission)
    make_mark(copy)
    person = make_party()
    accept(inspection=make_inspection(copy), party=person, role="conservator", status="accessioned")
    label = LabelWording.objects.create(
        item=copy, kind_of_copy="Electrotype copy", copy_date="2026", after="after a medal"
    )
    sign(row=label, party=person, role="curator")
    return commission


def close(client, commission, **data):
    url = reverse("commission_close", args=[commission.number])
    return client.post(url, {"outcome": "fulfilled", "words": ""} | data, follow=True)


def test_the_page_shows_eight_gates_with_what_is_missing_and_who_can_supply_it(registrar):
    commission = make_commission(originals=[make_item("OVM.1931.0044")])

    page = registrar.get(commission.get_absolute_url()).content.decode()

    for gate in ("Permission", "Risk", "Condition before", "Condition after", "Bath", "Mark", "Acceptance"):
        assert f"<strong>{gate}</strong>" in page
    assert "No consent in force" in page and "Ask the registrar." in page
    assert "No run is planned for it yet." in page and "No copy is made yet." in page


def test_where_it_stands_follows_the_facts(registrar):
    medal = make_item("OVM.1931.0044")
    commission = make_commission(originals=[medal])
    asked = registrar.get(commission.get_absolute_url()).context["standing"]

    make_consent(medal, commission=commission)
    allowed = registrar.get(commission.get_absolute_url()).context["standing"]
    mould = make_item("M-1", kind="mould")
    DescentLink.objects.create(source=medal, target=mould, transfer="moulding", happened_on=date(2026, 2, 4))
    moulded = registrar.get(commission.get_absolute_url()).context["standing"]

    assert asked.words.startswith("No consent in force")
    assert allowed.words.startswith("No signed risk assessment")
    assert "after moulding states whether it changed" in moulded.words


def test_a_run_of_the_commission_stands_at_the_bath_gate(registrar):
    commission = make_commission(originals=[make_item()])
    make_run("D-1", moulds=[make_mould(commission=commission)])
    gone = make_run("D-2", commission=commission)
    gone.events.create(kind="entry", at=NINE, current_a=0.2)
    UnmetGate.objects.create(
        gate="G5", check_name="bath analysed", sentence="BA-1 is 34 days old.", subject_number="D-2", happened_on=NINE
    )

    page = registrar.get(commission.get_absolute_url()).content.decode()

    assert "has not started" in page
    assert "BA-1 is 34 days old." in page and "Recorded afterwards as unmet; it stays so." in page


def test_a_finished_file_is_closed_by_name(registrar):
    commission = finished()

    page = close(registrar, commission).content.decode()

    step = FileStep.objects.get()
    assert Commission.objects.get().closed_on == clock.today()
    assert (step.kind, step.outcome, step.role) == ("closed", "fulfilled", "registrar")
    assert "closed as fulfilled by" in page


def test_a_file_is_not_closed_while_something_is_open_and_the_list_says_what(registrar):
    commission = make_commission(originals=[make_item("OVM.1")], quantity_count=2)
    Duty.objects.create(
        sentence="Destroy the moulds", due_on=date(2026, 4, 30), role="registrar", commission=commission
    )
    make_run("D-9", commission=commission)

    answer = close(registrar, commission)

    page = answer.content.decode()
    assert answer.status_code == 422 and Commission.objects.get().closed_on is None
    for open_matter in (
        "Due by 30 April 2026: Destroy the moulds.",
        "0 of 2 copies",
        "No signed risk assessment of OVM.1",
        "How run D-9 ended is not said yet.",
    ):
        assert open_matter in page


def test_a_request_that_was_withdrawn_needs_no_copies_but_a_reason(registrar):
    commission = make_commission(originals=[make_item()])

    without = close(registrar, commission, outcome="withdrawn")
    close(registrar, commission, outcome="withdrawn", words="The show was called off.")

    assert without.status_code == 422 and "Say who withdrew or refused it" in without.content.decode()
    assert FileStep.objects.get().get_outcome_display() == "withdrawn by the requester"


def test_a_withdrawn_request_still_owes_the_original_its_report(registrar):
    medal = make_item("OVM.1")
    commission = make_commission(originals=[medal])
    DescentLink.objects.create(
        source=medal, target=make_item(kind="mould"), transfer="moulding", happened_on=date(2026, 2, 4)
    )

    answer = close(registrar, commission, outcome="withdrawn", words="Called off.")

    assert "No signed condition report of OVM.1 after moulding" in answer.content.decode()
    assert Commission.objects.get().closed_on is None


def test_a_mould_that_must_go_keeps_the_file_open(registrar):
    medal = make_item()
    commission = make_commission(originals=[medal])
    make_consent(medal, commission=commission, mould_fate="destroy", mould_fate_by=date(2026, 4, 30))
    make_mould(medal, "M-2026-03", commission=commission)

    answer = close(registrar, commission, outcome="withdrawn", words="Called off.")

    assert "Mould M-2026-03 is in store; the owner" in answer.content.decode()


def test_closing_ends_the_warning_that_a_consent_ends(registrar):
    commission = finished()
    consent = make_consent(make_item(), commission=commission, valid_to=clock.today() + timedelta(days=90))
    record_duties_of(consent=consent)

    close(registrar, commission)

    assert Commission.objects.get().closed_on and not Duty.objects.open().exists()


def test_a_closed_file_is_opened_again_with_a_reason(registrar):
    commission = finished()
    close(registrar, commission)
    url = reverse("commission_reopen", args=[commission.number])

    silent = registrar.post(url, {"words": ""})
    page = registrar.post(url, {"words": "A third copy is asked for."}, follow=True).content.decode()

    assert silent.status_code == 422
    assert Commission.objects.get().closed_on is None
    assert "opened again by" in page and "A third copy is asked for." in page and "closed as fulfilled" in page


def test_a_conservator_does_not_close_files(client):
    client.force_login(make_user("conservator"))

    assert client.get(reverse("commission_close", args=[make_commission().number])).status_code == 403


@pytest.mark.parametrize(
    ("examined", "photographed", "met", "said"),
    [
        (date(2026, 2, 3), date(2026, 2, 3), True, "with photographs"),
        (date(2026, 2, 5), date(2026, 2, 3), False, "after it"),
        (date(2026, 2, 3), date(2026, 2, 5), False, "no photographs but those taken later"),
        (date(2026, 2, 3), None, False, "no photographs but undated ones"),
    ],
)
def test_evidence_of_the_condition_before_is_dated_before_the_mould(registrar, examined, photographed, met, said):
    """Planted fault 2 of the scenario: one photograph without a date, one of after the moulding tagged “before”."""
    medal = make_item("L.2026.003")
    commission = make_commission(originals=[medal])
    report = make_report(medal, "before", number="CR-1", examined_on=examined)
    at = NINE.replace(month=photographed.month, day=photographed.day) if photographed else None
    report.photos.add(make_photo(medal, taken_at=at))
    DescentLink.objects.create(
        source=medal, target=make_item(kind="mould"), transfer="moulding", happened_on=date(2026, 2, 4)
    )

    file = registrar.get(commission.get_absolute_url()).context["file"]

    check = file.lines("G3")[0].checks[0]
    assert check.met == met and said in check.sentence


def test_an_earlier_report_holds_though_a_later_one_was_written(registrar):
    medal = make_item()
    commission = make_commission(originals=[medal])
    for number, day in (("CR-1", 3), ("CR-2", 20)):
        report = make_report(medal, "before", number=number, examined_on=date(2026, 2, day))
        report.photos.add(make_photo(medal, taken_at=NINE.replace(day=2)))
    DescentLink.objects.create(
        source=medal, target=make_item(kind="mould"), transfer="moulding", happened_on=date(2026, 2, 4)
    )

    file = registrar.get(commission.get_absolute_url()).context["file"]

    assert file.lines("G3")[0].checks[0].sentence.startswith("CR-1,")
