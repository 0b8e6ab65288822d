"""What the page of one photograph shows: the picture, what is known of it, what its camera wrote, what is doubtful."""

from typing import Any

from records import imaging
from records.captions import copy_words
from records.models import Photo
from records.photo_doubts import camera_time, doubts, is_corrected
from records.photo_measures import scale_of, scale_words
from records.photo_measures import shown as drawn_on

# What was done so that it stands upright, by Exif 2.32, section 4.6.4, “Orientation”.
TURNED = {
    2: "mirrored", 3: "by 180°", 4: "mirrored, by 180°", 5: "mirrored, by 270°", 6: "by 90°", 7: "mirrored, by 90°",
    8: "by 270°",
}  # fmt: skip
Fact = tuple[Any, ...]


def context_of(shown: Photo) -> dict[str, Any]:
    """Everything the template reads; of a row with its thing, its photographer and `moulded_on`."""
    seen = imaging.seen_in(shown.path)
    return {
        "photo": shown, "alt": alt_of(shown), "copy_words": copy_words(shown.item), "facts": _facts(shown),
        "camera_facts": _camera_facts(seen) if seen else [], "camera_time": camera_time(seen),
        "is_corrected": is_corrected(shown, seen), "doubts": list(doubts(shown, seen)), **_measures(shown),
    }  # fmt: skip


def _measures(shown: Photo) -> dict[str, Any]:
    scale = scale_of(shown)
    measures, shapes = drawn_on(shown, scale)
    return {
        "scale": scale, "scale_words": scale_words(scale) if scale else "", "measures": measures, "shapes": shapes,
    }  # fmt: skip


def alt_of(shown: Photo) -> str:
    """What somebody who does not see it should know: the view, the thing, and that a copy is one."""
    item = shown.item
    kind = f"{item.get_kind_display()} " if item and item.is_copy else ""
    return f"{shown.view_words} of {kind}{item.number}, {item.title}" if item else f"{shown.view_words}, {shown}"


def _facts(shown: Photo) -> list[Fact]:
    item = shown.item
    in_frame = [name for has, name in ((shown.has_scale, "scale"), (shown.has_colour_target, "colour target")) if has]
    return [
        ("Shows", item and f"{item.number} {item.title}", item and item.get_absolute_url()),
        ("Subject", shown.subject),
        ("View", shown.view_words),
        ("Before or after", shown.get_moment_display()),
        ("Light", shown.light),
        ("In the frame", ", ".join(in_frame) or "no scale, no colour target"),
        ("By", str(shown.taken_by or "")),
        ("Rights", shown.rights),
    ]


def _camera_facts(seen: imaging.Seen) -> list[Fact]:
    return [
        ("Camera", seen.camera),
        ("Lens", seen.lens),
        ("Exposure", seen.exposure),
        ("Turned upright", TURNED.get(seen.orientation, "")),
        ("Place", _place(seen)),
    ]


def _place(seen: imaging.Seen) -> str:
    """51.50000° N, 7.25000° W, and that nobody outside learns it from a small copy."""
    if seen.latitude_deg is None or seen.longitude_deg is None:
        return ""
    north, east = ("NS"[seen.latitude_deg < 0], "EW"[seen.longitude_deg < 0])
    place = f"{abs(seen.latitude_deg):.5f}° {north}, {abs(seen.longitude_deg):.5f}° {east}"
    return f"{place}; in the original file only"
