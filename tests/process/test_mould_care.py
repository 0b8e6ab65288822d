"""A mould from its first wear to its end: parts, features of wear, custody, and what its owner decided."""

from datetime import date, timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from process.models import Mould, MouldPart, MouldWear
from process.services.moulds import pull_check, use_pull
from records import clock
from records.models import Duty, UnmetGate
from tests.factories import make_consent, make_mould, make_party, make_place
from tests.process.consented import coin, concede, conservator, refused

__all__ = ["coin", "conservator"]  # fixtures
pytestmark = pytest.mark.django_db
DAY = date(2026, 4, 17)


@pytest.fixture
def mould(coin) -> Mould:
    return make_mould(coin, "M-2026-03")


def change(client, mould, **changes):
    """The form as it stands, with these changes."""
    page = reverse("mould_edit", args=[mould.item.number])
    form = client.get(page).context["form"]
    data = {name: form[name].value() for name in form.fields} | changes
    return client.post(page, {name: "" if value is None else value for name, value in data.items()})


def worn(client, mould, **more):
    sent = {"feature": "Rim tear at 5 h", "length_mm": "4", "length_mm_unit": "mm", "length_mm_kind": "measured",
            "bearing": "outside", "seen_on": mould.made_on, "seen_by": "Tobias",
            "token": "6a1f6f3e-7d5e-4a67-9a40-1d1f7d1f0020"} | more  # fmt: skip
    return client.post(reverse("mould_wear_add", args=[mould.item.number]), sent, follow=True)


def test_wear_is_seen_after_a_pull_and_stands_beside_it(conservator, mould):
    pull = use_pull(mould=mould, on=mould.made_on, use="deposit")

    page = worn(conservator, mould, pull=pull.pk).content.decode()

    row = MouldWear.objects.get()
    assert (row.pull, row.length_mm) == (pull, 4.0)
    assert "Wear seen:" in page and "Rim tear at 5 h" in page


def test_a_worn_out_mould_has_no_pull_left(conservator, mould):
    assert pull_check(mould).met
    worn(conservator, mould, bearing="ends")

    check = pull_check(mould)

    assert not check.met and "Worn out: Rim tear at 5 h" in check.sentence
    page = conservator.get(mould.get_absolute_url()).content.decode()
    assert "no further pull" in page and "Plan a run with it" not in page


def test_wear_that_was_struck_out_stands_in_no_way(conservator, mould):
    worn(conservator, mould, bearing="ends")
    row = MouldWear.objects.get()

    conservator.post(reverse("strike", args=["wear", row.pk]), {"reason": "of another mould"})

    assert pull_check(mould).met and MouldWear.every.get().is_struck


@pytest.mark.parametrize(
    ("field", "typed", "said"),
    [("length_mm", "0", "possible"), ("length_mm", "-1", "possible"), ("length_mm", "20000", "possible"),
     ("seen_on", "2099-01-01", "not come yet"), ("seen_on", "2020-01-01", "cannot have worn before"),
     ("bearing", "", "field-bearing"), ("feature", "", "feature")],
)  # fmt: skip
def test_wear_that_cannot_be_comes_back_with_what_was_typed(conservator, mould, field, typed, said):
    answer = worn(conservator, mould, **{field: typed})

    assert answer.status_code == 422 and answer.context["form"].errors[field], said
    assert not MouldWear.objects.exists()


def test_each_part_has_its_letter_once(conservator, mould):
    part = {"mark": "A", "what": "left half of the jacket", "material_words": "plaster"}
    page = reverse("mould_part_add", args=[mould.item.number])

    shown = conservator.post(page, part | {"token": "6a1f6f3e-7d5e-4a67-9a40-1d1f7d1f0021"}, follow=True)
    again = conservator.post(page, part | {"token": "6a1f6f3e-7d5e-4a67-9a40-1d1f7d1f0022"})

    assert "left half of the jacket" in shown.content.decode()
    assert again.status_code == 422 and mould.parts.count() == 1


def test_the_day_of_the_next_decision_is_a_duty_and_goes_with_the_mould(conservator, mould):
    due = clock.today() + timedelta(days=90)
    change(conservator, mould, custodian="Tobias", kept_how="dark, flat", decide_by=due)
    change(conservator, mould, decide_by=due + timedelta(days=1))

    duty = Duty.objects.get(item=mould.item)
    assert duty.due_on == due + timedelta(days=1) and "use it again, retire, return or destroy it" in duty.sentence
    assert "in the care of Tobias" in conservator.get(mould.get_absolute_url()).content.decode()

    change(conservator, mould, fate="lost", fate_on=clock.today())
    assert not Duty.objects.filter(item=mould.item).exists()


def test_a_mould_ends_as_its_owner_decided(conservator, coin, mould):
    make_consent(coin, owner=make_party("Thornwick Trust"), mould_fate="destroy", mould_fate_by=date(2026, 4, 30))
    witness = make_party("Lettice Umberhay").name

    kept = change(conservator, mould, fate="returned", fate_on=DAY, fate_witness=witness)
    assert refused(kept, "Thornwick Trust", "Moulds destroyed before a witness by", "M-2026-03 was returned.")
    alone = change(conservator, mould, fate="destroyed", fate_on=DAY)
    assert refused(alone, "M-2026-03 was destroyed; witness: nobody named.")
    late = change(conservator, mould, fate="destroyed", fate_on=date(2026, 5, 1), fate_witness=witness)
    assert refused(late, "M-2026-03 was destroyed on 1 May 2026.")
    in_time = change(conservator, mould, fate="destroyed", fate_on=date(2026, 4, 30), fate_witness=witness)

    mould.refresh_from_db()
    assert in_time.status_code == 302 and mould.fate == "destroyed" and mould.item.status == "destroyed"
    assert not UnmetGate.objects.exists()


def test_an_end_against_the_owners_word_is_recorded_as_unmet_or_passed_by_a_concession(conservator, coin, mould):
    make_consent(coin, mould_fate="return")

    change(conservator, mould, fate="destroyed", fate_on=DAY, afterwards="1")
    assert UnmetGate.objects.get().check_name == "consent: what becomes of the mould"

    second = make_mould(coin, "M-2026-04")
    concede(coin, "consent: what becomes of the mould")
    answer = change(conservator, second, fate="destroyed", fate_on=DAY)
    assert answer.status_code == 302 and UnmetGate.objects.count() == 1


def test_a_mould_that_is_kept_by_the_museum_ends_by_its_own_decision(conservator, coin, mould):
    make_consent(coin, mould_fate="keep")

    assert change(conservator, mould, fate="destroyed", fate_on=DAY).status_code == 302


def test_a_destroyed_mould_found_again_is_a_thing_of_the_house_again(conservator, mould):
    change(conservator, mould, fate="lost", fate_on=DAY)
    change(conservator, mould, fate="in_store", fate_on="")

    mould.item.refresh_from_db()
    assert mould.item.status == "workshop"


def test_the_page_of_a_mould_asks_few_questions_however_much_hangs_on_it(conservator, mould):
    for _ in range(20):
        MouldWear.objects.create(
            mould=mould, feature="tear", seen_on=DAY, bearing="outside", seen_by=make_party(),
            pull=use_pull(mould=mould, on=DAY, use="deposit"),
        )  # fmt: skip
        MouldPart.objects.create(mould=mould, mark=f"P{mould.parts.count()}", what="section", place=make_place())

    with CaptureQueriesContext(connection) as asked:
        assert conservator.get(mould.get_absolute_url()).status_code == 200

    assert len(asked) <= 15
