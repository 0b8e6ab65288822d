"""Findings on photographs in the browser: drawn, mended, rubbed out by mouse, by touch, by keys alone, by numbers."""

import pytest
from django.core.files.base import ContentFile

from records.models import ConditionReport, FindingMark, Item, Photo
from records.services.photographs import keep_photo
from tests.browser.walking import Walker, picture
from tests.factories import NINE, make_item, make_party, make_report
from tests.records.findings import make_finding

WIDE, HIGH = 640, 480


@pytest.fixture
def examined(sign_in_as):
    """A conservator before an open report with one finding and a photograph of 640 × 480."""

    def begin(page) -> tuple[ConditionReport, Photo]:
        make_party("Tobias", user=sign_in_as(page, "conservator"))
        item = make_item("R.1", title="Medal of the mill")
        report = make_report(item, signed=False)
        make_finding(report)
        return report, sent(item, "medal.jpg")

    return begin


def sent(item: Item, name: str, colour: str = "#8a6a3a", **about) -> Photo:
    file = ContentFile(picture(name, colour)["buffer"])
    return keep_photo(file=file, name=name, item=item, **{"view": "obverse", "taken_at": NINE.replace(month=1)} | about)


def points(page) -> list[list[float]]:
    return [[float(part) for part in line.split()] for line in page.locator("[data-points]").input_value().splitlines()]


def at(page, x: float, y: float) -> dict[str, float]:
    """Where a pixel of the picture stands on the screen, while the whole is shown."""
    box = page.locator(".layer-picture").bounding_box()
    scale = min(box["width"] / WIDE, box["height"] / HIGH)
    left, top = (box["width"] - WIDE * scale) / 2, (box["height"] - HIGH * scale) / 2
    return {"x": left + x * scale, "y": top + y * scale}


def drag(page, start: tuple[float, float], end: tuple[float, float]) -> None:
    box = page.locator(".layer-picture").bounding_box()
    (one, two) = at(page, *start), at(page, *end)
    page.mouse.move(box["x"] + one["x"], box["y"] + one["y"])
    page.mouse.down()
    page.mouse.move(box["x"] + two["x"], box["y"] + two["y"], steps=4)
    page.mouse.up()


@pytest.mark.parametrize("screen", ["page", "phone"])
def test_an_outline_is_drawn_mended_and_rubbed_out(screen, request, axe, examined):
    page = request.getfixturevalue(screen)
    report, _ = examined(page)
    person = Walker(page, axe)
    person.go(report.get_absolute_url())
    person.follow("Draw on a photograph")
    person.follow("Outline on")
    layer = page.locator(".layer-picture")
    layer.scroll_into_view_if_needed()
    for x, y in ((200, 150), (400, 150), (300, 350)):
        layer.tap(position=at(page, x, y)) if screen == "phone" else layer.click(position=at(page, x, y))
    person.press("Keep the drawing")

    corners = FindingMark.objects.get().points
    assert corners == [pytest.approx(p, abs=3) for p in ([200, 150], [400, 150], [300, 350])]
    assert page.locator(".map-as-polygon").count() == 1

    person.follow("Redraw finding 1")
    page.locator(".layer-picture").scroll_into_view_if_needed()
    drag(page, (300, 350), (320, 400))
    person.press("Keep the drawing")
    assert FindingMark.objects.get().points[2] == pytest.approx([320, 400], abs=4)

    person.press("Rub out finding 1")
    assert not FindingMark.objects.exists()
    assert "Rubbed out" in page.get_by_role("main").inner_text()
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_by_keys_alone_a_rectangle_is_drawn_mended_and_rubbed_out(page, axe, examined):
    report, photo = examined(page)
    person = Walker(page, axe)
    person.go(f"/condition/{report.number}/map/{photo.pk}/")
    keys = page.keyboard

    def reach(words: str) -> None:
        """Tab until the link or button of these words has the focus, then press Enter."""
        for _ in range(60):
            keys.press("Tab")
            if words in page.evaluate("document.activeElement.textContent"):
                break
        with page.expect_navigation():
            keys.press("Enter")
        person.arrived()

    reach("Rectangle for finding 1")
    for _ in range(60):
        keys.press("Tab")
        if page.evaluate("document.activeElement.matches('.layer-picture')"):
            break
    keys.press("Enter")
    for _ in range(8):
        keys.press("Shift+ArrowRight")
        keys.press("Shift+ArrowDown")
    keys.press("Enter")
    assert len(points(page)) == 2
    reach("Keep the drawing")
    before = FindingMark.objects.get().points
    assert before[1][0] > before[0][0]
    assert before[1][1] > before[0][1]

    reach("Redraw finding 1")
    page.locator(".layer-picture").focus()
    keys.press("Backspace")
    for _ in range(5):  # away from the other corner: what lies near the cross is picked up instead
        keys.press("Shift+ArrowLeft")
    keys.press("Enter")
    reach("Keep the drawing")
    assert FindingMark.objects.get().points != before

    reach("Rub out finding 1")
    assert not FindingMark.objects.exists()


def test_without_script_numbers_draw_it(page_without_script, examined):
    report, photo = examined(page_without_script)
    person = Walker(page_without_script, lambda page: None)
    person.go(f"/condition/{report.number}/map/{photo.pk}/")
    person.follow("Line for finding 1")
    person.fill({"Points, in pixels": "10 20\n300 200"})
    person.press("Keep the drawing")

    assert FindingMark.objects.get().points == [[10, 20], [300, 200]]


def test_a_photograph_is_looked_at_closely(page, axe, examined):
    report, photo = examined(page)
    FindingMark.objects.create(finding=report.findings.get(), photo=photo, shape="point", points=[[300, 200]])
    person = Walker(page, axe)
    person.go(report.get_absolute_url())
    person.follow("look closely")
    page.get_by_role("button", name="Closer").click()
    axe(page)

    assert page.locator(".layer-picture").get_attribute("viewBox") == "160 120 320 240"
    page.locator(".layer-picture").focus()
    page.keyboard.press("0")
    assert page.locator(".layer-picture").get_attribute("viewBox") == f"0 0 {WIDE} {HIGH}"
