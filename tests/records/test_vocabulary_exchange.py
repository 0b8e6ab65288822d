"""The vocabulary as SKOS: out and in without loss, checked against rdflib's closed SKOS namespace; faults by line."""

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from rdflib import RDF, SKOS, Graph

from records.models import Term
from records.services import vocabulary
from records.skos.reading import read
from records.skos.words import NotTaken, Word
from records.skos.writing import turtle
from tests.factories import make_user

pytestmark = pytest.mark.django_db
BASE = "https://register.example/vocabulary/"
HEAD = """@prefix skos: <http://www.w3.org/2004/02/skos/core#> .
@prefix register: <urn:electrotype-register:vocabulary:> .
@prefix x: <https://x.example/> .
x:s a skos:ConceptScheme ; skos:notation "finding" .
"""
DENT = Word(
    "finding", "any object", "dent", "Inward deformation.", "stable", "shape", "Do not press.", "own words",
    ("http://vocab.example/1", "urn:isbn:0"), is_retired=True,
)  # fmt: skip
ODD = Word("coat", "", "nickel/“bright” <&> Ω\\", 'Line one.\n"Line two"\ttabbed')


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


def sent(text: str | bytes) -> dict:
    content = text.encode() if isinstance(text, str) else text
    return {"file": SimpleUploadedFile("words.ttl", content, "text/turtle")}


def concept(lines: str) -> str:
    return f"{HEAD}x:knock a skos:Concept ; skos:inScheme x:s ;\n  {lines} .\n"


def test_every_column_of_a_word_survives_the_way_out_and_in():
    found = read(turtle([DENT, ODD], {"finding": "condition finding"}, BASE))

    assert sorted(found.words, key=lambda word: word.label) == [DENT, ODD]
    assert found.left_out == ()


def test_the_whole_vocabulary_read_again_changes_nothing(conservator):
    export = conservator.get(reverse("vocabulary_skos"))

    assert export["Content-Type"] == "text/turtle; charset=utf-8"
    words = read(export.content.decode()).words
    assert len(words) == Term.objects.count() > 100
    assert vocabulary.differences(words) == []


def test_only_properties_that_skos_defines_are_used():
    """rdflib's SKOS is a closed namespace after the Recommendation of 2009: another name raises AttributeError."""
    graph = Graph().parse(data=turtle(vocabulary.words_of(Term.objects.all()), {}, BASE), format="turtle")
    used = {node for triple in graph for node in triple if str(node).startswith(str(SKOS))}

    assert used and all(getattr(SKOS, str(node).removeprefix(str(SKOS))) == node for node in used)


def test_the_conditions_of_the_recommendation_hold():
    """One preferred label in a language; concepts, schemes, collections apart (SKOS Reference, 2009, S14, S9, S37)."""
    graph = Graph().parse(data=turtle(vocabulary.words_of(Term.objects.all()), {}, BASE), format="turtle")
    kinds = [set(graph.subjects(RDF.type, kind)) for kind in (SKOS.Concept, SKOS.ConceptScheme, SKOS.Collection)]

    for node in set().union(*kinds):
        assert len(list(graph.objects(node, SKOS.prefLabel))) == 1
    assert all(kinds) and not kinds[0] & kinds[1] and not kinds[0] & kinds[2] and not kinds[1] & kinds[2]


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        (HEAD + "x:a skos:prefLabel dent .", 5, "not Turtle"),
        (concept('skos:definition "no word"@en'), 5, "prefLabel"),
        (concept('skos:prefLabel "knock"@en, "bump"@en'), 5, "2 times in English"),
        (concept('skos:prefLabel "knock"@en ; skos:exactMatch "12"'), 5, "exactMatch must be an address"),
        (HEAD + 'x:b a skos:Concept ; skos:prefLabel "b"@en .', 5, "skos:inScheme"),
        (HEAD + 'x:c skos:member x:d .\nx:d a skos:Concept ; skos:inScheme x:s ; skos:prefLabel "d" .', 6,
         "collection"),
        (concept('skos:prefLabel "k"@en') + 'x:z a skos:Concept ; skos:inScheme x:s ; skos:prefLabel "k"@en .', 7,
         "second time, after line 5"),
    ],
)  # fmt: skip
def test_what_cannot_be_taken_is_refused_with_its_line(text, line, words):
    with pytest.raises(NotTaken) as refused:
        read(text)

    assert refused.value.line == line and words in str(refused.value)


