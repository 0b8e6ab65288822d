"""Limits of use follow a piece to every paper and to the day's list: walls, cores, and what was conceded."""

from datetime import date

import pytest

from process.models import CouponTest, MakingUp, Shell
from process.summaries.core_limits import OPEN
from records import clock, extensions, labelling
from records.limits import limited_among, limits_along, limits_of
from records.models import Concession, Duty, Item, LabelWording
from tests.factories import make_copy, make_item, make_party, make_report, make_user
from tests.pdf.reading import text
from tests.process.scenario_runs import coin_run, mask_run, medal_run

pytestmark = pytest.mark.django_db

BARRED = "No hot soldering; handling barred unless a bend test of the coupon passes."


def copy_of(run, number: str, **fields) -> Item:
    """Made up, worded, and let pass without its mark, which would need a picture."""
    copy = make_copy(number, shells=list(Shell.objects.filter(cathode__run=run)), **fields)
    given = {"given_on": date(2026, 3, 5), "given_by": make_party(), "given_role": "conservator"}
    Concession.objects.create(number=f"C-{number}", gate="G6", reason="Cut after the show.", **given).items.add(copy)
    signed = {"signed_by": make_party(), "signed_role": "curator", "signed_at": clock.now()}
    LabelWording.objects.create(item=copy, **labelling.proposal(labelling.gather(copy)) | signed)
    return copy


def subjects(copy: Item) -> list[tuple[str, object]]:
    """Every paper that a copy or a report of it can have, with what it is issued of."""
    report = make_report(copy, "survey")
    return [
        (code, each)
        for code, kind in extensions.paper_kinds.items()
        for each in (copy, report)
        if kind.applies_to(each) and not kind.refusals(each)
    ]


def issued(kind: str, subject: object) -> str:
    context = extensions.PaperContext(1, clock.now(), "P. Dunnock-Ashe", "conservator")
    return text(extensions.paper_kinds[kind].build(subject, context)[0])


def test_a_wall_that_may_part_is_named_on_every_paper_of_the_copy():
    """SCENARIO 7.3: 3 h 10 min without current, a restart by itself; no coupon is tested here."""
    copy = copy_of(coin_run(), "R.2026.2", join="adhesive")
    found = subjects(copy)
    assert {code for code, _ in found} >= {"condition-report", "gallery-label", "object-tag", "process-report"}
    for code, subject in found:
        assert f"S-05: {BARRED}" in issued(code, subject), code


def test_it_stands_on_the_tag_of_the_shell_too():
    coin_run()
    assert BARRED in issued("object-tag", Item.objects.get(number="S-05"))


def test_a_coupon_that_holds_lets_the_piece_be_handled():
    copy = copy_of(coin_run(), "R.2026.2", join="adhesive")
    CouponTest.objects.create(
        shell=Shell.objects.get(pk=Item.objects.get(number="S-05").pk), number="S-05-a", bends_count=12, layers="no"
    )
    assert "S-05: No hot soldering. The bend test of the coupon passed: handling is not barred." in limits_of(copy)


def test_a_sound_copy_has_no_limits():
    assert limits_of(copy_of(medal_run(), "R.2026.1")) == []


def test_a_copy_on_a_core_says_what_may_have_stayed_in_it():
    """SCENARIO 7.6: 194.80 g on the balance where 191.9 g (99 %) are taken for copper: about 3 g."""
    copy = copy_of(
        mask_run(1507.2), "R.2026.5", technique=MakingUp.Technique.CORE, made_up_on=date(2026, 4, 16), afterwards=True
    )
    said = limits_along(copy)
    assert [limit.source for limit in said] == ["core in S-11"]
    assert said[0].sentence.startswith("Solution may have stayed in the core")
    assert "Never wet, steam or heat it" in issued("object-tag", copy)


def test_a_core_that_is_not_closed_says_so():
    mask_run(1507.2)
    assert limits_of(Item.objects.get(number="S-11")) == [OPEN]


def test_the_sign_is_there_wherever_a_limit_is():
    cut, sound = copy_of(coin_run(), "R.2026.2", join="adhesive"), copy_of(medal_run(), "R.2026.1")
    numbers = {cut.number, sound.number, "S-05", make_item("OVM.1").number}
    assert limited_among(numbers) == {"R.2026.2", "S-05"}


def test_the_day_s_list_says_it_before_the_piece_is_taken_in_hand(client):
    client.force_login(make_user("conservator"))
    copy = copy_of(coin_run(), "R.2026.2", join="adhesive")
    Duty.objects.create(item=copy, sentence="Survey R.2026.2", due_on=clock.today(), role="conservator")
    assert 'hx-get="/things/R.2026.2/limits/"' in client.get("/").content.decode()
    page = client.get("/things/R.2026.2/limits/").content.decode()
    assert f"S-05: {BARRED}" in page and "3 h 10 min without current" in page.replace("\xa0", " ")
