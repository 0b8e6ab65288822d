"""Work at the bath through its pages: anodes, filter and bags, and one line of time for everything."""

from datetime import UTC, datetime

import pytest
from django.urls import reverse
from pypdf import PdfReader

from process.models import Anode, AnodeWeighing, BathService, Reading
from records import clock
from records.models import Document
from records.services.papers import path_of
from tests.factories import make_analysis, make_bath, make_mould, make_run, make_user
from tests.process.bath_campaign import DAY, tell_of_the_campaign
from tests.process.test_baths import analysis_data

pytestmark = pytest.mark.django_db


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    return client


@pytest.fixture
def campaign():
    return tell_of_the_campaign()


def weigh_data(grams: str, **changes) -> dict:
    return {
        "weighed_at": "2026-04-02T08:30", "mass_g": grams, "mass_g_unit": "g",
        "token": "6a1f6f3e-7d5e-4a67-9a40-1d1f7d1f0001",
    } | changes  # fmt: skip


def test_an_anode_that_got_heavier_is_asked_about(technician):
    """Fault 14 of the scenario; what was typed stays."""
    anode = Anode.objects.create(bath=make_bath(), label="A1")
    AnodeWeighing.objects.create(anode=anode, weighed_at=DAY, mass_g=3836)
    url = reverse("anode_weigh", args=[anode.pk])

    asked = technician.post(url, weigh_data("4012"))

    page = asked.content.decode()
    assert asked.status_code == 422 and "An anode in use only loses" in page and 'value="4012"' in page
    assert anode.weighings.count() == 1
    said = page.split('name="it_is_so" value="')[1].split('"')[0] if 'name="it_is_so" value="' in page else ""
    assert said
    technician.post(url, weigh_data("4012", it_is_so=said))
    assert anode.weighings.count() == 2


def test_a_weighing_sent_twice_is_kept_once(technician):
    anode = Anode.objects.create(bath=make_bath(), label="A1")

    for _ in range(2):
        technician.post(reverse("anode_weigh", args=[anode.pk]), weigh_data("4012"))

    assert anode.weighings.count() == 1


def test_two_anodes_of_one_name_are_refused(technician):
    bath = make_bath("B-01")
    Anode.objects.create(bath=bath, label="A1")

    answer = technician.post(reverse("anode_add", args=["B-01"]), {"label": "A1", "is_bagged": "on"})

    assert answer.status_code == 422 and "called so already" in answer.content.decode()


def service_data(**changes) -> dict:
    return {
        "kind": "drag_out", "done_at": "2026-03-29T12:30", "volume_l": "", "volume_l_unit": "L", "mass_g": "",
        "mass_g_unit": "g", "token": "6a1f6f3e-7d5e-4a67-9a40-1d1f7d1f0002",
    } | changes  # fmt: skip


def test_work_at_the_bath_says_how_much(technician):
    bath = make_bath("B-01")
    url = reverse("service_add", args=["B-01"])

    asked = technician.post(url, service_data())
    technician.post(url, service_data(volume_l="0.5"))

    assert asked.status_code == 422 and "an estimate will do" in asked.content.decode()
    assert bath.services.get().volume_l == 0.5


def test_more_than_the_bath_holds_cannot_be_taken_out(technician):
    make_bath("B-01")

    answer = technician.post(reverse("service_add", args=["B-01"]), service_data(kind="dilution", volume_l="500"))

    assert answer.status_code == 422 and "holds 60" in answer.content.decode()


def test_weak_acid_by_volume_is_sent_back(technician):
    make_bath("B-01")
    data = {"added_at": "2026-02-09T14:00", "kind": "sulphuric_acid", "what": "acid", "volume_ml": "95",
            "volume_ml_unit": "mL", "strength_pct": "37", "strength_pct_unit": "%"}  # fmt: skip

    answer = technician.post(reverse("addition_add", args=["B-01"]), data)

    assert answer.status_code == 422 and "enter its mass" in answer.content.decode()


