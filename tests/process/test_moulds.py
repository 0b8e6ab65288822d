"""Moulds: gates before the moulding, pulls, the lower limit rules."""

from datetime import date

import pytest
from django.urls import reverse

from process.models import Core, Mould, Pull
from process.services.moulds import pulls_allowed, use_pull
from records.models import DescentLink, Item, UnmetGate
from tests.factories import (
    NINE,
    make_consent,
    make_item,
    make_mould,
    make_party,
    make_photo,
    make_report,
    make_term,
    make_user,
)  # fmt: skip

pytestmark = pytest.mark.django_db


def posted(model: Item, **changes) -> dict:
    return {
        "number": "M-2026-01", "title": "Mould of the medal", "model": model.number, "side": "obverse",
        "material": make_term("mould_material", "silicone, addition cure").pk, "made_on": "2026-02-04",
        "pulls_allowed_count": "8", "shrinkage_pct": "-0,08", "shrinkage_pct_unit": "%",
    } | changes  # fmt: skip


def allow(model: Item) -> None:
    """Everything that stands before a mould: consent, risk, condition with a photograph."""
    make_consent(model)
    model.risk_assessments.create(
        number="RA-2026-01", assessed_on=date(2026, 2, 1), assessor=make_party(), surface="bronze", decision="direct",
        reason="stable patina", signed_at=NINE, signed_role="conservator", signed_by=make_party(),
    )  # fmt: skip
    make_report(model, "before").photos.add(make_photo(model, taken_at=NINE.replace(day=3)))


@pytest.fixture
def conservator(client):
    user = make_user("conservator")
    client.force_login(user)
    return client


def test_a_mould_is_recorded_with_its_item_and_its_descent(conservator):
    model = make_item()
    allow(model)

    conservator.post(reverse("mould_add"), posted(model))

    mould = Mould.objects.get(item__number="M-2026-01")
    assert mould.shrinkage_pct == pytest.approx(-0.08)
    assert DescentLink.objects.filter(source=model, target=mould.item, transfer="moulding", side="obverse").exists()


def test_without_consent_no_mould_is_taken_and_the_person_is_told_whom_to_ask(conservator):
    model = make_item()

    answer = conservator.post(reverse("mould_add"), posted(model))

    page = answer.content.decode()
    assert answer.status_code == 422
    assert "No consent in force" in page and "Ask the registrar" in page and "M-2026-01" in page
    assert not Mould.objects.exists() and not Item.objects.filter(number="M-2026-01").exists()


def test_what_has_happened_is_recorded_with_its_unmet_gates(conservator):
    model = make_item()

    conservator.post(reverse("mould_add"), posted(model) | {"afterwards": "1"})

    assert Mould.objects.filter(item__number="M-2026-01").exists()
    assert {row.gate for row in UnmetGate.objects.filter(subject_number="M-2026-01")} == {"G1", "G2", "G3"}


def test_a_taken_number_comes_back_with_what_was_typed(conservator):
    model = make_item()
    allow(model)
    make_item("M-2026-01", kind="mould")

    answer = conservator.post(reverse("mould_add"), posted(model, title="Obverse of the mill medal"))

    assert answer.status_code == 422
    assert "is taken" in answer.content.decode() and "Obverse of the mill medal" in answer.content.decode()


def test_an_unusual_shrinkage_is_asked_about_and_an_impossible_one_refused(conservator):
    model = make_item()
    allow(model)

    unusual = conservator.post(reverse("mould_add"), posted(model, shrinkage_pct="-5")).content.decode()
    impossible = conservator.post(reverse("mould_add"), posted(model, shrinkage_pct="-50")).content.decode()

    assert "It is so" in unusual
    assert "is not possible" in impossible


def test_the_lower_of_what_the_mould_bears_and_the_consent_allows_rules():
    model = make_item()
    make_consent(model, pulls_max_count=2)
    mould = make_mould(model, pulls_allowed_count=8)

    use_pull(mould=mould, on=date(2026, 3, 2), use=Pull.Use.DEPOSIT)

    assert (pulls_allowed(mould), mould.pulls.count()) == (2, 1)


def test_a_core_uses_a_pull_of_its_mould(conservator):
    mould = make_mould()
    make_report(mould.model, "after", change="no_change")

    conservator.post(
        reverse("core_add"),
        {
            "number": "P-2026-01",
            "title": "Core of the mask",
            "mould": mould.item.number,
            "material": "gypsum",
            "cast_on": "2026-02-10",
            "dry_mass_g": "1138.0",
            "dry_mass_g_unit": "g",
        },
    )

    core = Core.objects.get(item__number="P-2026-01")
    assert (core.pull.mould, core.pull.use, core.dry_mass_g) == (mould, Pull.Use.CAST, 1138.0)
    assert DescentLink.objects.filter(source=mould.item, target=core.item, transfer="casting").exists()


def test_destroying_a_mould_needs_its_date(conservator):
    mould = make_mould()
    data = {"material": mould.material_id, "pulls_allowed_count": 8, "fate": "destroyed", "version": mould.version}

    answer = conservator.post(reverse("mould_edit", args=[mould.item.number]), data)

    assert answer.status_code == 422 and "Say when" in answer.content.decode()


def test_mould_page_shows_its_pulls(conservator):
    mould = make_mould()
    use_pull(mould=mould, on=date(2026, 2, 11), use=Pull.Use.DEPOSIT)

    assert "Pulls: 1 of 8 used" in conservator.get(mould.item.get_absolute_url()).content.decode()


def test_mould_list_asks_few_questions_of_the_database(conservator, django_assert_max_num_queries):
    for _ in range(50):
        make_mould()

    with django_assert_max_num_queries(15):
        assert conservator.get(reverse("mould_list")).status_code == 200


def test_reader_may_not_record_a_mould(client):
    client.force_login(make_user("reader"))

    assert client.get(reverse("mould_add")).status_code == 403
