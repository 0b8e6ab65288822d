"""A vocabulary is taken in through the page, with and without script: a fault with its line, a look, the change."""

import pytest

from records.models import Term
from tests.browser.walking import Walker

HEAD = """@prefix skos: <http://www.w3.org/2004/02/skos/core#> .
@prefix x: <https://x.example/> .
x:s a skos:ConceptScheme ; skos:notation "finding" .
"""
HAZE = 'x:haze a skos:Concept ; skos:inScheme x:s ; skos:prefLabel "haze"@en ; skos:definition "Dull veil."@en .\n'


def turtle(text: str) -> dict:
    return {"name": "words.ttl", "mimeType": "text/turtle", "buffer": text.encode()}


@pytest.mark.parametrize("screen", ["page", "phone", "page_without_script"])
def test_words_are_looked_at_and_taken_in(screen, request, axe, sign_in_as):
    page = request.getfixturevalue(screen)
    sign_in_as(page, "conservator")
    person = Walker(page, axe if screen != "page_without_script" else lambda page: None)
    person.go("/vocabulary/")
    person.follow("Take in a vocabulary")

    person.fill({"Vocabulary, SKOS in Turtle": turtle(HEAD + "x:haze a ")})
    person.press("Look what it would change", refused=True)
    assert "Line 4: This is not Turtle" in person.text()

    person.fill({"Vocabulary, SKOS in Turtle": turtle(HEAD + HAZE)})
    person.press("Look what it would change")
    assert "1 new, 0 changed" in person.text() and not Term.objects.filter(label="haze").exists()

    person.press("Take these in")
    assert Term.objects.get(label="haze").definition == "Dull veil."
    assert "Dull veil." in person.text()
