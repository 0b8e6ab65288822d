"""Reading finished papers back, the way another program would."""

import re
import unicodedata
from io import BytesIO
from typing import Any

from pypdf import PdfReader


def pages(pdf: bytes) -> list[str]:
    """The text of each page with all white space made single."""
    texts = (page.extract_text() for page in PdfReader(BytesIO(pdf)).pages)
    return [re.sub(r"\s+", " ", unicodedata.normalize("NFC", text)) for text in texts]


def text(pdf: bytes) -> str:
    return " ".join(pages(pdf))


def fonts(pdf: bytes) -> dict[str, bool]:
    """Every font of the file with whether its outlines are embedded."""
    found: dict[str, bool] = {}
    for page in PdfReader(BytesIO(pdf)).pages:
        table: Any = page["/Resources"]
        for font in (reference.get_object() for reference in table["/Font"].values()):
            descriptor: Any = font.get("/FontDescriptor", {})
            found[font["/BaseFont"]] = "/FontFile2" in descriptor
    return found


def used_fonts(pdf: bytes) -> set[str]:
    """The names of the fonts that some text is really set in."""
    names: set[str] = set()
    for page in PdfReader(BytesIO(pdf)).pages:
        table: Any = page["/Resources"]
        contents: Any = page.get_contents()
        for name in re.findall(rb"(/F\S+) [\d.]+ Tf", contents.get_data()):
            names.add(table["/Font"][name.decode()].get_object()["/BaseFont"])
    return names


def size(pdf: bytes) -> tuple[float, float]:
    """Width and height of the first page in points."""
    box = PdfReader(BytesIO(pdf)).pages[0].mediabox
    return float(box.width), float(box.height)
