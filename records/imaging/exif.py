"""The few EXIF facts a record uses: when, with what, which way up, and where. Pure.

Tag numbers: Exif 2.32 (CIPA DC-008-2019), tables 3 to 8 and 15.
"""

import re
import struct
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta, timezone
from typing import Any

from PIL import Image

MAKE, MODEL, ORIENTATION, EXIF_IFD, GPS_IFD = 0x010F, 0x0110, 0x0112, 0x8769, 0x8825
EXPOSURE_S, F_NUMBER, ISO, FOCAL_MM, LENS = 0x829A, 0x829D, 0x8827, 0x920A, 0xA434
DATE_ORIGINAL, DATE_DIGITISED = 0x9003, 0x9004
OFFSET_ORIGINAL, OFFSET_DIGITISED = 0x9011, 0x9012
LATITUDE, LONGITUDE = (1, 2, "S", 90), (3, 4, "W", 180)  # tags of the letter and the number, the minus, the limit
LONGEST = 100
BROKEN = (OSError, ValueError, SyntaxError, LookupError, TypeError, AttributeError, ArithmeticError, struct.error)


@dataclass(frozen=True)
class Seen:
    """What the camera wrote; `taken_at` is aware only if the camera wrote its offset from UTC."""

    taken_at: datetime | None = None
    camera: str = ""
    lens: str = ""
    exposure: str = ""
    orientation: int = 1
    latitude_deg: float | None = None
    longitude_deg: float | None = None


def read(picture: Image.Image) -> Seen:
    """Read what is there; broken EXIF counts as none, since the picture itself is sound."""
    try:
        tags = picture.getexif()
        details = tags.get_ifd(EXIF_IFD)
        said = Seen(_taken_at(details), _camera(tags), _text(details.get(LENS))[:LONGEST], _exposure(details),
                    _orientation(tags))  # fmt: skip
    except BROKEN:
        return Seen()
    try:
        place = tags.get_ifd(GPS_IFD)
        return replace(said, latitude_deg=_degrees(place, *LATITUDE), longitude_deg=_degrees(place, *LONGITUDE))
    except BROKEN:
        return said


def _orientation(tags: Mapping[int, Any]) -> int:
    value = tags.get(ORIENTATION, 1)
    return value if isinstance(value, int) and 1 <= value <= 8 else 1


def _camera(tags: Mapping[int, Any]) -> str:
    make, model = _text(tags.get(MAKE)), _text(tags.get(MODEL))
    name = model if model.lower().startswith(make.lower()) else f"{make} {model}".strip()
    return name[:LONGEST]


def _exposure(details: Mapping[int, Any]) -> str:
    """As a photographer says it: 1/125 s, f/8, ISO 100, 60 mm."""
    time_s, aperture, focal_mm = (_number(details.get(tag)) for tag in (EXPOSURE_S, F_NUMBER, FOCAL_MM))
    iso = details.get(ISO)
    said = [
        time_s and (f"{time_s:g} s" if time_s >= 0.4 else f"1/{1 / time_s:.0f} s"), aperture and f"f/{aperture:g}",
        f"ISO {iso}" if isinstance(iso, int) else None, focal_mm and f"{focal_mm:g} mm",
    ]  # fmt: skip
    return ", ".join(part for part in said if isinstance(part, str))


def _number(value: Any) -> float | None:
    """A positive number; cameras write 0/0 for what they do not know."""
    number = float(value) if value is not None else 0.0
    return number if 0 < number < 1e6 else None


def _degrees(place: Mapping[int, Any], letter_tag: int, tag: int, minus: str, limit: int) -> float | None:
    """Degrees, minutes and seconds as one number; nothing where the receiver had no fix."""
    parts = [float(part) for part in place.get(tag, ())]
    if len(parts) != 3:
        return None
    degrees = parts[0] + parts[1] / 60 + parts[2] / 3600
    if not 0 <= degrees <= limit:
        return None
    return -degrees if _text(place.get(letter_tag)).upper() == minus else degrees


def _text(value: object) -> str:
    if isinstance(value, bytes):
        value = value.decode("utf-8", "replace")
    return " ".join(re.sub(r"[\x00-\x1f\x7f\ufffd]", " ", str(value or "")).split())


def _taken_at(details: Mapping[int, Any]) -> datetime | None:
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
