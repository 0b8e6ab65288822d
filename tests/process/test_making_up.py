"""Making shells up into a copy: what may be chosen, what is asked, what follows by itself."""

from datetime import UTC, date, datetime

import pytest
from django.urls import reverse

from process.models import Core, FinishStep, MakingUp, Pull, Shell, Weighing
from process.services.copies import make_up
from records.lineage import descent_of
from records.models import Item
from tests.factories import (
    make_cathode,
    make_copy,
    make_item,
    make_mould,
    make_party,
    make_run,
    make_shell,
    make_term,
    make_user,
)  # fmt: skip

pytestmark = pytest.mark.django_db


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    return client


@pytest.fixture
def medal():
    return make_item("OVM.1931.0044", object_type="medal, portrait medal", title="Portrait medal of Maud Ferrigan")


def _typed(*shells, **more):
    return {
        "shells": [shell.item.number for shell in shells], "technique": "joined", "lead_inside": "no", "join": "solder",
        "made_up_on": "2026-02-20", "number": "R.2026.1",
    } | more  # fmt: skip


def _send(client, *shells, **more):
    return client.post(reverse("making_up_add"), _typed(*shells, **more))


def test_two_shells_become_a_copy_with_its_own_number_and_descent(technician, medal):
    obverse, reverse_shell = make_shell(medal), make_shell(medal, side="reverse")

    answer = _send(technician, obverse, reverse_shell)

    copy = Item.objects.get(number="R.2026.1")
    assert answer.status_code == 302 and answer["Location"] == copy.get_absolute_url()
    assert (copy.kind, copy.status, copy.title) == (
        "copy",
        "workshop",
        "Electrotype copy: Portrait medal of Maud Ferrigan",
    )
    assert (copy.object_type, copy.materials, copy.date_words) == (
        "medal, portrait medal",
        "electrodeposited copper",
        "2026",
    )
    assert set(Shell.objects.filter(making_up=copy.making_up, fate="used")) == {obverse, reverse_shell}
    assert descent_of(copy).lineage.generation == 1


def test_scrap_is_neither_offered_nor_taken(technician, medal):
    kept, scrap = make_shell(medal), make_shell(medal, "S-77", fate="scrap")

    page = technician.get(reverse("making_up_add")).content.decode()
    answer = _send(technician, kept, scrap)

    assert "S-77" not in page
    assert answer.status_code == 422 and not Item.objects.filter(number="R.2026.1").exists()


def test_the_service_refuses_scrap_and_used_shells_as_well(medal):
    scrap = make_shell(medal, "S-77", fate="scrap")
    used = make_copy(model=medal).making_up.shells.first()

    for shell, words in ((scrap, "scrap"), (used, "already")):
        with pytest.raises(Exception, match=words):
            make_up(
                copy=Item(number="R.2026.99", title="x"), shells=[shell],
                making_up=MakingUp(technique="uniface", lead_inside="no", made_up_on=date(2026, 2, 20)),
            )  # fmt: skip


def test_lead_has_to_be_answered(technician, medal):
    answer = _send(technician, make_shell(medal), make_shell(medal), lead_inside="")

    assert answer.status_code == 422 and "lead_inside" in answer.context["form"].errors


def test_a_filling_that_speaks_of_lead_is_asked_about(technician, medal):
    fill = make_term("fill", "tin-lead solder", caution="Contains lead: record it.")
    shells = make_shell(medal), make_shell(medal, side="reverse")

    asked = _send(technician, *shells, fill=fill.pk)
    box = asked.context["form"].fields["it_is_so"].widget.attrs["value"]
    kept = _send(technician, *shells, fill=fill.pk, it_is_so=box)

    assert asked.status_code == 422 and "speaks of lead" in asked.content.decode()
    assert kept.status_code == 302
    assert "speaks of lead" in MakingUp.history.get(copy__number="R.2026.1").history_change_reason


def test_a_lead_free_filling_is_not_asked_about(technician, medal):
    fill = make_term("fill", "tin-rich alloy, no lead", caution="Heat may open laminations.")

    answer = _send(technician, make_shell(medal), make_shell(medal), fill=fill.pk, fill_words="lead-free solder")

    assert answer.status_code == 302


