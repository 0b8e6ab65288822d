"""The line of descent by keyboard and on a phone, its sheet, marks of an original at the gate, rules compared."""

import pytest
from playwright.sync_api import expect

from records.models import Document, Item
from tests.browser.test_curator import copy  # noqa: F401  (a marked copy with its line of descent)
from tests.factories import make_consent

TREE = "/things/OVM.1931.0044/family/"


def test_the_tree_is_walked_by_keyboard_to_the_page_of_a_piece(page, walk, copy):  # noqa: F811
    reader = walk(page, "reader")
    reader.go(TREE)
    links = page.locator(".tree-node a")
    assert links.count() == 4

    page.get_by_role("region", name="Drawing of the line of descent").focus()
    for number in ("OVM.1931.0044", "M-1"):
        page.keyboard.press("Tab")
        expect(page.locator(":focus")).to_contain_text(number)
    with page.expect_navigation():
        page.keyboard.press("Enter")

    reader.arrived()
    assert page.url.endswith("/things/M-1/")


@pytest.mark.parametrize("screen", ["page", "phone"])
def test_the_tree_keeps_its_letters_and_the_page_its_width(request, walk, copy, screen):  # noqa: F811
    view = request.getfixturevalue(screen)
    Item.objects.filter(pk=copy.pk).get().descendants.create(
        target=Item.objects.create(number="M-2", kind="mould", title="A mould with a very long title " * 8),
        transfer="moulding",
    )
    walk(view, "reader").go(TREE)

    assert view.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
    drawn = view.locator(".tree-scroll > .tree").bounding_box()
    assert drawn["width"] == pytest.approx(float(view.locator(".tree-scroll > .tree").get_attribute("width")), abs=1)


def test_a_lost_original_is_told_on_the_page_of_its_copy_and_the_sheet_is_issued(phone, walk, copy):  # noqa: F811
    registrar = walk(phone, "registrar")
    registrar.go("/things/OVM.1931.0044/edit/")
    registrar.fill({"Held as": "stolen"})
    registrar.press("Save")

    registrar.go("/things/R.2026.1/")
    assert "is recorded as stolen" in registrar.text()

    phone.locator("form[action*='descent-sheet'] button").click()
    registrar.arrived()
    assert Document.objects.get().kind == "descent-sheet"


def test_a_label_is_not_approved_before_the_makers_mark_of_the_original_is_accounted_for(
    page,
    phone,
    walk,
    copy,  # noqa: F811
):
    original = Item.objects.get(number="OVM.1931.0044")
    make_consent(original, copies_max_count=2)
    original.marks.create(text="C.A.F.", purpose="maker", face="obverse", method="engraved")
    curator = walk(page, "curator")
    curator.go("/things/R.2026.1/label/")
    curator.fill(
        {
            "After what": "after a cast bronze medal of Maud Ferrigan by Corvin Aldersey the Younger, 1624",
            "Body": "Copper, one face. The medal is OVM.1931.0044.",
            "Print which copy of how many authorised it is": True,
        }
    )
    curator.press("Keep the wording")
    curator.press("Approve", refused=True)
    assert "What became of “C.A.F.”" in curator.text()

    conservator = walk(phone, "conservator")
    conservator.go("/things/R.2026.1/marks/original/")
    conservator.follow("Record it")
    conservator.fill({"What became of it": "left", "How, or why it was left": "the signature belongs to the design"})
    conservator.press("Keep")
    assert "left on the copy" in conservator.text()

    curator.go("/things/R.2026.1/label/")
    curator.press("Approve")
    assert "approved" in curator.text()


def test_what_rules_ask_is_written_down_on_a_phone(phone, walk, copy):  # noqa: F811
    conservator = walk(phone, "conservator")
    conservator.go("/things/R.2026.1/marks/facts/")
    conservator.fill({"Width of a central hole": "99 m"})
    conservator.press("Keep", refused=True)

    conservator.fill({"Width of a central hole": "0", "Corners of a polygon": "0"})
    conservator.press("Keep")
    assert Item.objects.get(pk=copy.pk).rule_facts.corner_count == 0


def test_a_rule_is_compared_with_its_text(page, walk):
    curator = walk(page, "curator")
    curator.go("/mark-rules/us-copy.face/compared/")
    curator.fill({"Which version of the text": "as in force in March 2026"})
    curator.press("Keep")
    assert "as in force in March 2026, checked" in curator.text()
