"""The end of a piece: decided, carried out before a camera, its number never given again (DOMAIN step 35)."""

from datetime import timedelta

import pytest
from django.core.exceptions import ValidationError
from django.urls import reverse

from records import clock, extensions
from records.forms.items import NewItemForm
from records.models import Disposal, Item
from records.numbers import SERIES, next_number
from records.services.disposals import carry_out, decide
from records.services.papers import issue, path_of
from tests.factories import (
    make_copy,
    make_handover,
    make_item,
    make_mark,
    make_mould,
    make_party,
    make_photo,
    make_user,
)
from tests.pdf import reading
from tests.records.test_papers import label_for

pytestmark = pytest.mark.django_db


def decision(item: Item, **fields) -> Disposal:
    return Disposal(
        **{"number": "X-2026-01", "item": item, "reason": "torn", "decided_on": clock.today(), "way": "destroyed"}
        | {"decided_by": make_party(), "authority": "minutes of 3 March"} | fields
    )  # fmt: skip


def gone(item: Item) -> Disposal:
    row = decide(disposal=decision(item))
    row.done_on, row.done_by, row.method, row.photo = clock.today(), make_party(), "cut in three", make_photo(item)
    return carry_out(disposal=row)


def test_decided_it_is_still_there_and_carried_out_it_is_no_more():
    copy = make_copy("R.2026.9")
    row = decide(disposal=decision(copy))
    assert Item.objects.get(pk=copy.pk).status != Item.Status.DESTROYED

    row.done_on, row.done_by, row.method = clock.today(), make_party(), "cut in three"
    carry_out(disposal=row)

    assert Item.objects.get(pk=copy.pk).status == Item.Status.DESTROYED


def test_no_label_and_no_tag_of_it_prints_any_more():
    copy = make_copy("R.2026.9")
    make_mark(copy)
    label_for(copy)
    gone(copy)
    left = Item.objects.get(pk=copy.pk)

    for kind in ("gallery-label", "object-tag", "acknowledgement", "certificate", "unmarked-tag"):
        assert "was destroyed" in " ".join(extensions.paper_kinds[kind].refusals(left)), kind


def test_its_number_is_never_given_again():
    gone(make_copy(next_number(Item, SERIES["copy"])))

    taken = Item.objects.get(status="destroyed").number
    form = NewItemForm({"number": taken, "kind": "original", "title": "Another", "status": "accessioned"})

    assert next_number(Item, SERIES["copy"]) != taken
    assert not form.is_valid() and "number" in form.errors


@pytest.mark.parametrize("kind", ["original", "mould", "core"])
def test_originals_and_moulds_do_not_end_here(kind):
    thing = make_mould().item if kind == "mould" else make_item(kind=kind)
    with pytest.raises(ValidationError, match="is not given up here"):
        decide(disposal=decision(thing))


def test_what_is_lent_or_a_part_of_a_copy_is_not_given_up():
    copy = make_copy()
    make_handover(copy, party=make_party("Town Gallery"), out_on=clock.today())
    with pytest.raises(ValidationError, match="is with Town Gallery"):
        decide(disposal=decision(copy))

    shell = copy.ancestors.first().source if hasattr(copy, "ancestors") else Item.objects.filter(kind="shell").first()
    with pytest.raises(ValidationError, match="only the whole piece is given up"):
        decide(disposal=decision(shell, number="X-2026-02"))


def test_the_paper_tells_why_by_whose_decision_how_and_what_is_left():
    row = gone(make_copy("R.2026.9"))
    row.photo, row.kept = None, "5.1 g of copper to the anode bag"
    row.save()

    words = " ".join(
        reading.text(
            path_of(issue(kind="disposal-paper", subject=row, party=make_party(), role="registrar")).read_bytes()
        ).split()
    )

    for told in (
        "R.2026.9 is no more",
        "torn",
        "minutes of 3 March",
        "cut in three",
        "5.1 g of copper",
        "not given again",
    ):
        assert told in words


class TestPages:
    @pytest.fixture
    def registrar(self, client):
        client.force_login(make_user("registrar", "ines"))
        return client

    def test_from_the_decision_to_the_photograph_of_what_is_left(self, registrar):
        copy = make_copy("R.2026.9")
        photo = make_photo(copy)
        sent = {"number": "X-2026-01", "reason": "torn", "way": "bath", "decided_on": clock.today(),
                "decided_by": "Ines", "authority": "minutes", "checked": "on"}  # fmt: skip
        assert "Give it up" in registrar.get(copy.get_absolute_url()).content.decode()
        assert registrar.post(reverse("disposal_add", args=["R.2026.9"]), sent).status_code == 302
        row = Disposal.objects.get()

        done = {"done_on": clock.today(), "done_by": "Ines", "method": "cut", "photo": photo.pk, "version": row.version}
        without = registrar.post(reverse("disposal_done", args=[row.number]), done | {"photo": ""})
        assert without.status_code == 422
        answer = registrar.post(reverse("disposal_done", args=[row.number]), done)
        assert answer.status_code == 302, answer.context["form"].errors

        page = registrar.get(copy.get_absolute_url()).content.decode()
        assert "no more" in page and Item.objects.get(pk=copy.pk).status == "destroyed"

    @pytest.mark.parametrize(
        ("more", "said"),
        [
            ({"checked": ""}, "required"),
            ({"decided_on": clock.today() + timedelta(days=2)}, "has not come yet"),
            ({"way": "sold"}, "sold"),
            ({"decided_by": "Nobody at all"}, "Nobody at all"),
        ],
    )
    def test_a_decision_that_lacks_something_is_given_back(self, registrar, more, said):
        make_copy("R.2026.9")
        sent = {"number": "X-2026-01", "reason": "torn", "way": "bath", "decided_on": clock.today(),
                "decided_by": "Ines", "authority": "minutes", "checked": "on"}  # fmt: skip

        answer = registrar.post(reverse("disposal_add", args=["R.2026.9"]), sent | more)

        assert answer.status_code == 422 and said in answer.content.decode() and not Disposal.objects.exists()
