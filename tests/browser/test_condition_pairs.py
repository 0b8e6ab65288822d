"""Two dated photographs compared in the browser: aligned, by slider and blinking; side by side without script."""

import pytest

from records.models import PhotoPair, SurveyRule
from tests.browser.test_condition_maps import at, examined, sent  # noqa: F401  (a fixture)
from tests.browser.walking import Walker
from tests.factories import NINE, make_item, make_party, make_place


@pytest.fixture
def dated(examined):  # noqa: F811
    def begin(page):
        report, before = examined(page)
        after = sent(report.item, "later.jpg", "#5a6a3a", taken_at=NINE)
        report.photos.add(before, after)
        return report, before, after

    return begin


@pytest.mark.parametrize("screen", ["page", "phone"])
def test_two_photographs_are_chosen_aligned_and_compared(screen, request, axe, dated):
    page = request.getfixturevalue(screen)
    report, before, after = dated(page)
    report.change = "no_change"
    report.save()
    person = Walker(page, axe)
    person.go(report.get_absolute_url())
    person.follow("Compare two photographs")
    person.press("Lay them over each other")
    for side, shift in (("earlier", 0), ("later", 20)):
        if side == "earlier":
            person.follow("Points on the earlier one")
        layer = page.locator(".layer-picture")
        layer.scroll_into_view_if_needed()
        for x in (150, 450):
            layer.click(position=at(page, x + shift, 240))
        person.press("Keep the points")

    pair = PhotoPair.objects.get()
    assert (pair.before, pair.after) == (before, after)
    assert "aligned by 2 points" in person.text()
    slide = page.locator("[data-slide]")
    slide.focus()
    page.keyboard.press("End")
    assert page.locator("[data-uncovered]").get_attribute("width") == "640"
    page.get_by_role("button", name="Blink").click()
    page.locator("[data-earlier][visibility=hidden]").wait_for(state="attached")
    axe(page)
    page.get_by_role("button", name="Blink").click()
    assert page.locator("[data-earlier]").get_attribute("visibility") == "visible"
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_without_script_they_stand_side_by_side(page_without_script, dated):
    report, before, after = dated(page_without_script)
    pair = PhotoPair.objects.create(report=report, before=before, after=after)
    Walker(page_without_script, lambda page: None).go(pair.get_absolute_url())

    assert page_without_script.locator(".pair-over").is_hidden()
    assert page_without_script.locator(".pair-beside img").count() == 2


def test_a_survey_round_is_walked_on_a_phone(phone, axe, sign_in_as):
    make_party("Tobias", user=sign_in_as(phone, "conservator"))
    make_item("R.1889.7", kind="historic_copy", title="Coin", place=make_place("Gallery, case 4"))
    assert SurveyRule.objects.exists()
    person = Walker(phone, axe)
    person.go("/")
    phone.get_by_role("link", name="Survey R.1889.7, Gallery, case 4").wait_for()
    person.follow("Survey R.1889.7, Gallery, case 4")
    person.fill({"looked at in the light": "raking, left"})
    person.press("Show")
    person.follow("Examine R.1889.7")

    assert person.field("Light used").input_value() == "raking, left"
    person.press("Begin the report")
    person.follow("What else is due at this place")
    assert phone.get_by_role("link", name="Go on with CR-").count() == 1
    assert phone.evaluate("document.documentElement.scrollWidth <= innerWidth")
