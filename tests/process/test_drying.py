"""A skinned core that drank (fault 10 of the scenario): weighed through the pages, closed too early for ever."""

import uuid
from datetime import date

import pytest
from django.urls import reverse

from process.models import CoreClosing, Run, Shell, Weighing
from process.reports.making import gather
from process.reports.opening import notices
from process.services.cores import keep_weighing
from process.services.runs import weigh
from process.summaries.drying import drying_of_shell
from process.summaries.runs import summarise
from records import clock
from records.models import Concession, Item, UnmetGate
from tests.factories import make_copy, make_party, make_user
from tests.process.scenario_runs import at, mask_run

pytestmark = pytest.mark.django_db

# Invented scenario, section 7.6: each weighing with its apparent efficiency.
CURVE = [("2026-03-30", 1512.0, 103.0), ("2026-04-03", 1509.7, 101.8), ("2026-04-07", 1508.3, 101.1),
         ("2026-04-12", 1507.3, 100.6), ("2026-04-16", 1507.2, 100.5)]  # fmt: skip
CLOSED = {"rinse_ph": 6.4, "sealed_with": "wax", "pinholes_count": 0}


@pytest.fixture
def held():
    """The day on which the demo's core was closed."""
    with clock.held_at(at("2026-04-16 15:00")):
        yield


@pytest.fixture
def skin(held) -> Shell:
    """Weighed surface-dry only."""
    run = mask_run()
    shell = Shell(gross_mass_g=1512.0, weighed_at=at("2026-03-30 10:00"))
    return weigh(cathode=run.cathodes.get(), number="S-11", shell=shell)


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


def dried(shell: Shell, *rows: tuple[str, float]) -> Shell:
    for day, mass in rows or [(day, mass) for day, mass, _ in CURVE[1:]]:
        keep_weighing(weighing=Weighing(item=shell.item, kind="skin", at=at(f"{day} 10:00"), mass_g=mass))
    return Shell.objects.select_related("item", "cathode__core__item", "making_up").get(pk=shell.pk)


def send(client, shell: Shell, when: str, mass: str, **more):
    local = at(when).strftime("%Y-%m-%dT%H:%M")
    data = {"token": str(uuid.uuid4()), "at": local, "mass_g": mass, "mass_g_unit": "g", **more}
    return client.post(reverse("weighing_add", args=[shell.item.number]), data)


def closing(shell: Shell, **fields) -> CoreClosing:
    about = {"decided_on": date(2026, 4, 16), "decision": "close", "sealed_on": date(2026, 4, 16), **CLOSED}
    return CoreClosing.objects.create(shell=shell, **about | fields)


def test_the_curve_of_the_scenario(skin):
    drying = drying_of_shell(dried(skin))

    assert [point.weighing.mass_g for point in drying.points] == [mass for _, mass, _ in CURVE]
    assert [point.efficiency.value for point in drying.points] == pytest.approx([pct for *_, pct in CURVE], abs=0.05)
    assert drying.residue.value == pytest.approx(2.9, abs=0.05) and drying.residue.kind == "estimated"
    assert (drying.code, drying.word) == ("over", "do not close")
    assert "19 April 2026" in drying.sentence  # seven days after the first of the two that agree


def test_surface_dry_at_103_percent_nobody_is_told_to_close(skin, conservator):
    pages = [skin.get_absolute_url(), reverse("run", args=["D-2026-006"]), reverse("item", args=["P-2026-01"])]
    shown = [conservator.get(page).content.decode() for page in pages]
    home = conservator.get(reverse("home")).content.decode()

    assert all("do not close" in page.lower() for page in shown)
    assert all("absorbed electrolyte" in page for page in shown[:2])
    assert "Weigh S-11 again: still drying, do not close it" in home


def test_a_weighing_is_entered_on_its_page_and_the_shell_follows(skin, conservator):
    answer = send(conservator, skin, "2026-04-03 10:00", "1509,7 ± 0,2", balance="balance 2")

    shell = Shell.objects.get(pk=skin.pk)
    assert answer.status_code == 302
    assert (shell.gross_mass_g, shell.plus_minus("gross_mass_g")) == (1509.7, 0.2)
    assert shell.history.first().history_change_reason.startswith("Weighed again: 1509.7 g")
    assert list(shell.item.weighings.values_list("mass_g", flat=True)) == [1512.0, 1509.7]


