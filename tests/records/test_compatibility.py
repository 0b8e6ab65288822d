"""Surfaces and mould materials: the museum's table, and what it says of an assessment."""

from datetime import date

import pytest
from django.urls import reverse

from records.compatibility import remarks
from records.models import Compatibility, RiskAssessment, Term
from records.seeding import ensure_compatibility, ensure_vocabulary
from tests.factories import make_item, make_party, make_user

pytestmark = pytest.mark.django_db

BRONZE = "sound bronze or brass, lacquered or with a stable patina"
CHLORIDE = "archaeological copper alloy, or any chloride"
GILT = "gilt, silvered, niello or enamel"


@pytest.fixture
def conservator(client):
    ensure_vocabulary()
    ensure_compatibility()
    client.force_login(make_user("conservator"))
    return client


def assess(client, *surfaces, material="silicone, addition cure", **changes):
    """Sent through the page; the number of the assessment is RA-1."""
    item = make_item()
    data = {
        "number": "RA-1", "assessed_on": "2026-02-02", "assessor": make_party("Tobias").name, "surface": "as seen",
        "surfaces": surfaces, "deterioration": "no", "decision": "direct", "reason": "sound",
        "mould_material": Term.objects.get(scheme="mould_material", label=material).pk,
    } | changes  # fmt: skip
    return client.post(reverse("risk_add", args=[item.number]), data, follow=True)


@pytest.mark.parametrize(
    ("surface", "material", "verdict"),
    [
        (BRONZE, "silicone, addition cure", "usual"),
        (BRONZE, "latex", "avoid"),
        (CHLORIDE, "silicone, condensation cure", "avoid"),
        (CHLORIDE, "printed master from a scan", "usual"),
        (GILT, "silicone, addition cure", "after_test"),
        ("wood block", "wax mixture", "after_test"),
        ("metal printing plate", "gutta-percha", "usual"),
        ("paint or pigment on anything", "alginate", "avoid"),
        ("silver, sound", "polyurethane", "avoid"),
    ],
)
def test_a_new_register_starts_with_the_common_table(conservator, surface, material, verdict):
    """Common practice, from memory; each row says so itself."""
    row = Compatibility.objects.get(surface__label=surface, material__label=material)

    assert row.verdict == verdict and "from memory" in row.source


def test_a_table_that_the_museum_has_begun_is_left_alone(conservator):
    row = Compatibility.objects.first()
    row.verdict = "avoid"
    row.save()
    count = Compatibility.objects.count()

    ensure_compatibility()

    row.refresh_from_db()
    assert (Compatibility.objects.count(), row.verdict) == (count, "avoid")


def test_what_is_usual_is_decided_without_more_words(conservator):
    page = assess(conservator, BRONZE).content.decode()

    assert RiskAssessment.objects.exists()
    assert "silicone, addition cure on sound bronze or brass" in page and "usual, with care" in page


@pytest.mark.parametrize(
    ("surfaces", "changes", "words"),
    [
        ([CHLORIDE], {}, "avoid."),
        ([BRONZE, CHLORIDE], {}, "avoid."),
        ([GILT], {}, "No patch is recorded. No barrier is named."),
        ([GILT], {"test_patch": "edge", "patch_result": "failed", "barrier": "wax"}, "The patch failed."),
        ([BRONZE], {"deterioration": "yes"}, "Active deterioration: contact is refused"),
        ([BRONZE], {"porosity_count": "2"}, "only through a barrier that passed a test"),
        ([BRONZE], {"undercut_count": "3", "material": "plaster", "test_patch": "edge", "patch_result": "passed",
                    "barrier": "wax"}, "Deep undercuts and a rigid mould"),
    ],
)  # fmt: skip
def test_contact_against_the_table_or_the_rule_is_sent_back(conservator, surfaces, changes, words):
    answer = assess(conservator, *surfaces, **changes)

    assert answer.status_code == 422 and words in answer.content.decode()
    assert not RiskAssessment.objects.exists()


def test_refusing_or_another_way_needs_no_more_words(conservator):
    assess(conservator, CHLORIDE, deterioration="yes", decision="refuse")

    assert RiskAssessment.objects.get().decision == "refuse"


def test_a_patch_that_passed_with_a_barrier_lets_it_be_touched(conservator):
    assess(conservator, GILT, test_patch="2 mm at the edge", patch_result="passed", barrier="sublimating wax")

    risk = RiskAssessment.objects.get()
    assert [remark.state for remark in remarks(risk)] == ["done"]


def test_who_decides_against_the_rule_says_why_and_it_stands_at_the_gate(conservator):
    page = assess(
        conservator, BRONZE, deterioration="yes", all_the_same="The bronze is to be scrapped."
    ).content.decode()

    assert "The bronze is to be scrapped." in page
    conservator.post(reverse("risk_sign", args=["RA-1"]))
    assert RiskAssessment.objects.get().is_signed


def test_an_older_assessment_against_the_rule_is_not_signed(conservator):
    risk = RiskAssessment.objects.create(
        number="RA-9", item=make_item(), assessed_on=date(2026, 2, 2), assessor=make_party(), surface="bronze",
        deterioration="yes", decision="direct", reason="sound",
    )  # fmt: skip

    answer = conservator.post(reverse("risk_sign", args=[risk.number]))

    assert answer.status_code == 422 and "Active deterioration" in answer.content.decode()


def test_the_museum_edits_its_table(conservator):
    row = Compatibility.objects.get(surface__label=GILT, material__label="latex")
    data = {
        "surface": row.surface_id,
        "material": row.material_id,
        "verdict": "after_test",
        "words": "own trial of May",
        "source": "tested here, 4 May 2026",
        "version": row.version,
    }

    conservator.post(reverse("compatibility_edit", args=[row.pk]), data)
    page = conservator.get(reverse("compatibility_list")).content.decode()

    assert "own trial of May" in page and "tested here, 4 May 2026" in page
