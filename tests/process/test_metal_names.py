"""Metals in lists and choices are written as a chemist writes them."""

import pytest
from django.urls import reverse

from process.chemistry.metals import IONS, written
from process.forms.metals import metal_field
from process.models import PriceList
from tests.factories import make_user


def test_charges_are_raised_in_words_and_kept_plain_in_what_is_sent():
    assert [written(code) for code in ("Cu2+", "Cu+", "Au3+")] == ["Cu²⁺", "Cu⁺", "Au³⁺"]

    sent = [code for code, _ in metal_field().choices]

    assert sent == list(IONS)


@pytest.mark.django_db
def test_list_of_prices_names_its_metal_so(client):
    PriceList.objects.create(valid_from="2026-01-01", labour_money_h=42, metal_money_kg=16, energy_money_kwh=0.32)
    client.force_login(make_user("conservator"))

    page = client.get(reverse("price_list")).content.decode()

    assert "<td>Cu²⁺</td>" in page and "A bath lives" in page