def test_a_weighing_sent_twice_is_kept_once(skin, conservator):
    token = str(uuid.uuid4())
    for _ in range(2):
        send(conservator, skin, "2026-04-03 10:00", "1509.7", token=token)

    assert skin.item.weighings.count() == 2


def test_a_slip_of_a_digit_is_asked_about_and_kept_as_typed(skin, conservator):
    answer = send(conservator, skin, "2026-04-03 10:00", "1059.7")

    assert answer.status_code == 422
    assert "far from the 1512.0" in answer.content.decode() and "1059.7" in answer.content.decode()


def test_correcting_a_weighing_needs_a_reason_and_keeps_what_stood(skin, conservator):
    shell = dried(skin)
    last = shell.item.weighings.last()
    data = {"at": "2026-04-16T10:00", "mass_g": "1507.4", "mass_g_unit": "g", "version": last.version}

    refused = conservator.post(reverse("weighing_edit", args=[last.pk]), data)
    kept = conservator.post(reverse("weighing_edit", args=[last.pk]), data | {"reason": "misread"})

    assert (refused.status_code, kept.status_code) == (422, 302)
    assert [row.mass_g for row in last.history.all()] == [1507.4, 1507.2]
    assert Shell.objects.get(pk=skin.pk).gross_mass_g == 1507.4


def test_the_shell_of_a_core_has_no_second_place_for_its_mass(skin, conservator):
    page = conservator.get(reverse("shell_edit", args=["S-11"])).content.decode()

    assert 'name="gross_mass_g"' not in page


def test_a_week_at_one_mass_is_constant_and_may_be_closed(skin):
    with clock.held_at(at("2026-05-10 09:00")):
        shell = dried(skin, ("2026-04-20", 1504.1), ("2026-04-28", 1504.0))
        drying = drying_of_shell(shell)
        band = summarise(Run.objects.with_sheet().get()).result.band

    assert (drying.code, drying.may_close) == ("constant", True)
    assert str(band) == "usual"


def test_constant_over_100_percent_may_be_closed_and_stays_a_warning(skin):
    with clock.held_at(at("2026-05-10 09:00")):
        drying = drying_of_shell(dried(skin, ("2026-04-20", 1508.1), ("2026-04-28", 1508.0)))

    assert (drying.code, drying.shape) == ("residue", "look")
    assert "three months" in drying.sentence


def test_four_days_are_no_week_the_signature_stands_before_the_gate(skin, conservator):
    row = closing(dried(skin))

    answer = conservator.post(reverse("closing_sign", args=[row.pk]), {"version": row.version})

    row.refresh_from_db()
    assert answer.status_code == 422 and not row.is_signed
    assert "do not close" in answer.content.decode() and "Record what has happened" in answer.content.decode()


def test_a_concession_that_names_the_check_passes_it(skin, conservator):
    row = closing(dried(skin))
    concession = Concession.objects.create(
        number="C-2026-09", gate="G7", check_names=["core dry"], given_on=date(2026, 4, 16), given_by=make_party(),
        given_role="conservator", reason="The show leaves on 21 April.",
    )  # fmt: skip
    concession.items.add(skin.item)

    answer = conservator.post(reverse("closing_sign", args=[row.pk]), {"version": row.version})

    row.refresh_from_db()
    assert answer.status_code == 302 and row.signed_role == "conservator"
    assert not UnmetGate.objects.exists()


def close_too_early(shell: Shell, client) -> Item:
    row = closing(dried(shell))
    client.post(reverse("closing_sign", args=[row.pk]), {"version": row.version, "afterwards": "1"})
    return make_copy("R.2026.5", shells=[Shell.objects.get()], technique="core", made_up_on=date(2026, 4, 16))


