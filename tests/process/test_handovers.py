"""A copy in other hands: it leaves marked, accepted, labelled and certified, and comes back compared."""

from datetime import date, timedelta

import pytest
from django.core.exceptions import ValidationError

from records.gates import GateClosed
from records.models import Handover, Item, ProvenanceEvent, UnmetGate
from records.services.handovers import agree, call_off, hand_over, take_back
from records.services.papers import issue, path_of
from records.services.permissions import give_concession
from tests.factories import (
    make_consent,
    make_handover,
    make_party,
    make_place,
    make_term,
)
from tests.pdf import reading
from tests.process.leaving_copies import certify, copy, marked

__all__ = ["copy", "marked"]  # fixtures

pytestmark = pytest.mark.django_db
TODAY = date(2026, 2, 28)


def going(copy, **fields) -> Handover:
    """About to be handed over: the columns that the form fills."""
    row = make_handover(copy, **fields)
    row.out_on, row.handed_by, row.mass_out_g, row.condition_out = TODAY, make_party(), 64.71, "sound"
    row.receiver, row.acknowledged_on = "A. Receiver", TODAY
    return row


def test_a_copy_is_lent_and_the_loan_stands_in_its_history(marked):
    certify(marked)

    hand_over(handover=going(marked, purpose="an exhibition"))

    told = ProvenanceEvent.objects.get(item=marked)
    assert told.what == "lent: an exhibition, to 30 March 2026" and told.date_earliest == TODAY
    assert Item.objects.get(pk=marked.pk).status == Item.Status.ACCESSIONED


@pytest.mark.parametrize("kind", Handover.Kind.values)
def test_an_unmarked_copy_never_leaves_whatever_was_conceded(copy, kind):
    certify(copy)

    with pytest.raises(ValidationError, match="An unmarked copy does not leave the house"):
        hand_over(handover=going(copy, kind=kind, due_on=None))


def test_what_left_unmarked_all_the_same_is_kept_as_unmet(copy):
    certify(copy)

    hand_over(handover=going(copy), afterwards=True)

    assert UnmetGate.objects.get(check_name="permanent mark").subject_number == "R.2026.1"


def test_no_copy_is_lent_without_its_certificate_nor_before_its_acceptance(marked):
    with pytest.raises(GateClosed, match=r"No certificate of reproduction of R.2026.1 is issued"):
        hand_over(handover=going(marked))

    certify(marked)
    marked.inspections.all().delete()
    with pytest.raises(GateClosed, match="no signed inspection"):
        hand_over(handover=going(Item.objects.get(pk=marked.pk)))


def test_a_finisher_gets_a_copy_that_is_marked_and_not_yet_accepted(marked):
    marked.inspections.all().delete()

    row = hand_over(handover=going(marked, kind="finisher", acknowledged_on=None))

    assert row.is_out and not ProvenanceEvent.objects.exists()


def test_a_sale_that_the_consent_bars_is_refused_and_a_named_concession_lets_it_pass(marked):
    model = Item.objects.get(number="OVM.1931.0044")
    make_consent(model, owner=make_party("Almshouse Trust"), sale_allowed=False, conditions="No sale, no second copy.")
    certify(marked)
    sale = {"kind": "sale", "due_on": None, "price_money": 200.0, "currency": "EUR"}

    with pytest.raises(GateClosed, match=r"Consent of Almshouse Trust.*“No sale.”.*R.2026.1 goes to .* for sale"):
        agree(handover=Handover(**facts(marked) | sale))

    give_concession(
        gate="G1", check_names=["consent: sale"], items=[marked], given_by=make_party(), role="registrar",
        reason="the Trust agreed by letter", given_on=TODAY - timedelta(days=30),
    )  # fmt: skip
    row = agree(handover=Handover(**facts(Item.objects.get(pk=marked.pk)) | sale))
    assert row.pk


@pytest.mark.parametrize("kind", ["loan", "gift", "exchange"])
def test_what_a_copy_serves_as_elsewhere_is_asked_of_the_consents(marked, kind):
    make_consent(Item.objects.get(number="OVM.1931.0044"), purposes=["display surrogate", "exchange"])
    teaching, surrogate = make_term("purpose", "study or teaching"), make_term("purpose", "display surrogate")
    due = {"due_on": date(2026, 3, 30) if kind == "loan" else None}

    with pytest.raises(GateClosed, match=r"Only for: display surrogate; exchange.*; purpose: study or teaching"):
        agree(handover=Handover(**facts(marked, kind=kind, serves=teaching) | due))

    assert agree(handover=Handover(**facts(marked, kind=kind, serves=surrogate) | due)).pk


