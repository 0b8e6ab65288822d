"""Each condition of a consent stands before the step that it concerns, with its own sentence; a concession names it."""

from datetime import date, timedelta
from uuid import uuid4

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from process.models import AreaPart, MakingUp, Mould
from process.models import Event as RunEvent
from records import clock
from records.models import Duty, Item, LabelWording, UnmetGate
from records.services.permissions import give_concession
from tests.factories import (
    NINE,
    make_analysis,
    make_bath,
    make_cathode,
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
    make_run,
    make_shell,
    make_term,
    make_user,
)

pytestmark = pytest.mark.django_db

TODAY = date(2026, 2, 25)
SILICONE = "silicone, addition cure"


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator", "tobias"))
    return client


@pytest.fixture
def coin() -> Item:
    """Assessed and examined; what its owner allows is each test's matter."""
    coin = make_item("L.2026.003", title="Ten-groat piece")
    coin.risk_assessments.create(
        number="RA-1", assessed_on=TODAY, assessor=make_party(), surface="silver", decision="direct", reason="sound",
        signed_at=NINE, signed_role="conservator", signed_by=make_party(),
    )  # fmt: skip
    make_report(coin, "before", examined_on=TODAY).photos.add(make_photo(coin, taken_at=NINE))
    make_report(coin, "after", examined_on=TODAY, change="no_change")
    return coin


def take(client, coin, **changes):
    data = {
        "number": "M-2026-03", "title": "Mould of the coin", "model": coin.number, "side": "obverse",
        "material": make_term("mould_material", SILICONE).pk, "made_on": "2026-02-25", "pulls_allowed_count": "8",
        "working_temperature_degc": "20", "working_temperature_degc_unit": "°C",
    } | changes  # fmt: skip
    return client.post(reverse("mould_add"), data)


def concede(item, name, gate="G1", on=TODAY):
    return give_concession(
        gate=gate, check_names=[name], items=[item], given_by=make_party(), role="conservator",
        reason="agreed by letter", given_on=on,
    )  # fmt: skip


def refused(answer, *words) -> bool:
    page = answer.content.decode()
    assert answer.status_code == 422 and all(each in page for each in words), page[-3000:]
    return True


def test_only_the_mould_materials_that_the_owner_allows(conservator, coin):
    consent = make_consent(coin, owner=make_party("Thornwick Trust"), materials_barred="anything but silicone")
    consent.materials_allowed.add(make_term("mould_material", SILICONE))

    answer = take(conservator, coin, material=make_term("mould_material", "latex").pk)

    assert refused(answer, "Consent of Thornwick Trust, 22 January 2026", "anything but silicone", "in latex")
    assert not Mould.objects.exists()
    take(conservator, coin)
    assert Mould.objects.get().material.label == SILICONE


def test_an_excluded_mould_material(conservator, coin):
    make_consent(coin).materials_excluded.add(make_term("mould_material", "latex"))

    assert refused(take(conservator, coin, material=make_term("mould_material", "latex").pk), "No mould of latex.")


@pytest.mark.parametrize(("degrees", "passes"), [("30", True), ("30.1", False), ("", False)])
def test_nothing_above_the_highest_temperature(conservator, coin, degrees, passes):
    """SCENARIO 3: nothing above 30 °C; a temperature that nobody wrote shows nothing."""
    make_consent(coin, temperature_max_degc=30)

    answer = take(conservator, coin, working_temperature_degc=degrees)

    assert Mould.objects.exists() == passes
    assert passes or refused(answer, "Nothing above 30 °C.")


def test_the_purpose_of_the_commission_is_one_that_the_owner_allows(conservator, coin):
    consent = make_consent(coin)
    consent.purposes.add(make_term("purpose", "study or teaching"))
    commission = make_commission("RQ-1", originals=[coin])  # for handling

    assert refused(take(conservator, coin, commission="RQ-1"), "Only for: study or teaching.", "for handling")
    consent.purposes.add(commission.purpose)
    take(conservator, coin, commission="RQ-1")
    assert Mould.objects.exists()


def test_the_owner_or_a_conservator_is_present(conservator, coin):
    owner = make_party("Lettice Umberhay")
    make_consent(coin, owner=owner, presence_required=True)
    pell = make_user("technician", "pell").party

    assert refused(take(conservator, coin, made_by=pell.pk), "present: Pell")
    take(conservator, coin, made_by=pell.pk, present=owner.pk)
    assert Mould.objects.get().present == owner


def test_a_conservator_who_makes_the_mould_is_present(conservator, coin):
    make_consent(coin, presence_required=True)

    take(conservator, coin, made_by=make_user("conservator", "tom").party.pk)

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
    data = {"at": f"{clock.now():%Y-%m-%dT%H:%M}", "current_a": "0.08", "current_a_unit": "A", "token": uuid4()} | changes
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
        "number": "R.2026.9", "title": "Electrotype copy", "date_words": "2026", "shells": [shell.pk],
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

    assert refused(make_it_up(conservator, make_shell(coin)), "1 of 1 copies", "Thornwick Trust", "At most 1 copy.")


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


