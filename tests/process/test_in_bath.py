"""What is done in a bath: not before it stood there, not more than it holds, and named by what was chosen."""

from datetime import date

import pytest
from django.urls import reverse

from process.models import BathAddition
from process.seeding import ensure_ranges
from tests.factories import make_bath, make_mould, make_run, make_user
from tests.process.test_baths import analysis_data
from tests.process.test_sheet import line

pytestmark = pytest.mark.django_db
SALT = {"kind": "copper_sulphate", "mass_g": "396", "mass_g_unit": "g", "added_at": "2026-02-09T14:00"}


@pytest.fixture
def bath(client):
    """60 L, as in SCENARIO 6."""
    ensure_ranges()
    client.force_login(make_user("technician"))
    return make_bath("B-01", made_up_on=date(2025, 9, 15), volume_l=60)


def test_what_was_chosen_names_the_substance(client, bath):
    answer = client.post(reverse("addition_add", args=["B-01"]), SALT)
    unnamed = client.post(reverse("addition_add", args=["B-01"]), SALT | {"kind": "additive"})

    assert answer.status_code == 302 and BathAddition.objects.get().what == "copper sulphate pentahydrate"
    assert unnamed.status_code == 422 and "Say what was added" in unnamed.content.decode()


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"mass_g_unit": "kg"}, "396000.00 g in 60.0 L would be 6600.0 g/L more"),
        ({"mass_g": "", "volume_ml": "95.4", "volume_ml_unit": "L"}, "The bath holds 60.0 L at its mark"),
    ],
)
def test_more_than_the_bath_can_take_is_refused(client, bath, changes, words):
    page = client.post(reverse("addition_add", args=["B-01"]), SALT | changes)

    assert page.status_code == 422 and not BathAddition.objects.exists()
    assert words in page.content.decode().replace("\u2009", " ").replace("396,000", "396000").replace("6,600", "6600")


EARLY = "B-01 was made up on 15 September 2025"


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("addition_add", SALT | {"added_at": "2025-09-14T14:00"}),
        ("service_add", {"kind": "filter", "done_at": "2025-09-14T14:00"}),
        ("analysis_add", analysis_data(sampled_at="2025-09-14T14:00")),
        ("throw_test_add", {"tested_on": "2025-09-14"}),
    ],
)
def test_nothing_is_done_in_a_bath_before_it_was_made_up(client, bath, name, typed):
    page = client.post(reverse(name, args=["B-01"]), typed)

    assert page.status_code == 422 and EARLY in page.content.decode()


def test_nothing_goes_into_a_bath_before_it_was_made_up(client, bath):
    run = make_run("D-1", bath=bath, moulds=[make_mould(made_on=date(2025, 9, 1))])

    page = client.post(reverse("run_start", args=[run.number]), line("2025-09-14T09:00", "0.24"))

    assert page.status_code == 422 and EARLY in page.content.decode() and not run.events.exists()
