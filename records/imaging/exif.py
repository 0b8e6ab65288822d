"""The few EXIF facts a record uses: when, with what, which way up. Pure.

Tag numbers: Exif 2.32 (CIPA DC-008-2019), tables 3 to 8.
"""

import re
import struct
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, timezone

from PIL import Image

MAKE, MODEL, ORIENTATION, EXIF_IFD = 0x010F, 0x0110, 0x0112, 0x8769
DATE_ORIGINAL, DATE_DIGITISED = 0x9003, 0x9004
OFFSET_ORIGINAL, OFFSET_DIGITISED = 0x9011, 0x9012
CAMERA_LENGTH = 100


@dataclass(frozen=True)
class Seen:
    """What the camera wrote; `taken_at` is aware only if the camera wrote its offset from UTC."""

    taken_at: datetime | None = None
    camera: str = ""
    orientation: int = 1


def read(picture: Image.Image) -> Seen:
    """Read what is there; broken EXIF counts as none, since the picture itself is sound."""
    try:
        tags = picture.getexif()
        details = tags.get_ifd(EXIF_IFD)
        return Seen(_taken_at(details), _camera(tags), _orientation(tags))
    except (OSError, ValueError, SyntaxError, LookupError, TypeError, AttributeError, struct.error):
        return Seen()


def _orientation(tags: Image.Exif) -> int:
    value = tags.get(ORIENTATION, 1)
    return value if isinstance(value, int) and 1 <= value <= 8 else 1


def _camera(tags: Image.Exif) -> str:
    make, model = _text(tags.get(MAKE)), _text(tags.get(MODEL))
    name = model if model.lower().startswith(make.lower()) else f"{make} {model}".strip()
    return name[:CAMERA_LENGTH]


def _text(value: object) -> str:
    if isinstance(value, bytes):
        value = value.decode("utf-8", "replace")
    return " ".join(re.sub(r"[\x00-\x1f\x7f\ufffd]", " ", str(value or "")).split())


def _taken_at(details: dict[int, object]) -> datetime | None:
    for date_tag, offset_tag in ((DATE_ORIGINAL, OFFSET_ORIGINAL), (DATE_DIGITISED, OFFSET_DIGITISED)):
        match = re.fullmatch(r"(\d{4})[:-](\d\d)[:-](\d\d)[ T](\d\d):(\d\d):(\d\d)", _text(details.get(date_tag)))
        if match and match[1] != "0000":
            try:
                instant = datetime(*map(int, match.groups()))
            except ValueError:  # a camera that never had its clock set
                continue
            return instant.replace(tzinfo=_zone(_text(details.get(offset_tag))))
    return None


def _zone(offset: str) -> timezone | None:
    match = re.fullmatch(r"([+-])(\d\d):(\d\d)", offset)
    if not match:
        return UTC if offset == "Z" else None
    shift = timedelta(hours=int(match[2]), minutes=int(match[3]))
    return timezone(-shift if match[1] == "-" else shift) if shift < timedelta(hours=24) else None
