"""One drawn photograph as a file. Pure, so that the drawing helpers start without the site."""

from datetime import datetime

from process.demo.pictures import draw, jpeg_bytes


def take(picture: str, size_px: int, number: str | None, taken_at: datetime | None, about: str) -> bytes:
    date_text = f"{taken_at.day} {taken_at:%B %Y}" if taken_at else ""
    image = draw(picture, size_px=size_px, number=number, date_text=date_text)
    return jpeg_bytes(image, taken_at, about)
