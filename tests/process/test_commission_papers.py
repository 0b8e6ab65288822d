"""Request sheet, consent, risk assessment, work order and the return of a mould, as papers."""

from datetime import date
from io import BytesIO

import pytest
from django.urls import reverse
from pypdf import PdfReader

from records.models import Document, RiskAssessment, Specification
from records.services import papers
from tests.factories import NINE, make_commission, make_consent, make_item, make_mould, make_party, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def registrar(client):
    client.force_login(make_user("registrar"))
    return client


def asked():
    coin = make_item("L.2026.003", title="Ten-groat piece")
    commission = make_commission("RQ-2026-002", originals=[coin], requester=make_party("Odalys Finchwater"))
    owner = make_party("Thornwick Trust")
    make_consent(coin, commission=commission, owner=owner, temperature_max_degc=30, pulls_max_count=2)
    return commission, coin


def read(client, kind, number) -> str:
    client.post(reverse("paper_issue", args=[kind, number]))
    document = Document.objects.get(kind=kind, number=number)
    pages = PdfReader(BytesIO(papers.path_of(document).read_bytes())).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


def test_the_request_sheet_says_who_wants_what_and_where_each_gate_stands(registrar):
    asked()

    text = read(registrar, "request-sheet", "RQ-2026-002")

    assert "asked for by Odalys Finchwater" in text and "L.2026.003" in text
    assert "G2 risk" in text and "No signed risk assessment of L.2026.003" in text and "not passed" in text


def test_the_consent_is_printed_with_where_each_condition_is_asked(registrar):
    asked()

    text = read(registrar, "consent", "RQ-2026-002")

    assert "Thornwick Trust" in text and "Nothing above 30 °C." in text and "At most 2 pulls of each mould." in text
    assert "the moulding" in text


def test_no_consent_is_printed_where_none_is_recorded(registrar):
    make_commission("RQ-1", originals=[make_item()])

    page = registrar.post(reverse("paper_issue", args=["consent", "RQ-1"]), follow=True).content.decode()

    assert "No consent is recorded for RQ-1" in page and not Document.objects.exists()


def test_the_work_order_waits_for_a_signed_specification(registrar):
    commission, coin = asked()
    wanted = Specification.objects.create(
        commission=commission, item=coin, technique="hollow", thickness_mean_mm=0.42, thickness_min_mm=0.25,
        mark_words="COPY, obverse field",
    )  # fmt: skip
    early = registrar.post(reverse("paper_issue", args=["work-order", "RQ-2026-002"]), follow=True).content.decode()
    wanted.signed_by, wanted.signed_role, wanted.signed_at = make_party("Tobias Marrowby"), "conservator", NINE
    wanted.save()

    text = read(registrar, "work-order", "RQ-2026-002")

    assert "No signed specification of RQ-2026-002" in early
    assert "0.25" in text and "COPY, obverse field" in text and "Nothing above 30 °C." in text
    assert "Tobias Marrowby" in text


def test_the_risk_assessment_is_printed_with_what_the_rule_says(registrar):
    _, coin = asked()
    RiskAssessment.objects.create(
        number="RA-2026-02", item=coin, assessed_on=date(2026, 2, 24), assessor=make_party("Tobias Marrowby"),
        surface="silver, gilt letters", deterioration="yes", decision="refuse", reason="The gilding lifts.",
    )  # fmt: skip

    text = read(registrar, "risk-assessment", "RA-2026-02")

    assert "■ Active deterioration" in text and "The gilding lifts." in text and "May L.2026.003 be moulded?" in text


def test_the_return_of_a_mould_is_certified_before_a_witness(registrar):
    _, coin = asked()
    mould = make_mould(coin, "M-1", fate="returned", fate_on=date(2026, 4, 17))
    early = registrar.post(reverse("paper_issue", args=["mould-return", "M-1"]), follow=True).content.decode()
    mould.fate_witness = make_party("Lettice Umberhay")
    mould.save()

    text = read(registrar, "mould-return", "M-1")

    assert "The witness of the return of M-1 must be recorded first." in early
    assert "M-1 was returned on 17 April 2026 before Lettice Umberhay." in text


def test_the_commission_page_offers_its_papers(registrar):
    commission, _ = asked()

    page = registrar.get(commission.get_absolute_url()).content.decode()

    for title in ("Request sheet", "Consent", "Work order"):
        assert f'Issue<span class="unseen"> the {title.lower()}</span>' in page
