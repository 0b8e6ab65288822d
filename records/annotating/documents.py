"""Findings on photographs as JSON-LD: a Web Annotation collection, and a IIIF Presentation 3 manifest."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from records.annotating.selectors import selectors
from records.annotating.shapes import Points

ANNOTATION_CONTEXT = "http://www.w3.org/ns/anno.jsonld"
PRESENTATION_CONTEXT = "http://iiif.io/api/presentation/3/context.json"


@dataclass(frozen=True)
class Picture:
    """A photograph: its address, that of the file to be shown, its size in pixels, what it shows."""

    url: str
    file_url: str
    width: int
    height: int
    words: str


@dataclass(frozen=True)
class Note:
    """A finding on one picture: its own address, its word with the address of the word, and what is said of it."""

    url: str
    picture: Picture
    shape: str
    points: Points
    term: str
    words: str
    term_urls: Sequence[str] = field(default_factory=tuple)
    created: str = ""
    creator: str = ""


def annotation(note: Note, target: str) -> dict[str, Any]:
    said = {"id": note.url, "type": "Annotation", "motivation": "assessing", "body": _body(note)}
    if note.created:
        said["created"] = note.created
    if note.creator:
        said["creator"] = {"type": "Person", "name": note.creator}
    said["target"] = {"type": "SpecificResource", "source": target, "selector": selectors(note.shape, note.points)}
    return said


def _body(note: Note) -> list[dict[str, Any]]:
    described = {"type": "TextualBody", "value": note.words, "purpose": "describing", "format": "text/plain",
                 "language": "en"}  # fmt: skip
    word = {"type": "TextualBody", "value": note.term, "purpose": "tagging", "format": "text/plain", "language": "en"}
    classed = [{"type": "SpecificResource", "source": url, "purpose": "classifying"} for url in note.term_urls]
    return [described, word, *classed]


def collection(url: str, label: str, notes: Sequence[Note]) -> dict[str, Any]:
    """All annotations of a report in one page of one collection."""
    listed = [annotation(note, note.picture.url) for note in notes]
    first = {"id": f"{url}#page", "type": "AnnotationPage", "startIndex": 0, "items": listed}
    return {"@context": ANNOTATION_CONTEXT, "id": url, "type": "AnnotationCollection", "label": label,
            "total": len(listed), "first": first}  # fmt: skip


def manifest(
    url: str, label: str, pictures: Sequence[Picture], notes: Sequence[Note], facts: Sequence[tuple[str, str]]
):
    """One canvas for each photograph, as large as the upright picture, with the findings that lie on it."""
    said: dict[str, Any] = {"@context": PRESENTATION_CONTEXT, "id": url, "type": "Manifest", "label": _en(label)}
    if facts:
        said["metadata"] = [{"label": _en(name), "value": _en(value)} for name, value in facts if value]
    said["items"] = [_canvas(f"{url}/canvas/{n}", picture, notes) for n, picture in enumerate(pictures, 1)]
    return said


def _canvas(url: str, picture: Picture, notes: Sequence[Note]) -> dict[str, Any]:
    size = {"height": picture.height, "width": picture.width}
    shown = {"id": picture.file_url, "type": "Image", "format": "image/jpeg", **size}
    painting = {"id": f"{url}/picture", "type": "Annotation", "motivation": "painting", "body": shown, "target": url}
    canvas = {"id": url, "type": "Canvas", "label": _en(picture.words), **size,
              "items": [{"id": f"{url}/page", "type": "AnnotationPage", "items": [painting]}]}  # fmt: skip
    mine = [annotation(note, url) for note in notes if note.picture == picture]
    if mine:
        canvas["annotations"] = [{"id": f"{url}/findings", "type": "AnnotationPage", "items": mine}]
    return canvas


def _en(words: str) -> dict[str, list[str]]:
    return {"en": [words]}
