"""A shape as the two selectors of the Web Annotation Data Model (W3C Recommendation 23 February 2017).

4.2.1 FragmentSelector by Media Fragments (xywh, whole pixels), and 4.2.7 SvgSelector, which keeps the shape itself.
"""

from math import ceil, floor
from typing import Any

from records.annotating.shapes import Points, box, corners

MEDIA_FRAGMENTS = "http://www.w3.org/TR/media-frags/"
SVG = "http://www.w3.org/2000/svg"


def selectors(shape: str, points: Points) -> list[dict[str, Any]]:
    return [
        {"type": "SvgSelector", "value": svg_of(shape, points)},
        {"type": "FragmentSelector", "conformsTo": MEDIA_FRAGMENTS, "value": fragment(points)},
    ]


def svg_of(shape: str, points: Points) -> str:
    """The shape alone, as the standard asks; a point is a circle of one pixel."""
    if shape == "point":
        (x, y), *_ = points
        drawn = f'<circle cx="{x:g}" cy="{y:g}" r="1"/>'
    elif shape == "rectangle":
        left, top, width, height = box(points)
        drawn = f'<rect x="{left:g}" y="{top:g}" width="{width:g}" height="{height:g}"/>'
    else:
        listed = " ".join(f"{x:g},{y:g}" for x, y in corners(shape, points))
        drawn = f'<{"polygon" if shape == "polygon" else "polyline"} points="{listed}"/>'
    return f'<svg xmlns="{SVG}">{drawn}</svg>'


def fragment(points: Points) -> str:
    """The box around the shape in whole pixels, never smaller than one."""
    left, top, width, height = box(points)
    x, y = floor(left), floor(top)
    return f"xywh={x},{y},{max(ceil(left + width) - x, 1)},{max(ceil(top + height) - y, 1)}"