@pytest.mark.parametrize(("changes", "said"), [
    ({"hydrometer_be": "20", "hydrometer_be_unit": "°Bé"}, "Name the modulus"),
    ({"copper_taken_ml": "10", "copper_taken_ml_unit": "mL"}, "A dilution has two volumes"),
    ({"copper_titrant_ml": "81.46"}, "is not possible"),  # fault 13: 2034 g/L instead of 203.4
])  # fmt: skip
def test_half_a_pair_and_a_slipped_decimal_are_sent_back(technician, changes, said):
    make_bath("B-01")

    answer = technician.post(reverse("analysis_add", args=["B-01"]), analysis_data(**changes))

    assert answer.status_code == 422 and said in answer.content.decode()


def test_diary_shows_everything_on_one_line_of_time_and_exports_it(technician, campaign):
    page = technician.get(reverse("bath_diary", args=["B-01"])).content.decode()
    exported = technician.get(reverse("bath_diary", args=["B-01"]), {"kind": "anode", "export": "csv"})

    assert page.index("Analysis BA-03") < page.index("Run D-6") < page.index("Run D-1") < page.index("Analysis BA-02")
    lines = b"".join(exported.streaming_content).decode().splitlines()
    assert len(lines) == 5 and "Anode A1 weighed" in lines[-1] + lines[-2]


def test_diary_turns_its_pages_without_losing_an_entry(technician):
    bath = make_bath("B-01")
    for hour in range(60):
        BathService.objects.create(bath=bath, kind="filter", done_at=DAY, note=f"no. {hour:02d}")

    first = technician.get(reverse("bath_diary", args=["B-01"]))
    second = technician.get(reverse("bath_diary", args=["B-01"]), {"after": first.context["page"].next_key})

    shown = [entry.words for page in (first, second) for entry in page.context["page"].rows]
    assert len(shown) == len(set(shown)) == 60


def test_pages_of_the_bath_show_balance_and_order_of_work(technician, campaign):
    page = technician.get(campaign.get_absolute_url()).content.decode()
    reckoned = technician.get(reverse("bath_balance", args=["B-01", "BA-03"])).content.decode()

    assert "208.6" in page and "agrees within the error" in page and "never water into acid" in page
    assert "347" in reckoned and "c₁ = c + (Δm/w + m₁" in reckoned
    assert technician.get(reverse("bath_balance", args=["B-01", "BA-02"])).status_code == 404


@pytest.mark.parametrize(("day", "days"), [((2026, 3, 16), 34), ((2026, 3, 28), 46)])
def test_a_start_waits_for_a_new_analysis(technician, day, days):
    """Fault 12 of the scenario: BA-02 is 34 and 46 days old at two starts; 30 are allowed."""
    bath = make_bath("B-01")
    make_analysis(bath, "BA-02", sampled_at=datetime(2026, 2, 10, 8, 0, tzinfo=UTC))
    run = make_run(bath=bath, moulds=[make_mould()])
    at = datetime(*day, 17, 0, tzinfo=UTC)

    with clock.held_at(at):
        answer = technician.post(reverse("run_start", args=[run.number]), {
            "at": f"{at:%Y-%m-%dT%H:%M}", "current_a": "0.24", "current_a_unit": "A",
            "token": "6a1f6f3e-7d5e-4a67-9a40-1d1f7d1f0003",
        })  # fmt: skip

    assert answer.status_code == 422 and f"{days} days old" in answer.content.decode()
    assert not Reading.objects.exists() and not run.events.exists()


def test_work_struck_out_is_shown_in_the_diary_and_counted_no_more(technician):
    bath = make_bath("B-01")
    row = BathService.objects.create(bath=bath, kind="filter", done_at=DAY)

    technician.post(reverse("strike", args=["bath-work", row.pk]), {"reason": "that was bath B-02"})

    assert not bath.services.exists()
    assert "struck out: that was bath B-02" in technician.get(reverse("bath_diary", args=["B-01"])).content.decode()


def test_diary_is_issued_as_a_paper(technician, campaign):
    technician.post(reverse("paper_issue", args=["bath-diary", "B-01"]))

    paper = Document.objects.get()
    text = " ".join(page.extract_text() for page in PdfReader(path_of(paper)).pages)
    assert "928.27" in text and "208.6" in text and "Anode A1 weighed" in text and "never water into acid" in text
