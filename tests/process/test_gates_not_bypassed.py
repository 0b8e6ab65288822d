"""Ways round a gate: each was tried, and each is closed."""

from datetime import date, timedelta

import pytest
from django.core.exceptions import ValidationError
from django.urls import reverse

from process.models import Core, Pull, Run, Shell
from process.seeding import ensure_ranges
from process.services.copies import accept
from process.services.moulds import cast_core, use_pull
from process.services.runs import correct_line, judge_run, start_run, weigh
from records.gates import GateClosed
from records.models import Item, UnmetGate
from records.services.permissions import give_concession
from tests.factories import (
    make_analysis,
    make_commission,
    make_consent,
    make_copy,
    make_inspection,
    make_item,
    make_mark,
    make_mould,
    make_party,
    make_report,
    make_run,
    make_shell,
    make_user,
)  # fmt: skip
from tests.process.scenario_runs import at, medal_run

pytestmark = pytest.mark.django_db


@pytest.fixture
def accepted():
    """A marked copy that was inspected, accepted and accessioned."""
    copy = make_copy("R.2026.1")
    make_mark(copy)
    inspection = make_inspection(copy)
    accept(inspection=inspection, party=make_party(), role="conservator", status="accessioned")
    return copy


def _mark_form(mark, **changes):
    return {
        "text": mark.text, "purpose": mark.purpose, "face": mark.face, "position": mark.position,
        "method": mark.method, "technique": mark.technique, "is_legible": "true", "is_sans_serif": "true",
        "photo": mark.photo_id or "", "version": mark.version,
    } | changes  # fmt: skip


WEAKER = [{"method": "ink"}, {"photo": ""}, {"purpose": "maker"}]


@pytest.mark.parametrize("weaker", WEAKER)
def test_the_mark_with_which_a_copy_was_accepted_is_not_taken_back(client, accepted, weaker):
    client.force_login(make_user("technician"))
    mark = accepted.marks.get()

    answer = client.post(reverse("mark_edit", args=[mark.pk]), _mark_form(mark, **weaker))

    assert answer.status_code == 422 and "accepted" in answer.content.decode()
    mark.refresh_from_db()
    assert mark.is_photographed_copy_mark


def test_it_may_be_taken_back_when_another_mark_or_a_concession_stands_for_it(client, accepted):
    client.force_login(make_user("technician"))
    mark = accepted.marks.get()
    make_mark(accepted, text="COPY", face="edge")

    answer = client.post(reverse("mark_edit", args=[mark.pk]), _mark_form(mark, method="ink"))

    assert answer.status_code == 302


def test_a_mark_on_the_bench_may_still_be_corrected(client):
    client.force_login(make_user("technician"))
    mark = make_mark(make_copy("R.2026.2"))

    assert client.post(reverse("mark_edit", args=[mark.pk]), _mark_form(mark, method="ink")).status_code == 302


def test_a_rejected_copy_is_not_accessioned_through_its_form(client):
    copy = make_copy("R.2026.1")
    accept(inspection=make_inspection(copy, decision="reject"), party=make_party(), role="conservator")
    client.force_login(make_user("registrar"))
    copy.refresh_from_db()
    form = {"number": copy.number, "title": copy.title, "version": copy.version}

    client.post(reverse("item_edit", args=[copy.number]), form | {"status": "accessioned"})

    copy.refresh_from_db()
    assert copy.status == Item.Status.EVIDENCE


def test_an_accepted_copy_may_be_lent_or_sold(client, accepted):
    client.force_login(make_user("registrar"))
    accepted.refresh_from_db()
    form = {"number": accepted.number, "title": accepted.title, "version": accepted.version}

    client.post(reverse("item_edit", args=[accepted.number]), form | {"status": "exchange"})

    accepted.refresh_from_db()
    assert accepted.status == Item.Status.EXCHANGE


def test_a_shell_weighed_after_its_run_was_judged_failed_is_scrap():
    run = medal_run(weigh=False)
    judge_run(run=run, outcome=Run.Outcome.FAILED, words="trees on both rims")
    cathode = run.cathodes.first()

    shell = weigh(cathode=cathode, number="S-01", shell=Shell(gross_mass_g=cathode.tare_g + 3.6))

    assert (shell.fate, shell.item.status) == (Shell.Fate.SCRAP, Item.Status.EVIDENCE)


def test_scrap_of_a_failed_run_is_not_called_good_again(client):
    ensure_ranges()
    run = medal_run()
    judge_run(run=run, outcome=Run.Outcome.FAILED, words="trees on both rims")
    shell = Shell.objects.filter(cathode__run=run).first()
    client.force_login(make_user("technician"))
    form = {"gross_mass_g": shell.gross_mass_g, "gross_mass_g_unit": "g", "fate": "kept", "version": shell.version}

    answer = client.post(reverse("shell_edit", args=[shell.item.number]), form)

    shell.refresh_from_db()
    assert answer.status_code == 422 and shell.fate == Shell.Fate.SCRAP


def test_no_copy_is_made_of_a_failed_run():
    shell = make_shell()
    run = shell.cathode.run
    run.outcome = Run.Outcome.FAILED
    run.save()

    with pytest.raises(ValidationError, match="failed"):
        make_copy(shells=[shell], technique="uniface")


def test_a_run_whose_shells_are_in_a_copy_is_not_judged_failed():
    run = medal_run()
    make_copy("R.2026.1", shells=list(Shell.objects.filter(cathode__run=run)))

    with pytest.raises(ValidationError, match=r"R\.2026\.1"):
        judge_run(run=run, outcome=Run.Outcome.FAILED, words="too late")


