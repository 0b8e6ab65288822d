"""What a file's name and first bytes give away. Pure."""

from pathlib import PurePath


class PictureRefused(ValueError):
    """The file is not taken; the text is one sentence for the person who sent it."""


PICTURE_ENDINGS = {"jpg", "jpeg", "jpe", "png", "tif", "tiff", "webp", "heic", "heif", "hif"}
# Endings that, standing before the last one, show a name made to mislead ("bill.pdf.jpg"). Accession numbers
# with points in them ("OVM.1931.0044.jpg") stay welcome.
OTHER_WORDS = """
apk asp aspx avif bat bin bmp cgi cmd com csv doc docx eps exe gif gz htm html jar js
jsp lnk mjs mov mp4 msi odt pdf phar php phtml pl ppt ps ps1 py rar scr sh svg svgz swf tar txt vbs
xht xhtml xls xlsx xml zip
"""
OTHER_ENDINGS = PICTURE_ENDINGS | set(OTHER_WORDS.split())
TAKEN = "JPEG, PNG, TIFF, HEIC or WebP"
# What stands after “ftyp” in a still picture by ISO/IEC 23008-12 (from memory).
HEIF_BRANDS = {b"heic", b"heix", b"heim", b"heis", b"mif1"}


def refuse_name(name: str) -> None:
    """Refuse a double ending and an ending no picture has; a name without one is judged by content."""
    endings = [suffix.lstrip(".").strip().lower() for suffix in PurePath(name).suffixes]
    for inner in endings[:-1]:
        if inner in OTHER_ENDINGS:
            raise PictureRefused(
                f"“{name}” has two endings, .{inner} and .{endings[-1]}, as harmful files do; "
                "give it one ending and send it again."
            )
    last = endings[-1] if endings else ""
    if last in OTHER_ENDINGS - PICTURE_ENDINGS:
        raise PictureRefused(f"“{name}” ends in .{last}, which is not a photograph; send it as {TAKEN}.")


def is_heif(start: bytes) -> bool:
    """Whether the first bytes are those of a telephone's HEIC picture."""
    return start[4:8] == b"ftyp" and start[8:12] in HEIF_BRANDS


def why_no_picture(name: str, start: bytes) -> str:
    """One sentence for a file that does not open, as precise as its first bytes allow."""
    head = start.lstrip().lower()
    if start.startswith(b"%PDF"):
        kind = "is a PDF, whatever its name says"
    elif start[4:8] == b"ftyp" and not is_heif(start):
        kind = "is an AVIF or film file, which is not read here"
    elif b"<svg" in head:
        kind = "is an SVG drawing, which can carry script"
    elif start.startswith((b"%!PS", b"\xc5\xd0\xd3\xc6")):
        kind = "is a PostScript file"
    elif start.startswith(b"GIF8"):
        kind = "is a GIF, which keeps too few colours for a record"
    elif is_heif(start) or start.startswith((b"\xff\xd8", b"\x89PNG", b"II*\x00", b"MM\x00*")):
        kind = "begins like a picture but is damaged"
    else:
        kind = "is not a picture"
    return f"“{name}” {kind}; send a photograph as {TAKEN}."
