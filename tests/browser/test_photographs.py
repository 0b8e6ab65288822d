"""Photographs in the browser: ten at once with one bad, by touch and without script; the page answers while they go."""

import re

import pytest
from django.core.files.base import ContentFile

from records.models import Item, Photo, PhotoScale
from records.services.photographs import keep_photo
from tests.browser.walking import Walker, picture
from tests.factories import make_item, make_party

ADD = "/things/R.1/photographs/new/"
BAD = {"name": "notes.jpg", "mimeType": "image/jpeg", "buffer": b"no picture at all"}


def ten() -> list[dict]:
    """Nine pictures and, in their midst, a file that is none."""
    good = [picture(f"view-{k}.jpg", f"#8a6a{k}a") for k in range(9)]
    return [*good[:4], BAD, *good[4:]]


@pytest.fixture
def technician(sign_in_as):
    def sign_in(page):
        make_party("Pell", user=sign_in_as(page, "technician"))
        make_item("R.1", title="Medal of the mill")

    return sign_in


@pytest.mark.parametrize("screen", ["page", "phone"])
def test_ten_at_once_with_one_bad_each_said_by_name(screen, request, axe, technician):
    page = request.getfixturevalue(screen)
    technician(page)
    person = Walker(page, axe)
    person.go(ADD)
    person.fill({"Photographs": ten()})
    axe(page)
    assert page.locator("li.sent").count() == 10

    page.get_by_role("button", name="Keep the photographs").click()
    page.get_by_text("9 kept, 1 not kept").wait_for()

    axe(page)
    lines = page.locator("li.sent").all_inner_texts()
    assert [line for line in lines if "refused" in line] == [lines[4]]
    assert "“notes.jpg” is not a picture" in lines[4]
    assert Photo.objects.count() == 9
    person.follow("Go on with R.1")


def test_without_script_the_answer_says_the_same(page_without_script, technician):
    technician(page_without_script)
    person = Walker(page_without_script, lambda page: None)
    person.go(ADD)
    person.fill({"Photographs": ten()})
    person.press("Keep the photographs", refused=True)

    assert "“notes.jpg” is not a picture" in person.text()
    assert page_without_script.locator("li.sent").count() == 10
    assert Photo.objects.count() == 9


def test_what_was_lost_on_the_way_is_sent_again_by_pressing_again(page, technician):
    technician(page)
    person = Walker(page, lambda page: None)
    person.go(ADD)
    person.fill({"Photographs": [picture("a.jpg"), picture("b.jpg", "#123456")]})
    page.route("**/photographs/new/", lambda route: route.abort(), times=1)

    page.get_by_role("button", name="Keep the photographs").click()
    page.get_by_text("1 kept, 1 not kept").wait_for()
    assert page.get_by_text("the connection was lost").is_visible()
    assert Photo.objects.count() == 1
    page.get_by_role("button", name="Keep the photographs").click()
    page.get_by_text("2 kept.").wait_for()

    assert Photo.objects.count() == 2


def test_the_page_answers_while_photographs_go(page, technician):
    """No task of the page's own thread lasts long enough for a person to feel it (0.2 s, common practice)."""
    technician(page)
    Walker(page, lambda page: None).go(ADD)
    page.evaluate("""
        window.longest = 0;
        new PerformanceObserver((list) => list.getEntries().forEach(
            (each) => (window.longest = Math.max(window.longest, each.duration)))).observe({entryTypes: ["longtask"]});
    """)
    page.get_by_label("Photographs", exact=True).set_input_files(ten())
    page.get_by_role("button", name="Keep the photographs").click()
    page.get_by_label("Caption").fill("typed while they went")
    page.get_by_text("9 kept, 1 not kept").wait_for()

    assert page.evaluate("window.longest") < 200


@pytest.fixture
def photographed(technician):
    def keep(page) -> Photo:
        technician(page)
        item = Item.objects.get(number="R.1")
        file = ContentFile(picture()["buffer"])
        return keep_photo(file=file, name="medal.jpg", item=item, has_scale=True)

    return keep


def points(page) -> list[list[float]]:
    return [[float(part) for part in line.split()] for line in page.locator("[data-points]").input_value().splitlines()]