def _core(mould):
    return Core(material="plaster", cast_on=date(2026, 3, 17)), {
        "mould": mould, "number": "P-2026-01", "title": "Core", "owner": None, "place": None,
    }  # fmt: skip


def test_a_cast_asks_for_a_pull_as_a_deposit_does():
    mould = make_mould(pulls_allowed_count=1)
    make_report(mould.model, "after", change="no_change")
    use_pull(mould=mould, on=date(2026, 3, 1), use=Pull.Use.DEPOSIT)
    core, more = _core(mould)

    with pytest.raises(GateClosed, match="1 of 1 pulls used"):
        cast_core(core=core, afterwards=False, **more)

    cast_core(core=core, afterwards=True, **more)
    assert UnmetGate.objects.filter(check_name="pull left").exists()


def test_a_mould_that_is_gone_on_an_unknown_day_is_not_at_hand():
    mould = make_mould(fate="lost", fate_on=None)
    run = make_run(moulds=[mould])
    make_analysis(run.bath)

    with pytest.raises(GateClosed, match="is lost"):
        start_run(run=run, at=at("2026-02-12 09:00"), afterwards=False, current_a=0.24)


def test_a_run_does_not_start_before_its_mould_was_made():
    run = make_run(moulds=[make_mould(made_on=date(2026, 2, 4))])

    with pytest.raises(ValidationError, match="was made on"):
        start_run(run=run, at=at("2026-02-03 09:00"), afterwards=True, current_a=0.24)


def test_the_pull_keeps_the_day_of_a_corrected_start():
    run = make_run(moulds=[make_mould(made_on=date(2026, 2, 4))])
    line = start_run(run=run, at=at("2026-02-12 09:00"), afterwards=True, current_a=0.24)
    line.at = line.at - timedelta(days=1)

    correct_line(line=line, reason="wrong day", save=lambda: line.save() or line)

    assert Pull.objects.get().used_on == date(2026, 2, 11)


def test_a_corrected_start_does_not_lie_before_the_mould():
    run = make_run(moulds=[make_mould(made_on=date(2026, 2, 4))])
    line = start_run(run=run, at=at("2026-02-12 09:00"), afterwards=True, current_a=0.24)
    line.at = line.at - timedelta(days=30)

    with pytest.raises(ValidationError, match="was made on"):
        correct_line(line=line, reason="wrong month", save=line.save)


def test_the_consent_says_how_many_copies_there_may_be():
    """Planted fault 7 of the scenario: a second coin copy where the lender allowed one."""
    coin = make_item("L.2026.003")
    make_consent(coin, copies_max_count=1)
    make_copy("R.2026.2", shells=[make_shell(coin), make_shell(coin, side="reverse")])

    with pytest.raises(GateClosed, match="1 of 1 cop"):
        make_copy("R.2026.9", shells=[make_shell(coin)], technique="uniface")


def test_a_concession_lets_a_second_copy_be_made():
    coin = make_item("L.2026.003")
    make_consent(coin, copies_max_count=1)
    make_copy("R.2026.2", shells=[make_shell(coin), make_shell(coin, side="reverse")])
    give_concession(
        gate="G1", check_names=["copies left"], items=[coin], given_by=make_party(), role="registrar",
        reason="the lender agreed", given_on=date(2026, 2, 17),
    )  # fmt: skip

    assert make_copy("R.2026.9", shells=[make_shell(coin)], technique="uniface").pk


def test_a_rejected_copy_does_not_use_up_the_consent():
    coin = make_item("L.2026.003")
    make_consent(coin, copies_max_count=1)
    copy = make_copy("R.2026.2", shells=[make_shell(coin), make_shell(coin, side="reverse")])
    accept(inspection=make_inspection(copy, decision="reject"), party=make_party(), role="conservator")

    assert make_copy("R.2026.9", shells=[make_shell(coin)], technique="uniface").pk


def test_the_making_up_is_not_moved_before_its_shells(client):
    ensure_ranges()
    copy = make_copy("R.2026.1")
    client.force_login(make_user("technician"))
    making = copy.making_up
    form = {"lead_inside": "no", "join": "solder", "made_up_on": "2026-02-10", "version": making.version}

    answer = client.post(reverse("making_up_edit", args=[copy.number]), form)

    assert answer.status_code == 422 and "came off" in answer.content.decode()


def test_an_inspection_is_signed_as_it_was_read(client, accepted):
    inspection = make_inspection(accepted)
    client.force_login(make_user("conservator"))
    seen = inspection.version
    inspection.look = "a crack at the seam"
    inspection.save()

    answer = client.post(reverse("inspection_sign", args=[inspection.pk]), {"status": "accessioned", "version": seen})

    inspection.refresh_from_db()
    assert answer.status_code == 422 and not inspection.is_signed


def test_a_second_consent_allows_copies_of_its_own():
    """One consent for one commission used up does not close the next commission, which has a consent itself."""
    medal = make_item()
    first, second = make_commission(originals=[medal]), make_commission(originals=[medal])
    make_consent(medal, commission=first, copies_max_count=1)
    make_consent(medal, commission=second, copies_max_count=1)
    make_copy(shells=[make_shell(medal)], technique="uniface", commission=first)

    make_copy(shells=[make_shell(medal)], technique="uniface", commission=second)

    with pytest.raises(GateClosed, match="1 of 1 copy that the owner allows"):
        make_copy(shells=[make_shell(medal)], technique="uniface", commission=second)
