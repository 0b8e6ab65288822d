"""What a photographer lays beside the piece: scale, grey steps and colours, a card with number and date.

Pure.
"""

from PIL import Image, ImageDraw, ImageFilter

from process.demo.pictures.letters import face
from process.demo.pictures.scene import Frame

INK, CARD, PLASTIC = (34, 31, 28), (233, 228, 217), (236, 236, 233)
GREYS = (243, 200, 160, 122, 85, 52)  # sRGB codes, roughly the neutral steps of a common target
COLOURS = ((175, 54, 60), (70, 148, 73), (56, 61, 150), (231, 199, 31), (187, 86, 149), (8, 133, 161))
BAR_LENGTHS_MM = (200, 100, 50, 40, 30, 20, 10, 5, 2)
TOP = 0.862  # the strip under the piece, as shares of the picture's height
BOTTOM = 0.968


def bar_mm(frame: Frame) -> int:
    """The longest round length that keeps to a third of the picture."""
    return next(mm for mm in BAR_LENGTHS_MM if mm * frame.px_per_mm <= 0.33 * frame.width)


def bar_box(frame: Frame) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of the scale bar itself in pixels."""
    left = 0.045 * frame.width
    top = 0.885 * frame.height
    return left, top, left + bar_mm(frame) * frame.px_per_mm, top + 0.018 * frame.height


def lay_out(image: Image.Image, frame: Frame, number: str, lines: tuple[str, ...]) -> Image.Image:
    """Put the three on the table."""
    _rule(image, frame)
    _target(image, frame)
    _card(image, frame, number, lines)
    return image


def _sheet(image: Image.Image, box: tuple[float, float, float, float], colour: tuple[int, int, int]) -> None:
    """A flat thing with a little shadow to the lower right."""
    left, top, right, bottom = (round(v) for v in box)
    reach = max(3, image.width // 160)
    area = (left - reach, top - reach, right + 2 * reach, bottom + 2 * reach)
    shade = Image.new("L", (area[2] - area[0], area[3] - area[1]), 0)
    inner = (
        reach + reach // 3,
        reach + reach // 3,
        shade.width - 2 * reach + reach // 2,
        shade.height - 2 * reach + reach // 2,
    )
    ImageDraw.Draw(shade).rectangle(inner, fill=150)
    image.paste((28, 28, 30), area[:2], shade.filter(ImageFilter.GaussianBlur(reach * 0.45)))
    ImageDraw.Draw(image).rectangle((left, top, right, bottom), fill=colour)


def _rule(image: Image.Image, frame: Frame) -> None:
    left, top, right, bottom = bar_box(frame)
    pad, length = 0.016 * frame.width, bar_mm(frame)
    _sheet(image, (left - pad, TOP * frame.height, right + pad, BOTTOM * frame.height), PLASTIC)
    draw = ImageDraw.Draw(image)
    parts = length if length <= 5 else length // 5 if length <= 50 else length // 10
    for k in range(0, parts, 2):
        x0, x1 = (left + (right - left) * e / parts for e in (k, k + 1))
        draw.rectangle((round(x0), round(top), round(x1) - 1, round(bottom)), fill=INK)
    line = max(1, frame.width // 1200)
    draw.rectangle((round(left), round(top), round(right) - 1, round(bottom)), outline=INK, width=line)
    for k in range(parts + 1):
        x = left + (right - left) * k / parts
        draw.line((x, bottom, x, bottom + 0.010 * frame.height), fill=INK, width=line)
    font = face("sans", round(0.030 * frame.height))
    draw.text((left, bottom + 0.026 * frame.height), "0", font=font, fill=INK, anchor="mm")
    draw.text((right, bottom + 0.026 * frame.height), f"{length} mm", font=font, fill=INK, anchor="rm")


def _target(image: Image.Image, frame: Frame) -> None:
    cell = 0.043 * frame.height
    width = 6 * cell + 0.016 * frame.width
    left = 0.535 * frame.width - width / 2
    top = TOP * frame.height
    _sheet(image, (left, top, left + width, BOTTOM * frame.height), (40, 40, 40))
    draw = ImageDraw.Draw(image)
    inset = 0.008 * frame.width
    for k in range(6):
        x = left + inset + k * cell
        for row, colour in enumerate(((GREYS[k],) * 3, COLOURS[k])):
            y = top + 0.009 * frame.height + row * (cell + 0.002 * frame.height)
            draw.rectangle((round(x + 1), round(y), round(x + cell - 2), round(y + cell - 1)), fill=colour)


def _card(image: Image.Image, frame: Frame, number: str, lines: tuple[str, ...]) -> None:
    left, right = 0.675 * frame.width, 0.962 * frame.width
    top = TOP * frame.height
    _sheet(image, (left, top, right, BOTTOM * frame.height), CARD)
    draw = ImageDraw.Draw(image)
    x = left + 0.012 * frame.width
    draw.text(
        (x, top + 0.034 * frame.height),
        number,
        font=face("sans", round(0.045 * frame.height)),
        fill=INK,
        anchor="lm",
    )
    text = " · ".join(filter(None, lines))
    small = face("hand", round(0.034 * frame.height))
    room = right - x - 0.012 * frame.width
    if small.getlength(text) > room:
        small = face("hand", int(0.034 * frame.height * room / small.getlength(text)))
    draw.text((x, top + 0.077 * frame.height), text, font=small, fill=INK, anchor="lm")
