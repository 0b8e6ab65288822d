"""What a density may mean, on a phone; a size that an old book gives, with and without script; both read by axe."""

import pytest

from process.models import HydrostaticWeighing
from records.models import DescentLink
from tests.browser.walking import Walker
from tests.factories import NINE, make_item


@pytest.fixture
def conservator(sign_in_as, axe):
    def sign_in(page, axe_too: bool = True):
        sign_in_as(page, "conservator")
        return Walker(page, axe if axe_too else lambda page: None)

    return sign_in


def test_two_parts_are_tried_on_a_phone(phone, conservator):
    """OpenStax College Physics 2e, 11.7: 8.630 and 7.800 g, between copper and silver."""
    person = conservator(phone)
    coin = make_item("L.2026.003", title="Ten-groat piece", materials="silver, struck")
    HydrostaticWeighing.objects.create(
        item=coin, weighed_at=NINE, in_air_g=8.63, in_water_g=7.8, water_temperature_degc=20
    )
    person.go(coin.get_absolute_url())
    person.follow("What its density may mean")
    person.fill({"Density of one part": "10,49", "Density of the other part": "8.92"})
    person.press("Reckon their shares")

    assert phone.get_by_text("The part of 10.49").is_visible()
    assert phone.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
    person.fill({"Density of one part": "104.9"})
    person.press("Reckon their shares", refused=True)
    assert phone.locator("[name=other_g_cm3]").input_value() == "8.92"


@pytest.mark.parametrize("script", [True, False])
def test_a_size_is_quoted_from_an_old_book(script, page, page_without_script, conservator):
    """SCENARIO 8: 45.0 mm in the catalogue of 1811."""
    shown = page if script else page_without_script
    person = conservator(shown, axe_too=script)
    model = make_item("R.1889.7", kind="historic_copy")
    person.go(f"/things/{model.number}/descent/new/")
    shown.get_by_text("Does an old source say").click()
    person.fill({"How": "not known", "What is known of an unknown model": "the medal of 1702"})
    person.fill({"Its size across, as quoted": "45.0", "Quoted from": "Sale catalogue of 1811"})
    person.press("Save the step")

    row = DescentLink.objects.get()
    assert (row.source_across_mm, row.evidence("source_across_mm")) == (45.0, "quoted")
