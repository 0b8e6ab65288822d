"""Photographs made ready for print: upright, sRGB, no more pixels than paper can show."""

from dataclasses import dataclass
from functools import lru_cache
from io import BytesIO
from pathlib import Path
from typing import Any

from PIL import Image as PillowImage
from PIL import ImageCms, ImageOps, UnidentifiedImageError
from reportlab.lib.utils import ImageReader
from reportlab.platypus import Flowable

from records.pdf import theme
from records.pdf.flow import paragraph
from records.pdf.refusal import CannotPrint

PRINT_DPI = 300
LARGEST_PIXELS = 120_000_000


class PhotoUnreadable(CannotPrint):
    """A photograph that the paper needs cannot be opened."""


@dataclass(frozen=True)
class Photo:
    """A photograph by path or bytes, with its caption."""

    source: Path | bytes
    caption: str = ""

    def frame(self, width: float, limit: float) -> "PhotoFrame":
        return PhotoFrame(self, width, limit)

    def beneath(self, width: float) -> list[Flowable]:
        """What stands below the picture."""
        return [paragraph(self.caption, "caption")] if self.caption else []


def _to_srgb(image: PillowImage.Image) -> PillowImage.Image:
    profile = image.info.get("icc_profile")
    if profile and image.mode in ("RGB", "CMYK"):
        source = ImageCms.ImageCmsProfile(BytesIO(profile))
        converted = ImageCms.profileToProfile(image, source, ImageCms.createProfile("sRGB"), outputMode="RGB")
        return converted or image.convert("RGB")
    if image.mode in ("RGBA", "LA", "P"):
        paper = PillowImage.new("RGBA", image.size, "white")
        return PillowImage.alpha_composite(paper, image.convert("RGBA")).convert("RGB")
    return image if image.mode in ("L", "RGB") else image.convert("RGB")


def _open(source: Path | bytes) -> PillowImage.Image:
    name = source.name if isinstance(source, Path) else "a photograph handed over as bytes"
    try:
        image = PillowImage.open(source if isinstance(source, Path) else BytesIO(source))
        if image.width * image.height > LARGEST_PIXELS:
            raise PhotoUnreadable(f"{name} has more than {LARGEST_PIXELS:,} pixels; print a smaller derivative.")
        image.load()
    except (UnidentifiedImageError, OSError, PillowImage.DecompressionBombError) as reason:
        raise PhotoUnreadable(f"{name} cannot be read as a picture, so the paper would lack it: {reason}") from reason
    return image


@lru_cache(maxsize=64)
def printable(source: Path | bytes, width: float) -> tuple[bytes, float]:
    """JPEG bytes for a printed width in points, and height over width."""
    with _open(source) as opened:
        image = _to_srgb(ImageOps.exif_transpose(opened) or opened)
    pixels = round(width / 72 * PRINT_DPI)
    if image.width > pixels:
        image = image.resize(
            (pixels, max(1, round(image.height * pixels / image.width))), PillowImage.Resampling.LANCZOS
        )
    out = BytesIO()
    image.save(out, "JPEG", quality=88)
    return out.getvalue(), image.height / image.width


class PhotoFrame(Flowable):
    """The photograph at a given width, never higher than the limit; without one, a ruled box that says so."""

    def __init__(self, photo: Photo | None, width: float, limit: float, words: str = "No photograph on file") -> None:
        super().__init__()
        self.words = words
        self.jpeg: bytes | None = None
        self.width, self.height = width, min(width * 0.75, limit)
        if photo is not None:
            self.jpeg, ratio = printable(photo.source, width)
            self.width = min(width, limit / ratio)
            self.height = self.width * ratio

    def wrap(self, *_available: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        canvas: Any = self.canv
        if self.jpeg is not None:
            canvas.drawImage(ImageReader(BytesIO(self.jpeg)), 0, 0, self.width, self.height)
            return
        canvas.setStrokeColor(theme.RULE)
        canvas.setLineWidth(theme.THIN)
        canvas.rect(0, 0, self.width, self.height)
        canvas.setFillColor(theme.LIGHTER)
        canvas.setFont(theme.style("caption").fontName, theme.SMALL_SIZE)
        canvas.drawCentredString(self.width / 2, self.height / 2 - 3, self.words)