@pytest.mark.parametrize(
    ("lines", "words"),
    [
        ('skos:prefLabel "knock"@en ; register:defaultStability "lively"', "Line 5: “knock”, default stability"),
        ('skos:prefLabel "knock"@en ; register:pattern "stripes"', "Line 5: “knock”, on a picture"),
        (f'skos:prefLabel "{"k" * 121}"@en', "Line 5"),
        ('skos:prefLabel "knock"@en ; skos:exactMatch <ftp://old.example/1>', "is no address"),
    ],
)
def test_what_the_register_has_no_value_for_is_refused_with_its_line_and_nothing_is_written(conservator, lines, words):
    answer = conservator.post(reverse("vocabulary_import"), sent(concept(lines)))

    assert answer.status_code == 422 and words in answer.content.decode()
    assert not Term.objects.filter(label__startswith="kn").exists()


@pytest.mark.parametrize(
    ("content", "words"),
    [(b"\xff\xfe\x00", "not UTF-8"), (b"", "empty"), (b"# nothing", "no skos:Concept"), (b"[" * 5000, "Turtle"),
     (b"#" * (1024 * 1024 + 1), "larger than 1 MB")],
)  # fmt: skip
def test_no_vocabulary_at_all_is_said_in_one_sentence(conservator, content, words):
    answer = conservator.post(reverse("vocabulary_import"), sent(content))

    assert answer.status_code == 422 and words in answer.content.decode()


def test_one_looks_first_and_then_takes_in_what_was_seen(conservator):
    wear = Term.objects.get(scheme="finding", group="any object", label="wear")
    text = HEAD + (
        'x:g a skos:Collection ; skos:prefLabel "any object"@en ; skos:member x:1, x:2 .\n'
        'x:1 a skos:Concept ; skos:inScheme x:s ; skos:prefLabel "wear"@en, "Abrieb"@de ;\n'
        '  skos:definition "Lost by use." ; skos:altLabel "rubbing"@en .\n'
        'x:2 a skos:Concept ; skos:inScheme x:s ; skos:prefLabel "haze"@en ; skos:definition """Two\nlines.""" .\n'
    )
    page = conservator.post(reverse("vocabulary_import"), sent(text))
    said = page.content.decode()
    assert page.status_code == 200 and "1 new, 1 changed" in said and "skos:altLabel (1×)" in said
    assert not Term.objects.filter(label="haze").exists()

    # A browser sends the lines of a form with a carriage return.
    seen = {"text": page.context["text"].replace("\n", "\r\n"), "seen": page.context["seen"]}
    answer = conservator.post(reverse("vocabulary_import"), seen, follow=True)

    assert "1 new, 1 changed" in answer.content.decode()
    wear.refresh_from_db()
    assert wear.definition == "Lost by use." and wear.history.count() == 2
    assert Term.objects.get(label="haze").definition == "Two\nlines."


def test_what_somebody_changed_meanwhile_is_looked_at_again(conservator):
    wear = Term.objects.get(scheme="finding", group="any object", label="wear")
    wear.definition = "Old."
    text = turtle([*vocabulary.words_of([wear])], {}, BASE)
    page = conservator.post(reverse("vocabulary_import"), sent(text))
    wear.definition = "Another's words."
    wear.save()

    answer = conservator.post(reverse("vocabulary_import"), {k: page.context[k] for k in ("text", "seen")})

    assert answer.status_code == 422 and "changed meanwhile" in answer.content.decode()
    wear.refresh_from_db()
    assert wear.definition == "Another's words."


def test_the_list_shows_definition_source_and_addresses_and_leads_to_the_exchange(conservator):
    Term.objects.create(
        scheme="finding", label="haze", definition="Dull veil.", source="own words", identifiers="http://v.example/7"
    )
    said = conservator.get(reverse("vocabulary_list")).content.decode()

    for words in ("Dull veil.", "Source: own words", "Same word: http://v.example/7", reverse("vocabulary_import")):
        assert words in said


def test_a_reader_exports_and_takes_nothing_in(client):
    client.force_login(make_user("reader"))

    assert client.get(reverse("vocabulary_skos"), {"scheme": "finding"}).status_code == 200
    assert client.post(reverse("vocabulary_import"), sent("")).status_code == 403


def test_an_identifier_typed_by_hand_must_be_an_address(conservator):
    term = Term.objects.filter(scheme="finding").first()
    typed = {"scheme": term.scheme, "label": term.label, "pattern": "plain", "version": term.version}

    answer = conservator.post(reverse("term_edit", args=[term.pk]), typed | {"identifiers": "number 12"})

    assert answer.status_code == 422 and "is no address" in answer.content.decode()