def test_a_finisher_has_no_use_of_it_and_no_consent_is_asked(marked):
    make_consent(Item.objects.get(number="OVM.1931.0044"), purposes=["display surrogate"])

    assert agree(handover=Handover(**facts(marked, kind="finisher", described_as=""))).pk


def test_what_was_allowed_when_it_was_agreed_is_asked_again_when_it_goes(marked):
    certify(marked)
    row = going(marked, serves=make_term("purpose", "study or teaching"))
    make_consent(Item.objects.get(number="OVM.1931.0044"), purposes=["display surrogate"])

    with pytest.raises(GateClosed, match="purpose: study or teaching"):
        hand_over(handover=row)


def facts(copy, **fields):
    return {
        "number": "H-2026-900", "item": copy, "party": make_party(), "kind": "loan", "purpose": "an exhibition",
        "described_as": "Electrotype copy, 2026", "agreed_on": date(2026, 2, 10), "due_on": date(2026, 3, 30),
    } | fields  # fmt: skip


def test_a_sale_that_the_consent_allows_changes_owner_and_place(marked):
    make_consent(Item.objects.get(number="OVM.1931.0044"), sale_allowed=True)
    certify(marked)
    buyer = make_party("A Buyer")

    hand_over(handover=going(marked, kind="sale", due_on=None, price_money=200, currency="EUR", party=buyer))

    gone = Item.objects.get(pk=marked.pk)
    assert (gone.status, gone.owner, gone.place) == ("left", buyer, None)
    assert ProvenanceEvent.objects.get().what.startswith("sold")


@pytest.mark.parametrize("words", ["original medal", "Portrait medal of 1624", "Replica"])
def test_a_receiver_who_takes_it_for_the_original_is_denied(marked, words):
    """SCENARIO 12, fault 11: R.2026.1 is asked for as “original medal”."""
    with pytest.raises(ValidationError, match="Begin with “Electrotype copy”"):
        agree(handover=Handover(**facts(marked, described_as=words)))


def test_one_copy_is_in_one_pair_of_hands(marked):
    certify(marked)
    hand_over(handover=going(marked, party=make_party("First Borrower")))

    with pytest.raises(ValidationError, match=r"with First Borrower .*take it back first"):
        hand_over(handover=going(Item.objects.get(pk=marked.pk)))


def test_what_was_destroyed_or_has_left_is_not_handed_over(marked):
    marked.status = Item.Status.LEFT
    with pytest.raises(ValidationError, match="not here to be given"):
        agree(handover=Handover(**facts(marked)))


def test_back_in_the_house_it_stands_where_it_was_put(marked):
    certify(marked)
    row = hand_over(handover=going(marked))
    row.back_on, row.taken_back_by, row.mass_back_g, row.change = TODAY, make_party(), 64.71, "none"

    take_back(handover=row, place=make_place("Case 7"))

    assert not row.is_out and str(Item.objects.get(pk=marked.pk).place) == "Case 7"


def test_what_is_called_off_stays_on_record_and_cannot_be_handed_over(marked):
    row = call_off(handover=make_handover(marked), because="the show is cancelled")
    assert row.called_off_because and not Handover.objects.agreed().exists()

    with pytest.raises(ValidationError, match="take it back instead"):
        call_off(handover=going(marked), because="no")


def test_the_papers_of_a_loan_name_receiver_limits_and_masses(copy):
    give_concession(
        gate="G7", check_names=["inspected"], items=[copy], given_by=make_party(), role="conservator",
        reason="layers part", limits_of_use="Display only, no handling",
    )  # fmt: skip
    certify(copy)
    row = going(copy, party=make_party("Town Gallery"), terms="Not above 50 % humidity.")
    row.save()

    loan, receipt = (
        " ".join(reading.text(path_of(paper).read_bytes()).split())
        for paper in (
            issue(kind="loan-paper", subject=row, party=make_party(), role="registrar"),
            issue(kind="acknowledgement", subject=copy, party=make_party(), role="registrar"),
        )
    )

    for said in ("A copy on loan, not an original work", "Town Gallery", "64.71", "Display only, no handling",
                 "Not above 50 % humidity.", "A. Receiver", "Given back",
                 "This is a copy: Electrotype copy, 2026"):  # fmt: skip
        assert said in loan
    for said in ("Town Gallery", "A. Receiver", "an exhibition", "28 February 2026", "Display only, no handling"):
        assert said in receipt


def test_an_unmarked_copy_gets_no_custody_paper(copy):
    copy.marks.all().delete()
    copy.concessions.all().delete()
    row = make_handover(Item.objects.get(pk=copy.pk), kind="finisher")

    with pytest.raises(ValidationError, match="does not leave the house"):
        issue(kind="custody-paper", subject=row, party=make_party(), role="registrar")
