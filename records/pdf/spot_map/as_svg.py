"""The map as SVG for a page: titled, described, without fixed size or inline style."""

from collections.abc import Iterator
from xml.sax.saxutils import escape, quoteattr

from records.pdf.spot_map.layout import DOT, LEADING, Box, ChipPlace, Label, Layout, lay_out
from records.pdf.spot_map.model import SpotMap

WIDTH, NARROW = 720.0, 360.0
SIZE = 15.0
LETTER = 0.56  # mean width of a letter of the page's face, of its size


def measure(text: str, size: float = SIZE) -> float:
    return len(text) * size * LETTER


def svg(shown: SpotMap, id_prefix: str, width: float = WIDTH, *, grid: bool = False) -> str:
    """An <svg> element for a page; `id_prefix` keeps the ids of several maps apart. Narrow maps show values only."""
    layout = lay_out(shown, width, SIZE, measure, named=width >= WIDTH)
    title, described = f"{id_prefix}-title", f"{id_prefix}-desc"
    return "\n".join(
        [
            f'<svg xmlns="http://www.w3.org/2000/svg" class="spot-map" role="img"'
            f' viewBox="0 0 {_n(layout.width)} {_n(layout.height)}"'
            f" aria-labelledby={quoteattr(f'{title} {described}')}>",
            f"<title id={quoteattr(title)}>{escape(shown.title)}</title>",
            f"<desc id={quoteattr(described)}>{escape(shown.description)}</desc>",
            ground(shown, layout.width, layout.picture_height),
            *(_grid(layout.width, layout.picture_height) if grid else ()),
            *(_leader(label) for label in layout.labels if label.leader),
            *(_dot(label, layout.size) for label in layout.labels),
            *(_label(label, layout.size) for label in layout.labels),
            *(_chip(place, layout) for place in layout.chips),
            "</svg>",
        ]
    )


def ground(shown: SpotMap, width: float, height: float) -> str:
    """The photograph, or the plain outline of a piece."""
    w, h = _n(width), _n(height)
    if shown.ground == "photo":
        return f'<image href={quoteattr(shown.href)} x="0" y="0" width="{w}" height="{h}" preserveAspectRatio="none"/>'
    if shown.ground == "plate":
        return f'<rect class="map-ground" x="1" y="1" width="{_n(width - 2)}" height="{_n(height - 2)}"/>'
    half, tall = _n(width / 2), _n(height / 2)
    return f'<ellipse class="map-ground" cx="{half}" cy="{tall}" rx="{_n(width / 2 - 1)}" ry="{_n(height / 2 - 1)}"/>'


def _grid(width: float, height: float) -> Iterator[str]:
    """Lines at every tenth, light and dark, so that they are seen on any picture."""
    for tenth in range(1, 10):
        x, y = _n(width * tenth / 10), _n(height * tenth / 10)
        for css in ("map-grid", "map-grid-ink"):
            yield f'<line class="{css}" x1="{x}" y1="0" x2="{x}" y2="{_n(height)}"/>'
            yield f'<line class="{css}" x1="0" y1="{y}" x2="{_n(width)}" y2="{y}"/>'


def _n(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")


def _leader(label: Label) -> str:
    (x1, y1), (x2, y2) = label.leader or ((0, 0), (0, 0))
    ends = f'x1="{_n(x1)}" y1="{_n(y1)}" x2="{_n(x2)}" y2="{_n(y2)}"'
    return f'<line class="map-leader" {ends}/><line class="map-leader-ink" {ends}/>'


def _dot(label: Label, size: float) -> str:
    """Measured is solid: a dot, a square where it lies below what is specified, a ring around the least."""
    x, y = label.at
    half = size * DOT
    ring = f'<circle class="map-leader" cx="{_n(x)}" cy="{_n(y)}" r="{_n(half * 1.7)}" fill="none"/>'
    ring += f'<circle class="map-ring" cx="{_n(x)}" cy="{_n(y)}" r="{_n(half * 1.7)}"/>'
    if label.spot.is_below:
        mark = _rect((x - half, y - half, x + half, y + half), "map-dot")
    else:
        mark = f'<circle class="map-dot" cx="{_n(x)}" cy="{_n(y)}" r="{_n(half)}"/>'
    return (ring if label.spot.is_least else "") + mark


def _rect(box: Box, css: str) -> str:
    left, top, right, bottom = box
    return f'<rect class="{css}" x="{_n(left)}" y="{_n(top)}" width="{_n(right - left)}" height="{_n(bottom - top)}"/>'


def _label(label: Label, size: float) -> str:
    left, top, _, bottom = label.box
    at = f'x="{_n(left + size * 0.35)}" y="{_n((top + bottom) / 2 + size * 0.35)}"'
    text = f'<text class="map-label" {at} font-size="{_n(size)}">{escape(label.text)}</text>'
    return _rect(label.box, "map-halo") + text


def _chip(place: ChipPlace, layout: Layout) -> str:
    x, y = place.text_at
    left, top, right, bottom = place.sign
    middle = (left + right) / 2, (top + bottom) / 2
    half = layout.size * DOT
    signs = {
        "measured": f'<circle class="map-dot" cx="{_n(middle[0])}" cy="{_n(middle[1])}" r="{_n(half)}"/>',
        "below": _rect((middle[0] - half, middle[1] - half, middle[0] + half, middle[1] + half), "map-dot"),
        "estimated": f'<rect class="map-ring" x="{_n(left)}" y="{_n(top)}" width="{_n(right - left)}" '
        f'height="{_n(bottom - top)}" stroke-dasharray="4 3"/>',
    }
    sign = signs.get(place.chip.kind) or _rect(place.sign, "map-hatched")
    lines = (
        f'<text class="map-words" x="{_n(x)}" y="{_n(y + row * layout.size * LEADING)}" font-size="{_n(layout.size)}">'
        f"{escape(words)}</text>"
        for row, words in enumerate(place.lines)
    )
    return sign + "".join(lines)
