"""Findings as Web Annotations: expanded by the terms of the W3C vocabulary, they mean what was drawn.

The terms below are those of the Web Annotation Vocabulary (W3C Recommendation 23 February 2017, appendix A) that the
register uses, set down here so that no test asks the network.
"""

import pytest
from pyld import jsonld

from records.annotating.documents import Note, Picture, collection
from records.annotating.selectors import fragment, svg_of
from records.annotating.shapes import around, path

OA, DC, DCTERMS = "http://www.w3.org/ns/oa#", "http://purl.org/dc/elements/1.1/", "http://purl.org/dc/terms/"
AS, RDF = "http://www.w3.org/ns/activitystreams#", "http://www.w3.org/1999/02/22-rdf-syntax-ns#"


def _iri(name: str) -> dict[str, str]:
    return {"@id": name, "@type": "@id"}


def _word(name: str) -> dict[str, str]:
    return {"@id": name, "@type": "@vocab"}


def _count(name: str) -> dict[str, str]:
    return {"@id": AS + name, "@type": "http://www.w3.org/2001/XMLSchema#nonNegativeInteger"}


TERMS = {
    "id": {"@id": "@id", "@type": "@id"}, "type": {"@id": "@type", "@type": "@id"},
    **{name: OA + name for name in (
        "Annotation", "SpecificResource", "TextualBody", "SvgSelector", "FragmentSelector", "assessing", "describing",
        "tagging", "classifying",
    )},
    "AnnotationCollection": AS + "OrderedCollection", "AnnotationPage": AS + "OrderedCollectionPage",
    "Person": "http://xmlns.com/foaf/0.1/Person", "name": "http://xmlns.com/foaf/0.1/name",
    "label": "http://www.w3.org/2000/01/rdf-schema#label", "value": RDF + "value", "format": DC + "format",
    "language": DC + "language", "creator": _iri(DCTERMS + "creator"), "conformsTo": _iri(DCTERMS + "conformsTo"),
    "created": {"@id": DCTERMS + "created", "@type": "http://www.w3.org/2001/XMLSchema#dateTime"},
    "body": _iri(OA + "hasBody"), "target": _iri(OA + "hasTarget"), "source": _iri(OA + "hasSource"),
    "selector": _iri(OA + "hasSelector"), "motivation": _word(OA + "motivatedBy"), "purpose": _word(OA + "hasPurpose"),
    "total": _count("totalItems"), "startIndex": _count("startIndex"), "first": _iri(AS + "first"),
    "items": {"@id": AS + "items", "@type": "@id", "@container": "@list"},
}  # fmt: skip
PICTURE = Picture("https://m.example/photographs/1/", "https://m.example/photographs/1/screen/", 400, 300, "obverse")
NOTE = Note(
    "https://m.example/condition/CR/annotations.json#drawing-1", PICTURE, "polygon", [[10, 20], [40.5, 20], [25, 60]],
    "dent", "Finding 1: dent, 4 h.", ("https://words.example/dent",), "2026-02-03T00:00:00Z", "Tobias",
)  # fmt: skip


@pytest.fixture
def expanded():
    """The one annotation of the collection, every short word replaced by the address that it stands for."""
    said = collection("https://m.example/condition/CR/annotations.json", "Findings", [NOTE])
    (whole,) = jsonld.expand(said | {"@context": TERMS})
    (page,) = whole[AS + "first"]
    ((annotation,),) = [part["@list"] for part in page[AS + "items"]]
    return annotation


def test_each_word_of_an_annotation_is_one_of_the_standard(expanded):
    assert expanded["@type"] == [OA + "Annotation"]
    assert expanded[OA + "motivatedBy"] == [{"@id": OA + "assessing"}]
    purposes = [body[OA + "hasPurpose"][0]["@id"] for body in expanded[OA + "hasBody"]]
    assert purposes == [OA + "describing", OA + "tagging", OA + "classifying"]


def test_the_shape_lies_on_the_photograph_by_both_selectors(expanded):
    (target,) = expanded[OA + "hasTarget"]

    assert target[OA + "hasSource"] == [{"@id": PICTURE.url}]
    svg, box = target[OA + "hasSelector"]
    assert svg["@type"] == [OA + "SvgSelector"]
    assert svg[RDF + "value"] == [{"@value": svg_of("polygon", NOTE.points)}]
    assert box["@type"] == [OA + "FragmentSelector"]
    assert box[RDF + "value"] == [{"@value": "xywh=10,20,31,40"}]
    assert box[DCTERMS + "conformsTo"] == [{"@id": "http://www.w3.org/TR/media-frags/"}]


@pytest.mark.parametrize(
    ("shape", "points", "drawn"),
    [
        ("point", [[3, 4]], '<circle cx="3" cy="4" r="1"/>'),
        ("rectangle", [[9, 8], [1, 2]], '<rect x="1" y="2" width="8" height="6"/>'),
        ("line", [[0, 0], [5, 5.5]], '<polyline points="0,0 5,5.5"/>'),
        ("polygon", [[0, 0], [5, 0], [5, 5]], '<polygon points="0,0 5,0 5,5"/>'),
    ],
)
def test_a_shape_is_written_as_the_svg_it_is(shape, points, drawn):
    assert svg_of(shape, points) == f'<svg xmlns="http://www.w3.org/2000/svg">{drawn}</svg>'


def test_a_point_has_a_box_of_one_pixel():
    assert fragment([[3.4, 4.9]]) == "xywh=3,4,1,1"


def test_a_rectangle_is_drawn_round_its_four_corners():
    assert path("rectangle", [[9, 8], [1, 2]]) == "M 1.0 2.0 L 9.0 2.0 L 9.0 8.0 L 1.0 8.0 Z"


def test_a_detail_has_room_about_it_and_stays_inside_the_picture():
    assert around([[0, 0], [10, 10]], (400, 300), share=0.1) == (0, 0, 50, 50)
