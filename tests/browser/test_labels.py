"""A label in two languages, tags on a sheet, a mark tried beforehand, a house rule, and what a stranger reads."""

from tests.browser.test_curator import copy  # noqa: F401  (a marked copy with its line of descent)

WORDING = {
    "After what": "after a cast bronze medal of Maud Ferrigan by Corvin Aldersey the Younger, 1624",
    "Body": "Copper, one face. The medal is OVM.1931.0044.",
}


def test_a_label_says_how_large_its_letters_are_and_refuses_a_second_language_that_hides_the_copy(page, walk, copy):  # noqa: F811
    curator = walk(page, "curator")
    curator.go(f"/things/{copy.number}/label/")

    curator.fill(WORDING | {"Read from": "1000", "Second language": "German", "Heading in it": "Medaille, 2026"})
    curator.press("Keep the wording")
    assert "does not say that this is a copy" in curator.text()
    assert "small letters 4.0 mm high, 23.3 pt" in curator.text()

    curator.fill({"Heading in it": "Galvanoplastische Kopie, 2026", "Text in it": "nach einer Medaille von 1624"})
    curator.press("Keep the wording")
    curator.press("Approve")
    assert "approved" in curator.text() and "Galvanoplastische Kopie, 2026" in curator.text()

    page.context.clear_cookies()
    curator.go(f"/c/{copy.number}/")
    assert "This piece is a copy, not an original work." in curator.text()
    assert (
        "Galvanoplastische Kopie, 2026" in curator.text()
        and not page.get_by_role("link", name="Open the record").count()
    )


def test_tags_on_a_sheet_name_what_may_not_be_printed(page, walk, copy):  # noqa: F811
    registrar = walk(page, "registrar")
    registrar.go("/tags/")
    registrar.fill({"Numbers": f"{copy.number} R.1999.9"})
    registrar.press("Print", refused=True)
    assert "Not in the register: R.1999.9" in registrar.text()


def test_a_mark_is_tried_before_the_mould_and_a_house_rule_is_added(page, walk, copy):  # noqa: F811
    conservator = walk(page, "conservator")
    conservator.go("/things/OVM.1931.0044/mark-plan/")
    conservator.fill({"The mark": "OVM 2026 COPY", "Thickness of the wall": "0.4"})
    conservator.press("Try this mark")
    assert "breaks an unbacked wall of 0.40 mm" in conservator.text()

    conservator.go("/mark-rules/")
    conservator.follow("Add a rule")
    conservator.fill(
        {
            "Short name": "own.height", "What it asks, in a sentence": "Letters are at least 3 mm high.",
            "The question": "Letters are at least so high", "At least": "3", "Where it is written": "House rule 9",
            "Which version of the text": "first",
        }
    )  # fmt: skip
    conservator.press("Keep the rule")
    assert "Letters are at least 3 mm high." in conservator.text()

    conservator.go(f"/things/{copy.number}/marks/original/")
    assert "No hallmark or maker’s mark is recorded" in conservator.text()