def at(page, x: float, y: float) -> dict[str, float]:
    """Where a pixel of the picture of 640 × 480 stands on the screen, while the whole is shown."""
    box = page.locator(".layer-picture").bounding_box()
    scale = min(box["width"] / 640, box["height"] / 480)
    left, top = (box["width"] - 640 * scale) / 2, (box["height"] - 480 * scale) / 2
    return {"x": left + x * scale, "y": top + y * scale}


@pytest.mark.parametrize("screen", ["page", "phone"])
def test_two_touches_set_the_scale_and_a_drag_mends_an_end(screen, request, axe, photographed):
    page = request.getfixturevalue(screen)
    photo = photographed(page)
    person = Walker(page, axe)
    person.go(f"/photographs/{photo.pk}/scale/")
    layer = page.locator(".layer-picture")
    layer.scroll_into_view_if_needed()

    for x in (140, 400):
        layer.tap(position=at(page, x, 240)) if screen == "phone" else layer.click(position=at(page, x, 240))
    box, start, end = layer.bounding_box(), at(page, 400, 240), at(page, 500, 240)
    page.mouse.move(box["x"] + start["x"], box["y"] + start["y"])
    page.mouse.down()
    page.mouse.move(box["x"] + end["x"], box["y"] + end["y"], steps=4)
    page.mouse.up()

    assert points(page) == [pytest.approx([140, 240], abs=2), pytest.approx([500, 240], abs=2)]
    person.fill({"Length between them": "58.4"})
    person.press("Keep the scale")
    found = re.search(r"1 mm is ([0-9.]+) px", person.text())
    assert float(found[1]) == pytest.approx(360 / 58.4, abs=0.1)


def test_keys_alone_set_move_and_take_away_points(page, axe, photographed):
    photo = photographed(page)
    PhotoScale.objects.create(photo=photo, points=[[140, 240], [500, 240]], length_mm=58.4, pointing_px_count=1)
    person = Walker(page, axe)
    person.go(photo.get_absolute_url())
    person.follow("Measure an area")
    keys = page.keyboard
    page.locator(".layer-picture").focus()

    for steps in ("ArrowRight", "ArrowDown", "ArrowLeft"):
        keys.press("Enter")
        for _ in range(10):
            keys.press(f"Shift+{steps}")
    keys.press("Enter")
    keys.press("Enter")  # lies on the last: picks it up
    keys.press("Shift+ArrowLeft")
    four = points(page)
    keys.press("Backspace")

    step = page.evaluate("640 / document.querySelector('.layer-picture').getScreenCTM().a") / 640 * 10
    assert len(four) == 4 and four[0] == pytest.approx([320, 240], abs=1)
    assert four[1] == pytest.approx([320 + 10 * step, 240], abs=1)
    assert four[3] == pytest.approx([320 - step, 240 + 10 * step], abs=1)
    assert len(points(page)) == 3
    person.fill({"What is measured": "a corner"})
    person.press("Keep it")
    assert "a corner" in person.text() and "mm²" in person.text()


def test_typed_points_are_drawn_and_a_closer_look_keeps_their_place(page, axe, photographed):
    photo = photographed(page)
    person = Walker(page, axe)
    person.go(f"/photographs/{photo.pk}/scale/")
    person.fill({"Two ends": "100 100\n300 250"})
    page.get_by_role("button", name="Closer").click()
    axe(page)

    assert page.locator(".sketch .shape-line").get_attribute("d") == "M 100.0 100.0 L 300.0 250.0"
    assert page.locator(".layer-picture").get_attribute("viewBox") == "160 120 320 240"
    page.get_by_role("button", name="Whole picture").click()
    assert page.locator(".layer-picture").get_attribute("viewBox") == "0 0 640 480"


def test_typed_points_do_without_script(page_without_script, photographed):
    photo = photographed(page_without_script)
    person = Walker(page_without_script, lambda page: None)
    person.go(f"/photographs/{photo.pk}/scale/")
    person.fill({"Two ends": "140 240\n500 240", "Length between them": "58.4"})
    person.press("Keep the scale")

    assert "1 mm is 6.16 px" in person.text()