@pytest.mark.parametrize(
    ("field", "value", "words"),
    [
        ("die_axis_deg", "361", "From 0 to 360"),
        ("fill_mass_g", "-3", "look at the sign"),
        ("made_up_on", "2999-01-01", "not come yet"),
        ("made_up_on", "2026-02-01", "later than that"),
        ("technique", "uniface", "more than one face"),
        ("number", "R/2026", "file names"),
    ],
)
def test_bad_input_comes_back_with_what_was_typed(technician, medal, field, value, words):
    shells = make_shell(medal), make_shell(medal, side="reverse")

    answer = _send(technician, *shells, join_words="tin solder, seam left", **{field: value})

    page = answer.content.decode()
    assert answer.status_code == 422 and words in page
    assert "tin solder, seam left" in page and value in page


def test_a_number_of_the_originals_series_is_asked_about(technician, medal):
    answer = _send(technician, make_shell(medal), make_shell(medal), number="OVM.2026.0001")

    assert answer.status_code == 422 and "taken for one" in answer.content.decode()


def test_a_number_is_never_given_twice_even_after_its_copy_was_removed(technician, medal):
    gone = make_item("R.2026.1", kind="copy")
    gone.delete()

    answer = _send(technician, make_shell(medal), make_shell(medal))

    assert answer.status_code == 422 and "never given twice" in answer.content.decode()


def test_shells_of_different_pieces_make_no_copy(technician, medal):
    answer = _send(technician, make_shell(medal), make_shell(make_item()))

    assert "repeats one" in answer.content.decode()


def _skin_on_a_core(medal):
    mould = make_mould(medal)
    pull = Pull.objects.create(mould=mould, number_count=1, use="cast", used_on=date(2026, 2, 5))
    core = Core.objects.create(
        item=make_item("P-2026-01", kind="core"), pull=pull, material="plaster", cast_on=date(2026, 2, 5)
    )
    shell = make_shell(cathode=make_cathode(make_run(), core=core, tare_g=10.0))
    for day in (10, 18):  # constant over a week
        Weighing.objects.create(item=shell.item, kind="skin", at=datetime(2026, 2, day, 9, tzinfo=UTC), mass_g=22.05)
    return core, shell


def test_a_skin_keeps_the_core_on_which_it_grew(technician, medal):
    core, shell = _skin_on_a_core(medal)

    wrong = _send(technician, shell, technique="uniface")
    right = _send(technician, shell, technique="core")

    assert wrong.status_code == 422 and "stays inside" in wrong.content.decode()
    assert right.status_code == 302
    assert MakingUp.objects.get(copy__number="R.2026.1").core == core


def test_a_reader_may_not_make_up(client):
    client.force_login(make_user("reader"))

    assert client.get(reverse("making_up_add")).status_code == 403


def test_without_shells_the_page_says_where_they_come_from(technician):
    assert "No shell to make up" in technician.get(reverse("making_up_add")).content.decode()


def test_the_making_up_can_be_corrected_but_not_its_shells(technician, medal):
    copy = make_copy("R.2026.1", model=medal)
    page = reverse("making_up_edit", args=["R.2026.1"])
    form = technician.get(page).context["form"]

    answer = technician.post(
        page,
        {"lead_inside": "unknown", "join": "solder", "made_up_on": "2026-02-20", "version": copy.making_up.version},
    )

    assert "shells" not in form.fields
    assert answer.status_code == 302
    assert MakingUp.objects.get(copy=copy).lead_inside == "unknown"


def _finish(client, copy, **more):
    return client.post(reverse("finish_add", args=[copy.number]), {"done_on": "2026-02-22"} | more)


def test_silvering_names_its_plater_and_its_thickness(technician, medal):
    copy, silvered = (
        make_copy(model=medal),
        make_term("finish", "silvered", caution="By a licensed outside plater only."),
    )
    plater = make_party("Greyling Street", kind="workshop")

    bare = _finish(technician, copy, finish=silvered.pk)
    full = _finish(technician, copy, finish=silvered.pk, thickness_um_0="", thickness_um="10", done_by=plater.name)

    assert bare.status_code == 422 and {"thickness_um", "done_by"} <= set(bare.context["form"].errors)
    assert full.status_code == 302
    assert FinishStep.objects.get(copy=copy).thickness_um == 10


def test_silvering_at_home_is_asked_about(technician, medal):
    copy, silvered = make_copy(model=medal), make_term("finish", "silvered")

    answer = _finish(technician, copy, finish=silvered.pk, thickness_um="10", done_by=make_party().name)

    assert answer.status_code == 422 and "licensed plater" in answer.content.decode()


def test_a_finish_before_the_making_up_is_refused(technician, medal):
    answer = _finish(technician, make_copy(model=medal), finish=make_term("finish", "wax").pk, done_on="2026-02-01")

    assert "came later" in answer.content.decode()
