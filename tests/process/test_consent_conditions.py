"""Each condition of a consent stands before the step that it concerns, with its own sentence; a concession names it."""

from datetime import timedelta
from uuid import uuid4

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from django.utils import timezone

from process.models import AreaPart, MakingUp, Mould
from process.models import Event as RunEvent
from records import clock
from records.models import UnmetGate
from tests.factories import (
    make_analysis,
    make_bath,
    make_cathode,
    make_commission,
    make_consent,
    make_copy,
    make_mould,
    make_party,
    make_run,
    make_shell,
    make_term,
    make_user,
)
from tests.process.consented import TODAY, coin, concede, conservator, refused

__all__ = ["coin", "conservator"]  # fixtures
pytestmark = pytest.mark.django_db

SILICONE = "silicone, addition cure"


def take(client, coin, **changes):
    data = {
        "number": "M-2026-03", "title": "Mould of the coin", "model": coin.number, "side": "obverse",
        "material": make_term("mould_material", SILICONE).pk, "made_on": "2026-02-25", "pulls_allowed_count": "8",
        "working_temperature_degc": "20", "working_temperature_degc_unit": "°C",
    } | changes  # fmt: skip
    return client.post(reverse("mould_add"), data)


def test_only_the_mould_materials_that_the_owner_allows(conservator, coin):
    make_consent(
        coin,
        owner=make_party("Thornwick Trust"),
        materials_barred="anything but silicone",
        materials_allowed=[SILICONE],
    )

    answer = take(conservator, coin, material=make_term("mould_material", "latex").pk)

    assert refused(answer, "Consent of Thornwick Trust, 22 January 2026", "anything but silicone", "in latex")
    assert not Mould.objects.exists()
    take(conservator, coin)
    assert Mould.objects.get().material.label == SILICONE


def test_an_excluded_mould_material(conservator, coin):
    make_consent(coin, materials_excluded=["latex"])

    assert refused(take(conservator, coin, material=make_term("mould_material", "latex").pk), "No mould of latex.")


@pytest.mark.parametrize(("degrees", "passes"), [("30", True), ("30.1", False), ("", False)])
def test_nothing_above_the_highest_temperature(conservator, coin, degrees, passes):
    """SCENARIO 3: nothing above 30 °C; a temperature that nobody wrote shows nothing."""
    make_consent(coin, temperature_max_degc=30)

    answer = take(conservator, coin, working_temperature_degc=degrees)

    assert Mould.objects.exists() == passes
    assert passes or refused(answer, "Nothing above 30 °C.")


def test_the_purpose_of_the_commission_is_one_that_the_owner_allows(conservator, coin):
    consent = make_consent(coin, purposes=["study or teaching"])
    commission = make_commission("RQ-1", originals=[coin])  # for handling

    assert refused(take(conservator, coin, commission="RQ-1"), "Only for: study or teaching.", "purpose: handling")
    consent.purposes.append(commission.purpose.label)
    consent.save()
    take(conservator, coin, commission="RQ-1")
    assert Mould.objects.exists()


def test_the_owner_or_a_conservator_is_present(conservator, coin):
    owner = make_party("Lettice Umberhay")
    make_consent(coin, owner=owner, presence_required=True)
    pell = make_user("technician", "pell").party

    assert refused(take(conservator, coin, made_by=pell.name), "present: Pell")
    take(conservator, coin, made_by=pell.name, present=owner.name)
    assert Mould.objects.get().present == owner


def test_a_conservator_who_makes_the_mould_is_present(conservator, coin):
    make_consent(coin, presence_required=True)

    take(conservator, coin, made_by=make_user("conservator", "tom").party.name)

    assert Mould.objects.exists()


def test_only_a_concession_that_names_the_condition_lets_it_pass(conservator, coin):
    make_consent(coin, temperature_max_degc=30)
    concede(coin, "consent: presence")
    assert refused(take(conservator, coin, working_temperature_degc="45"), "Nothing above 30 °C.")

    concede(coin, "consent: temperature")
    take(conservator, coin, working_temperature_degc="45")

    assert Mould.objects.get().working_temperature_degc == 45


def test_what_has_happened_against_a_condition_is_kept_as_unmet(conservator, coin):
    make_consent(coin, temperature_max_degc=30)

    take(conservator, coin, working_temperature_degc="45", afterwards="1")

    unmet = UnmetGate.objects.get()
    assert (unmet.gate, unmet.check_name) == ("G1", "consent: temperature")
    assert "Nothing above 30 °C" in unmet.sentence and "at 45 °C" in unmet.sentence


