"""A copy in other hands: it leaves marked, accepted, labelled and certified, and comes back compared."""

from datetime import date, timedelta

import pytest
from django.core.exceptions import ValidationError
from django.urls import reverse

from records import clock
from records.gates import GateClosed
from records.models import Document, Handover, Item, Party, ProvenanceEvent, UnmetGate
from records.services.handovers import agree, call_off, hand_over, take_back
from records.services.papers import issue, path_of
from records.services.permissions import give_concession
from tests.factories import (
    NINE,
    make_consent,
    make_copy,
    make_handover,
    make_inspection,
    make_item,
    make_mark,
    make_party,
    make_place,
    make_user,
)
from tests.pdf import reading
from tests.records.test_papers import label_for

pytestmark = pytest.mark.django_db
TODAY = date(2026, 2, 28)


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

    with pytest.raises(GateClosed, match=r"Almshouse Trust.*does not allow a sale: “No sale, no second copy.”"):
        agree(handover=Handover(**facts(marked) | sale))

    give_concession(
        gate="G1", check_names=["sale allowed"], items=[marked], given_by=make_party(), role="registrar",
        reason="the Trust agreed by letter", given_on=TODAY - timedelta(days=30),
    )  # fmt: skip
    row = agree(handover=Handover(**facts(Item.objects.get(pk=marked.pk)) | sale))
    assert row.pk


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


class TestPages:
    @pytest.fixture
    def registrar(self, client):
        client.force_login(make_user("registrar", "ines"))
        return client

    def agreed(self, **more):
        return {
            "number": "H-2026-001", "kind": "loan", "party": "Town Gallery", "purpose": "an exhibition",
            "agreed_on": clock.today(), "due_on": clock.today() + timedelta(days=30),
            "described_as": "Electrotype copy, 2026",
        } | more  # fmt: skip

    def handed(self, row, **more):
        return {
            "out_on": clock.today(), "handed_by": Party.objects.get(name="Ines").pk, "condition_out": "sound",
            "mass_out_g": "64.71", "mass_out_g_unit": "g", "mass_out_g_kind": "measured", "receiver": "A. Receiver",
            "acknowledged_on": clock.today(), "version": row.version,
        } | more  # fmt: skip

    def test_a_loan_from_agreement_to_return(self, registrar, marked):
        make_party("Town Gallery", kind="institution")
        certify(marked)

        answer = registrar.post(reverse("handover_add", args=["R.2026.1"]), self.agreed())
        row = Handover.objects.get()
        assert answer.status_code == 302 and answer["Location"] == row.get_absolute_url()
        assert "Hand R.2026.1 to Town Gallery, loan" in registrar.get("/").content.decode()

        answer = registrar.post(reverse("handover_out", args=[row.number]), self.handed(row))
        assert answer.status_code == 302, answer.context["form"].errors
        row.refresh_from_db()
        assert row.mass_out_g == 64.71 and row.receiver == "A. Receiver"
        assert "out, due back" in registrar.get(reverse("item", args=["R.2026.1"])).content.decode()

        back = {
            "back_on": clock.today(), "taken_back_by": row.handed_by_id, "condition_back": "scratched at 3 h",
            "mass_back_g": "64.31", "mass_back_g_unit": "g", "mass_back_g_kind": "measured", "change": "none",
            "version": row.version,
        }  # fmt: skip
        refused = registrar.post(reverse("handover_back", args=[row.number]), back)
        assert refused.status_code == 422 and "correct one of the two" in refused.content.decode()
        assert "scratched at 3 h" in refused.content.decode()
        assert (
            registrar.post(reverse("handover_back", args=[row.number]), back | {"change": "changed"}).status_code == 302
        )
        row.refresh_from_db()
        assert row.back_on == clock.today() and row.change == "changed"

    def test_an_unmarked_copy_does_not_leave_through_the_page(self, registrar, copy):
        certify(copy)
        row = make_handover(copy, due_on=clock.today() + timedelta(days=9))

        answer = registrar.post(reverse("handover_out", args=[row.number]), self.handed(row))

        assert answer.status_code == 422 and "does not leave the house" in answer.content.decode()
        assert Handover.objects.get().out_on is None

    def test_a_closed_gate_names_the_concession_that_could_pass_it(self, registrar, marked):
        row = make_handover(marked, due_on=clock.today() + timedelta(days=9))

        answer = registrar.post(reverse("handover_out", args=[row.number]), self.handed(row))

        assert answer.status_code == 422 and "No certificate of reproduction" in answer.content.decode()
        registrar.post(reverse("handover_out", args=[row.number]), self.handed(row, afterwards="1"))
        assert Handover.objects.get().out_on and UnmetGate.objects.filter(check_name="certificate issued").exists()

    @pytest.mark.parametrize(
        ("more", "said"),
        [
            ({"due_on": ""}, "nobody asks for it"),
            ({"kind": "gift"}, "nothing comes back"),
            ({"kind": "sale", "due_on": ""}, "A sale has its price"),
            ({"described_as": ""}, "beginning with the kind of copy"),
            ({"described_as": "The original medal"}, "Begin with “Electrotype copy”"),
            ({"value_money": "900", "value_money_unit": "¤"}, "what the sum is in"),
            ({"value_money": "-1", "value_money_unit": "¤"}, "greater than or equal to 0"),
            ({"value_money": "1e12", "value_money_unit": "¤"}, "less than or equal to 10000000"),
            ({"party": "Nobody"}, "Nobody"),
            ({"agreed_on": "2099-01-01"}, "has not come yet"),
        ],
    )
    def test_what_cannot_be_agreed_comes_back_with_what_to_do(self, registrar, marked, more, said):
        make_party("Town Gallery", kind="institution")

        answer = registrar.post(reverse("handover_add", args=["R.2026.1"]), self.agreed(**more))

        assert answer.status_code == 422 and said in answer.content.decode()
        assert not Handover.objects.exists()

    def test_what_is_overdue_stands_on_the_home_page(self, registrar, marked):
        past = clock.today() - timedelta(days=3)
        make_handover(marked, party=make_party("Town Gallery"), out_on=past, due_on=past, agreed_on=past)

        home = registrar.get("/").content.decode()

        assert "Overdue: ask for R.2026.1 back from Town Gallery" in home
        assert "overdue since" in registrar.get(reverse("handover_list")).content.decode()
        assert "R.2026.1" in registrar.get(reverse("handover_list"), {"export": "csv"}).getvalue().decode()

    def test_limits_must_have_been_told(self, registrar, marked):
        give_concession(
            gate="G7", check_names=["inspected"], items=[marked], given_by=make_party(), role="conservator",
            reason="layers part", limits_of_use="Display only, no handling",
        )  # fmt: skip
        certify(marked)
        row = make_handover(marked, due_on=clock.today() + timedelta(days=9))

        refused = registrar.post(reverse("handover_out", args=[row.number]), self.handed(row))
        assert refused.status_code == 422 and "Display only, no handling" in refused.content.decode()
        answer = registrar.post(reverse("handover_out", args=[row.number]), self.handed(row, limits_told="on"))
        assert answer.status_code == 302

    def test_handling_is_logged_in_hours(self, registrar, marked):
        who = make_party("Odalys F", kind="person")
        sent = {"happened_on": clock.today(), "time_h": "90", "time_h_unit": "min", "occasion": "touch table",
                "supervised_by": who.pk}  # fmt: skip

        assert registrar.post(reverse("handling_add", args=["R.2026.1"]), sent).status_code == 302

        assert marked.handling.get().time_h == 1.5
        assert "Handled in 1 session" in registrar.get(reverse("item", args=["R.2026.1"])).content.decode()