def test_closed_too_early_is_recorded_and_stays_on_the_copy_for_ever(skin, conservator):
    copy = close_too_early(skin, conservator)

    with clock.held_at(at("2027-04-16 09:00")):
        page = conservator.get(copy.get_absolute_url()).content.decode()
        words = [str(block) for block in notices(gather(copy))]

    assert "Closed too early" in page and "Unmet, recorded afterwards" in page
    assert any("Closed too early" in each for each in words)
    assert UnmetGate.objects.get().items.filter(pk=copy.pk).exists()


def test_what_is_weighed_after_the_closing_says_nothing_of_the_core(skin, conservator):
    close_too_early(skin, conservator)

    with clock.held_at(at("2026-06-01 09:00")):
        answer = send(conservator, skin, "2026-05-20 10:00", "1500.0")

    assert answer.status_code == 422 and "measurements of the copy" in answer.content.decode()


def test_what_was_not_measured_before_closing_is_asked_for(skin, conservator):
    row = closing(skin, rinse_ph=None, pinholes_count=None)

    answer = conservator.post(reverse("closing_sign", args=[row.pk]), {"version": row.version, "afterwards": "1"})

    assert answer.status_code == 422
    assert "pH of the last rinse" in answer.content.decode() and "Count the pinholes" in answer.content.decode()


def test_keep_drying_is_a_decision_too_and_closes_nothing(skin, conservator):
    row = closing(dried(skin), decision="keep_drying", sealed_on=None)

    answer = conservator.post(reverse("closing_sign", args=[row.pk]), {"version": row.version})

    assert answer.status_code == 302
    assert drying_of_shell(dried(skin, ("2026-04-15", 1507.25))).code == "over"


def test_a_technician_writes_the_closing_and_does_not_sign_it(skin, client):
    client.force_login(make_user("technician"))
    data = {"decided_on": "2026-04-16", "decision": "close", "rinse_ph": "6.4", "rinse_ph_unit": "pH",
            "sealed_with": "wax", "pinholes_count": "0"}  # fmt: skip

    client.post(reverse("closing_add", args=["S-11"]), data)
    row = CoreClosing.objects.get()

    assert client.post(reverse("closing_sign", args=[row.pk]), {}).status_code == 403
    assert (row.rinse_ph, row.is_signed) == (6.4, False)


def test_making_up_stands_before_the_same_gate(skin, conservator):
    data = {"number": "R.2026.5", "shells": [skin.item.number], "technique": "core", "lead_inside": "no",
            "join": "none", "made_up_on": "2026-04-16"}  # fmt: skip

    answer = conservator.post(reverse("making_up_add"), data)

    assert answer.status_code == 422 and "S-11: 1512.0" in answer.content.decode().replace("\u2009", " ")
    assert not Item.objects.filter(number="R.2026.5").exists()


def test_nothing_is_weighed_or_closed_while_it_hangs_in_the_bath(conservator, skin):
    """SCENARIO 7.6: out of the bath on 29 March 2026 at 12:00 local time."""
    early = send(conservator, skin, "2026-03-29 11:59", "1512,5")
    closing = {"decided_on": "2026-03-28", "decision": "close", "sealed_with": "wax", "sealed_on": "2026-03-28"}
    shut = conservator.post(reverse("closing_add", args=[skin.item.number]), closing)

    assert early.status_code == 422 and "out of the bath on 29 March 2026, 12:00" in early.content.decode()
    assert shut.status_code == 422 and shut.content.decode().count("It came out of the bath on 29 March 2026") >= 2
    assert skin.item.weighings.count() == 1 and not CoreClosing.objects.exists()


def test_a_slip_is_asked_about_wherever_it_stands_in_the_series_and_when_it_is_corrected(conservator, skin):
    dried(skin)
    _first, second = skin.item.weighings.order_by("at")[:2]
    typed = {"at": second.at.strftime("%Y-%m-%dT12:00"), "mass_g": "150,97", "mass_g_unit": "g", "reason": "misread"}

    between = send(conservator, skin, "2026-04-01 10:00", "151.1")
    corrected = conservator.post(reverse("weighing_edit", args=[second.pk]), typed | {"version": second.version})

    for page in (between, corrected):
        assert page.status_code == 422 and "lies far from the 1512.0" in page.content.decode().replace("\u2009", " ")
    assert Weighing.objects.get(pk=second.pk).mass_g == 1509.7
