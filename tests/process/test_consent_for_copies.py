"""What an owner allows of copies: how they are held, what their label says, when duties fall due."""

from datetime import date, timedelta

import pytest
from django.urls import reverse

from records import clock
from records.models import Duty, Item, LabelWording
from tests.factories import (
    NINE,
    make_commission,
    make_consent,
    make_copy,
    make_inspection,
    make_mark,
    make_party,
    make_shell,
    make_term,
    make_user,
)
from tests.process.consented import coin, concede, conservator, refused

__all__ = ["coin", "conservator"]  # fixtures
pytestmark = pytest.mark.django_db


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
    make_consent(coin, purposes=["display surrogate"])

    assert refused(accept(conservator, ready(coin), "exchange"), "Only for: display surrogate.", "purpose: exchange")


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
    latex, owner = make_term("mould_material", "latex").label, make_party().name
    data = {"owner": owner, "given_by": owner, "given_on": "2026-01-22", "valid_from": "2026-01-22",
            "items": [coin.number], "mould_fate": "keep",
            "materials_allowed": [latex], "materials_excluded": [latex]}  # fmt: skip

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


def test_a_consent_says_of_a_sale_one_thing(client, coin):
    client.force_login(make_user("registrar"))
    owner, sale = make_party().name, make_term("purpose", "sale")
    page = reverse("consent_add", args=[make_commission(originals=[coin]).number])

    assert sale.label not in client.get(page).context["form"].fields["purposes"].choices
    consent = make_consent(coin, purposes=["sale"])  # as older rows may hold it
    data = {"owner": owner, "given_by": owner, "given_on": "2026-01-22", "valid_from": "2026-01-22",
            "items": [coin.number], "mould_fate": "keep", "purposes": ["sale"], "version": consent.version}  # fmt: skip
    answer = client.post(reverse("consent_edit", args=[consent.pk]), data)

    assert refused(answer, "“sale” is ticked, and sale is not allowed: tick both, or neither.")


def test_words_by_which_consents_are_asked_keep_their_label(client):
    client.force_login(make_user("registrar"))
    form = client.get(reverse("term_edit", args=[make_term("purpose", "handling").pk])).context["form"]

    assert form.fields["label"].disabled and "Consents are asked by this word" in form.fields["label"].help_text
