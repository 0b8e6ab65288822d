"""A statue of 1.67 m (5.5 ft), grown in four sections and joined: one plan, one rail, four shells, one copy.

Pieces of several metres are grown in sections and joined: common practice, no published source. All names invented.
"""

import re

import pytest
from django.urls import reverse

from process.models import PowerUnit, Run, Shell
from process.summaries.reckoned import reckon
from process.summaries.runs import summarise
from records.lineage import descent_of
from records.models import Item
from records.units import ureg
from tests.factories import make_bath, make_item, make_mould, make_user

pytestmark = pytest.mark.django_db

SECTIONS = {"legs": 52.0, "body, front": 46.0, "body, back": 48.0, "head and arms": 38.0}  # dm² in the bath
START, STOP = "2026-02-16T09:00", "2026-02-23T09:00"


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    return client


@pytest.fixture
def statue():
    return make_item("OVM.1902.0007", object_type="statue", title="Ferrywoman with oar")


def grown(client, statue) -> Run:
    """Planned and hung by the pages."""
    PowerUnit.objects.create(number="PU-7", rated_a=500, rated_v=12, resolution_a=1)
    bath = make_bath("B-07", volume_l=3000)
    moulds = [make_mould(statue, f"M-2026-2{index}", side="section") for index in range(len(SECTIONS))]
    client.post(reverse("run_add"), {
        "number": "D-2026-090", "bath": bath.number, "planned_current_density_a_dm2": "1.5", "agitation": "agitated",
        "planned_current_density_a_dm2_unit": "A/dm²", "planned_thickness_mm": "2.0", "planned_thickness_mm_unit": "mm",
        "reading_interval_h": "4", "reading_interval_h_unit": "h", "ion": "Cu2+", "planned_efficiency_pct": "98.5",
    })  # fmt: skip
    run = Run.objects.get()
    for mould, (label, area) in zip(moulds, SECTIONS.items(), strict=True):
        answer = client.post(reverse("cathode_add", args=[run.number]), {
            "label": label, "mould": mould.item.number,
            "face_area_dm2": f"{area * 0.9:g}", "total_area_dm2": f"{area:g}",
            "face_area_dm2_unit": "dm²", "total_area_dm2_unit": "dm²", "tare_g": "120", "tare_g_unit": "g",
        })  # fmt: skip
        assert answer.status_code == 302, answer.content.decode()
    return run


def test_its_height_is_what_the_books_say():
    assert ureg.Quantity(1.67, "m").m_as("ft") == pytest.approx(5.5, abs=0.03)


def test_one_plan_reckons_the_four_sections_together(technician, statue):
    """By hand: 184 dm² · 1.5 A/dm² = 276 A; 10·8.92·184·2 g = 32.8 kg; / (1.185494·0.985) = 28 112 Ah; 101.9 h."""
    run = grown(technician, statue)

    plan = reckon(Run.objects.with_sheet().get(pk=run.pk)).plan
    page = technician.get(reverse("run_plan", args=[run.number])).content.decode()

    assert plan.area.value == pytest.approx(184)
    assert plan.current.value == pytest.approx(276)
    assert plan.mass.value == pytest.approx(32826, abs=1)
    assert plan.charge.value == pytest.approx(28112, rel=1e-4)
    assert plan.time.value == pytest.approx(101.9, abs=0.05)
    for label in SECTIONS:
        assert label.capitalize() in page
    assert "blocked" not in re.findall(r"plan-checks.*?</ul>", page, re.S)[0]


def test_four_shells_of_one_run_become_one_copy_of_the_first_generation(technician, statue):
    run = grown(technician, statue)
    token = "0b0bd0f5-96b3-4d73-8a1d-0d2a1e8e9a3{}"
    started = technician.post(reverse("run_start", args=[run.number]), {
        "token": token.format(1), "at": START, "current_a": "55", "afterwards": "1", "temperature_degc": "22",
    })  # fmt: skip
    raised = technician.post(reverse("event_add", args=[run.number]) + "?kind=current", {
        "token": token.format(3), "at": "2026-02-16T10:00", "current_a": "270", "current_a_unit": "A",
    })  # fmt: skip
    stopped = technician.post(reverse("event_add", args=[run.number]) + "?kind=stop", {
        "token": token.format(2), "at": STOP, "cause": "charge",
    })  # fmt: skip
    assert [each.status_code for each in (started, raised, stopped)] == [302] * 3
    for index, (label, area) in enumerate(SECTIONS.items()):
        grams = 45145 * 1.185494 * 0.98 * area / 184 + 120  # 55 A for 1 h, 270 A for 167 h; 98 %, by area
        answer = technician.post(reverse("shell_weigh", args=[run.cathodes.get(label=label).pk]), {
            "number": f"S-8{index}", "gross_mass_g": f"{grams:.0f}", "gross_mass_g_unit": "g",
            "weighed_at": "2026-02-24T09:00", "separated_on": "2026-02-24",
        })  # fmt: skip
        assert answer.status_code == 302, answer.content.decode()

    summary = summarise(Run.objects.with_sheet().get(pk=run.pk))
    assert summary.result.efficiency.value == pytest.approx(98, abs=0.05)
    assert [each.is_uneven for each in summary.cathodes] == [False] * 4
    technician.post(reverse("run_judge", args=[run.number]), {"outcome": "good", "outcome_words": "even"})
    offered = technician.get(technician.get(run.get_absolute_url()).context["next"].url)
    assert all(f"S-8{index}" in offered.content.decode() for index in range(4))
    technician.post(reverse("making_up_add"), {
        "shells": [shell.item.number for shell in Shell.objects.all()], "technique": "joined", "lead_inside": "no",
        "join": "solder", "made_up_on": "2026-03-02", "number": "R.2026.1",
    })  # fmt: skip

    copy = Item.objects.get(number="R.2026.1")
    assert copy.making_up.shells.count() == 4
    assert descent_of(copy).lineage.generation == 1
    page = technician.get(copy.get_absolute_url()).content.decode()
    assert copy.title == "Electrotype copy: Ferrywoman with oar"
    assert all(f"S-8{index}" in page for index in range(4))
