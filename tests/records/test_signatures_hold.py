"""A signature stands under what was read; what it stands under does not change behind it."""

import pytest
from django.core.exceptions import ValidationError
from django.urls import reverse

from records.models import Commission, Document, RiskAssessment
from records.services import papers
from records.services.signing import sign
from tests.factories import make_commission, make_item, make_party, make_user

pytestmark = pytest.mark.django_db


def _risk() -> RiskAssessment:
    return RiskAssessment.objects.create(
        number="RA-2026-01", item=make_item(), assessed_on="2026-02-01", assessor=make_party(), surface="bronze",
        decision="direct", reason="stable patina",
    )  # fmt: skip


def test_a_signature_does_not_overwrite_what_was_changed_meanwhile():
    opened, changed = _risk(), RiskAssessment.objects.get()
    changed.decision = "refuse"
    changed.save()

    with pytest.raises(ValidationError, match="changed"):
        sign(row=opened, party=make_party(), role="conservator")

    assert RiskAssessment.objects.get().decision == "refuse"


def test_two_people_do_not_sign_the_same_row():
    first, second = _risk(), RiskAssessment.objects.get()
    sign(row=first, party=make_party("Ines"), role="conservator")

    with pytest.raises(ValidationError, match="Signed already by Ines"):
        sign(row=second, party=make_party("Tobias"), role="conservator")


def test_a_risk_assessment_is_signed_as_it_was_read(client):
    risk = _risk()
    client.force_login(make_user("conservator"))
    seen = risk.version
    risk.reason = "powdering"
    risk.save()

    answer = client.post(reverse("risk_sign", args=[risk.number]), {"version": seen})

    assert answer.status_code == 422 and not RiskAssessment.objects.get().is_signed


def test_a_change_of_a_list_stands_in_the_history(client):
    medal, coin = make_item("OVM.1931.0044"), make_item("L.2026.003")
    file = make_commission("RQ-2026-001", originals=[medal])
    client.force_login(make_user("registrar"))
    page = client.get(reverse("commission_edit", args=[file.number]))
    form = {name: page.context["form"][name].value() for name in page.context["form"].fields}
    form = {name: value for name, value in form.items() if value not in (None, "")}

    client.post(reverse("commission_edit", args=[file.number]), form | {"originals": coin.number})

    assert list(Commission.objects.get().originals.all()) == [coin]
    reason = Commission.history.first().history_change_reason
    assert "OVM.1931.0044" in reason and "L.2026.003" in reason


def test_papers_of_two_numbers_that_read_alike_do_not_share_a_file():
    issued = [
        papers.issue(kind="object-tag", subject=make_item(number), party=make_party(), role="registrar")
        for number in ("OVM 1", "OVM-1", "OVM–1")
    ]

    assert len({paper.path for paper in issued}) == 3
    assert Document.objects.count() == 3


def test_a_paper_that_could_not_be_recorded_leaves_no_file(monkeypatch, settings):
    def broken(*args, **kwargs):
        raise OSError("disk")

    before = set(settings.DOCUMENTS_DIR.glob("*")) if settings.DOCUMENTS_DIR.exists() else set()
    monkeypatch.setattr("records.services.papers.Document.objects.create", broken)

    with pytest.raises(OSError, match="disk"):
        papers.issue(kind="object-tag", subject=make_item("X.1"), party=make_party(), role="registrar")

    assert set(settings.DOCUMENTS_DIR.glob("*")) == before
