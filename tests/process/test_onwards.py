"""Each page leads on to the next: mould to plan, plan to rail, shell to making-up, mark to inspection."""

import pytest
from django.urls import reverse

from records import models
from tests.factories import (
    make_bath,
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
    make_shell,
    make_user,
)

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


def _page(client, item: models.Item) -> str:
    return client.get(item.get_absolute_url()).content.decode()


def _home(client) -> str:
    return client.get(reverse("home")).content.decode()


def test_mould_with_a_pull_left_leads_to_a_plan(conservator):
    assert "Plan a run with it" in _page(conservator, make_mould(number="M-1").item)
    assert "Plan a run with it" not in _page(conservator, make_mould(number="M-2", pulls_allowed_count=0).item)


def test_plan_takes_over_what_was_specified_for_the_mould(conservator):
    medal = make_item()
    commission = make_commission(originals=[medal])
    models.Specification.objects.create(
        commission=commission, item=medal, technique="hollow", thickness_mean_mm=0.6, thickness_min_mm=0.25
    )
    make_mould(medal, "M-1", commission=commission)
    bath = make_bath()

    form = conservator.get(reverse("run_add"), {"mould": "M-1"}).context["form"]

    assert form["planned_thickness_mm"].value() == 0.6
    assert form["commission"].value() == commission.number
    assert form["bath"].value() == bath.number


def test_kept_shell_leads_to_making_up_and_a_used_one_does_not(conservator):
    shell = make_shell(number="S-1")
    assert reverse("making_up_add") + "?shell=S-1" in _page(conservator, shell.item)

    make_copy(shells=[shell], technique="uniface")
    assert "?shell=S-1" not in _page(conservator, shell.item)


def test_copy_belongs_to_the_commission_of_its_mould_if_the_run_names_none(conservator):
    shell = make_shell(number="S-1")
    commission = make_commission()
    shell.cathode.mould.commission = commission
    shell.cathode.mould.save()

    form = conservator.get(reverse("making_up_add"), {"shell": "S-1"}).context["form"]

    assert form.initial["commission"] == commission


def test_marked_copy_is_inspected_and_then_signed(conservator):
    copy = make_copy("R.2026.1")
    make_mark(copy)
    assert "Inspect R.2026.1 and sign" in _home(conservator)
    assert reverse("inspection_add", args=["R.2026.1"]) in _page(conservator, copy)

    inspection = make_inspection(copy)
    assert "Sign its inspection" in _page(conservator, copy)
    assert reverse("inspection_sign", args=[inspection.pk]) in _page(conservator, copy)


def _ready_to_mould() -> models.Item:
    """Allowed, assessed and examined."""
    medal = make_item("OVM.1")
    make_consent(medal, commission=make_commission(originals=[medal]))
    models.RiskAssessment.objects.create(
        number="RA-1", item=medal, assessed_on="2026-01-29", assessor=make_party(), surface="bronze", decision="direct",
        reason="sound", signed_by=make_party(), signed_role="conservator", signed_at="2026-01-29T09:00Z",
    )  # fmt: skip
    make_report(medal, "before")
    return medal


def test_home_leads_the_conservator_from_consent_to_mould(conservator):
    medal = make_item("OVM.1")
    commission = make_commission(originals=[medal])
    assert "OVM.1" not in _home(conservator)

    make_consent(medal, commission=commission)
    assert "Assess the risk of moulding OVM.1" in _home(conservator)

    person = make_party()
    models.RiskAssessment.objects.create(
        number="RA-1", item=medal, assessed_on="2026-01-29", assessor=person, surface="bronze", decision="direct",
        reason="sound", signed_by=person, signed_role="conservator", signed_at="2026-01-29T09:00Z",
    )  # fmt: skip
    assert "Examine OVM.1 before moulding" in _home(conservator)

    make_report(medal, "before")
    assert "Mould OVM.1, for" in _home(conservator)

    mould = make_mould(medal, "M-1")
    models.DescentLink.objects.create(source=medal, target=mould.item, transfer="moulding", happened_on="2026-02-04")
    assert "Mould OVM.1" not in _home(conservator)
    assert "Examine OVM.1 after moulding" in _home(conservator)


def test_a_side_that_a_photograph_shows_and_no_mould_has_waits_too(conservator):
    original = _ready_to_mould()
    for side in ("obverse", "reverse"):
        make_photo(original, view=side)
    mould = make_mould(original).item
    models.DescentLink.objects.create(source=original, target=mould, transfer="moulding", side="obverse")
    assert "Mould the reverse of OVM.1 too, for" in _home(conservator)

    risk = models.RiskAssessment.objects.get(item=original)
    risk.decision = "one_side"
    risk.save()

    assert "Mould the reverse" not in _home(conservator)


def test_a_piece_whose_mould_serves_is_not_moulded_again(conservator):
    medal = make_item("OVM.1")
    mould = make_mould(medal, "M-1")
    models.DescentLink.objects.create(source=medal, target=mould.item, transfer="moulding", happened_on="2025-02-04")
    make_consent(medal, commission=make_commission(originals=[medal], requested_on="2026-01-19"))

    assert "OVM.1" not in _home(conservator)


def test_a_commission_that_has_its_copies_asks_for_no_second_mould(conservator):
    medal = make_item("L.2026.003")
    commission = make_commission(originals=[medal], quantity_count=1)
    make_consent(medal, commission=commission)
    assert "L.2026.003" in _home(conservator)

    commission.copies.add(make_copy("R.2026.2"))

    assert "L.2026.003" not in _home(conservator)


def test_an_ended_consent_leads_to_nobody_touching_the_original(conservator):
    medal = make_item("L.2026.003")
    make_consent(medal, commission=make_commission(originals=[medal]), valid_to="2026-02-01")

    assert "L.2026.003" not in _home(conservator)