def run_with(coin, **mould):
    bath = make_bath()
    make_analysis(bath, sampled_at=clock.now() - timedelta(days=2))
    run = make_run("D-1", bath=bath)
    make_cathode(run, mould=make_mould(coin, "M-2026-03", **mould))
    return run


def start(client, run, **changes):
    data = {
        "at": f"{timezone.localtime(clock.now()):%Y-%m-%dT%H:%M}",
        "current_a": "0.08",
        "current_a_unit": "A",
        "token": uuid4(),
    } | changes
    return client.post(reverse("run_start", args=[run.number]), data)


def test_no_run_after_the_consent_has_ended(conservator, coin):
    ended = clock.today() - timedelta(days=1)
    consent = make_consent(coin, valid_to=ended)
    run = run_with(coin)

    assert refused(start(conservator, run), "In force to", "M-2026-03 goes into D-1")
    consent.valid_to = clock.today()
    consent.save()
    start(conservator, run)
    assert RunEvent.objects.filter(kind="entry").exists()


def test_no_run_in_a_mould_that_should_be_gone(conservator, coin):
    due = clock.today() - timedelta(days=1)
    make_consent(coin, mould_fate="destroy", mould_fate_by=due)
    run = run_with(coin)

    assert refused(start(conservator, run), "Moulds destroyed before a witness by")
    concede(coin, "consent: end of the moulds", on=clock.today())
    start(conservator, run)
    assert RunEvent.objects.filter(kind="entry").exists()


def test_pulls_by_the_consent_are_said_in_its_own_words(conservator, coin):
    make_consent(coin, pulls_max_count=1, owner=make_party("Thornwick Trust"))
    run = run_with(coin)
    Mould.objects.get().pulls.create(number_count=1, used_on=TODAY)

    assert refused(start(conservator, run), "1 of 1 pulls used.", "Thornwick Trust", "At most 1 pull of each mould.")


def test_a_run_off_a_mould_where_only_cores_are_allowed(conservator, coin):
    consent = make_consent(coin, techniques_allowed=["core"])
    run = run_with(coin)

    assert refused(start(conservator, run), "Only: skin on a core.")
    consent.techniques_allowed = ["core", "matrix"]
    consent.save()
    start(conservator, run)
    assert RunEvent.objects.filter(kind="entry").exists()


def make_it_up(client, shell, **changes):
    data = {
        "number": "R.2026.9", "title": "Electrotype copy", "date_words": "2026", "shells": [shell.item.number],
        "technique": "uniface", "lead_inside": "no", "join": "none", "made_up_on": "2026-02-26",
    } | changes  # fmt: skip
    return client.post(reverse("making_up_add"), data)


def test_a_making_up_in_a_technique_that_is_not_allowed(conservator, coin):
    consent = make_consent(coin, techniques_allowed=["matrix"])
    shell = make_shell(coin)

    assert refused(make_it_up(conservator, shell), "Only: matrix, a negative that is kept.", "hollow, off a mould")
    consent.techniques_allowed = ["hollow"]
    consent.save()
    make_it_up(conservator, shell)
    assert MakingUp.objects.exists()


def test_one_copy_more_than_allowed_is_refused_in_the_words_of_the_consent(conservator, coin):
    """Planted fault 7 of the scenario: a second copy of the coin."""
    make_consent(coin, copies_max_count=1, owner=make_party("Thornwick Trust"))
    make_copy(shells=[make_shell(coin)])

    assert refused(
        make_it_up(conservator, make_shell(coin)),
        "1 of 1 copy that the owner allows",
        "Thornwick Trust",
        "At most 1 copy.",
    )


FACET = "facet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 50 0 0\nvertex 0 50 0\nendloop\nendfacet\n"
SCAN = f"solid s\n{FACET}endsolid s\n".encode()


def send_scan(client, run, **changes):
    url = reverse("area_add", args=[run.cathodes.get().pk, "scan"])
    data = {"part": "face", "unit": "mm", "side": "all", "pieces_count": "1", "uncertainty_pct": "3",
            "file": SimpleUploadedFile("coin.stl", SCAN)}  # fmt: skip
    return client.post(url, data | changes)


def test_no_scan_where_the_owner_allows_none(conservator, coin):
    consent = make_consent(coin, owner=make_party("Thornwick Trust"))
    run = run_with(coin)

    assert refused(send_scan(conservator, run), "Thornwick Trust", "No scan.")
    assert not AreaPart.objects.exists()
    consent.scan_allowed = True
    consent.save()
    assert send_scan(conservator, run).status_code == 302, send_scan(conservator, run).content.decode()[-2000:]
    assert AreaPart.objects.exists()