def ready(coin, commission=None):
    copy = make_copy("R.2026.2", shells=[make_shell(coin)], commission=commission)
    make_mark(copy)
    return make_inspection(copy)


def accept(client, inspection, status):
    return client.post(reverse("inspection_sign", args=[inspection.pk]), {"status": status})


def test_a_copy_is_not_held_for_sale_against_the_owner(conservator, coin):
    consent = make_consent(coin, owner=make_party("Thornwick Trust"))
    inspection = ready(coin)

    assert refused(accept(conservator, inspection, "for_sale"), "Thornwick Trust", "No sale.")
    consent.sale_allowed = True
    consent.save()
    accept(conservator, inspection, "for_sale")
    assert Item.objects.get(number="R.2026.2").status == "for_sale"


def test_an_accepted_copy_does_not_become_one_for_sale_by_correction(conservator, coin):
    make_consent(coin)
    accept(conservator, ready(coin), "accessioned")
    copy = Item.objects.get(number="R.2026.2")
    page = conservator.get(reverse("item_edit", args=[copy.number])).context["form"]
    data = {name: page[name].value() or "" for name in page.fields} | {"status": "for_sale"}

    answer = conservator.post(reverse("item_edit", args=[copy.number]), data)
    assert refused(answer, "No sale.", "R.2026.2 is held for sale")
    concede(copy, "consent: sale", on=clock.today())
    conservator.post(reverse("item_edit", args=[copy.number]), data)

    copy.refresh_from_db()
    assert copy.status == "for_sale"


def test_an_exchange_is_a_purpose(conservator, coin):
    consent = make_consent(coin)
    consent.purposes.add(make_term("purpose", "display surrogate"))

    assert refused(accept(conservator, ready(coin), "exchange"), "Only for: display surrogate.", "for exchange")


def test_conditions_bind_the_copy_after_the_consent_has_ended(conservator, coin):
    make_consent(coin, valid_to=date(2026, 3, 31))

    with clock.held_at(NINE.replace(year=2027)):
        assert refused(accept(conservator, ready(coin), "for_sale"), "No sale.")


def test_a_consent_for_another_commission_does_not_bind(conservator, coin):
    make_consent(coin, commission=make_commission(originals=[coin]))
    mine = make_commission(originals=[coin])
    make_consent(coin, commission=mine, sale_allowed=True)

    accept(conservator, ready(coin, commission=mine), "for_sale")

    assert Item.objects.get(number="R.2026.2").status == "for_sale"


def test_the_prescribed_words_of_a_label_need_a_concession_by_name(client, coin):
    client.force_login(make_user("curator"))
    make_consent(coin, label_wording="The label must begin “Electrotype copy”.")
    copy = ready(coin).copy
    label = LabelWording.objects.create(
        item=copy, kind_of_copy="Galvanoplastic copy", copy_date="2026", after="after a ten-groat piece, 1624"
    )

    without = client.post(reverse("label_approve", args=[copy.number]), {"version": label.version})
    assert "prescribes: The label must begin" in without.content.decode()
    concede(copy, "consent: label wording", gate="G8", on=clock.today())
    after = client.post(reverse("label_approve", args=[copy.number]), {"version": label.version}, follow=True)

    assert "prescribes:" not in after.content.decode()


def test_the_consent_says_where_each_condition_bites(conservator, coin):
    consent = make_consent(coin, temperature_max_degc=30, pulls_max_count=2)

    page = conservator.get(consent.get_absolute_url()).content.decode()

    assert "Nothing above 30 °C." in page and "At most 2 pulls of each mould." in page and "a scan that is sent" in page


def test_a_material_cannot_be_both_allowed_and_excluded(client, coin):
    client.force_login(make_user("registrar"))
    latex, owner = make_term("mould_material", "latex").pk, make_party().pk
    data = {"owner": owner, "given_by": owner, "given_on": "2026-01-22", "valid_from": "2026-01-22", "items": [coin.pk],
            "mould_fate": "keep", "materials_allowed": [latex], "materials_excluded": [latex]}  # fmt: skip

    answer = client.post(reverse("consent_add", args=[make_commission(originals=[coin]).number]), data)

    assert "latex cannot be both allowed and excluded" in answer.content.decode()


@pytest.mark.parametrize(
    ("days", "words"), [(12, "in 12 days"), (1, "tomorrow"), (0, "today"), (-1, "1 day late"), (-9, "9 days late")]
)
def test_dated_duties_count_down_on_the_home_page(client, days, words):
    client.force_login(make_user("registrar"))
    due = clock.today() + timedelta(days=days)
    Duty.objects.create(sentence="Destroy the moulds", due_on=due, role="registrar")

    assert f"{due.day} {due:%b %Y}, {words}" in client.get(reverse("home")).content.decode()
