"""A point is placed by touch, by keys, or by two numbers without script; the pages of a drying core are read by axe."""

import pytest

from process.models import Shell, ThicknessPoint
from tests.browser.walking import Walker
from tests.factories import make_party
from tests.process.scenario_runs import mask_run, medal_run

ADD = "/shells/S-03/thickness/new/"
POINT = {"Where": "nose", "Thickness": "0.66", "Method": "micrometer"}


@pytest.fixture
def technician(sign_in_as):
    def sign_in(page, role: str = "technician"):
        make_party("Pell", user=sign_in_as(page, role))
        medal_run()

    return sign_in


def test_a_touch_fills_in_the_place_and_arrow_keys_move_it(phone, axe, technician):
    technician(phone)
    person = Walker(phone, axe)
    person.go(ADD)
    person.fill(POINT | {"Or on a plain outline": "disc"})

    picture = phone.locator("[data-ground=outline-disc] svg")
    box = picture.bounding_box()
    picture.tap(position={"x": box["width"] * 0.25, "y": box["height"] * 0.5})
    picture.focus()
    phone.keyboard.press("ArrowRight")
    phone.keyboard.press("Shift+ArrowUp")
    person.press("Keep the point")

    row = ThicknessPoint.objects.get(place="nose")
    assert (row.outline, row.x_pct, row.y_pct) == ("disc", pytest.approx(26, abs=1), pytest.approx(45, abs=1))
    assert phone.locator(".chart-narrow svg.spot-map").is_visible()


def test_two_numbers_do_without_script(page_without_script, technician):
    technician(page_without_script)
    person = Walker(page_without_script, lambda page: None)
    person.go(ADD)
    person.fill(POINT | {"Or on a plain outline": "disc", "From the left": "58.1", "From the top": "37.8"})
    person.press("Keep the point")

    row = ThicknessPoint.objects.get(place="nose")
    assert (row.x_pct, row.y_pct) == (58.1, 37.8)


def test_the_pages_of_a_core_that_drank(page, axe, sign_in_as):
    make_party("Tobias", user=sign_in_as(page, "conservator"))
    shell = Shell.objects.get(pk=mask_run(1507.2).cathodes.get().shell.pk)
    person = Walker(page, axe)

    person.go(shell.get_absolute_url())
    person.follow("Write how it is closed")
    person.fill({"Last rinse, pH": "6.4", "Pinholes found": "0", "Decision": "close it"})
    person.fill({"Holes and back closed with": "wax"})
    person.press("Keep, then sign")
    person.press("Sign", refused=True)
    person.press("Record what has happened")

    assert "Closed too early" in person.text()
