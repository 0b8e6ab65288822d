"""Photographs in the browser: ten at once with one bad, by touch and without script; the page answers while they go."""

import pytest

from records.models import Photo
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
