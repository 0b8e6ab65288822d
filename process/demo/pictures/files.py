"""A drawn picture as the file a camera would have written. Pure."""

from datetime import datetime
from io import BytesIO

from PIL import Image

CAMERA = "Drawn by the demonstration"  # nobody shall take these for evidence
DESCRIPTION, MAKE, MODEL, ORIENTATION, EXIF_IFD = 0x010E, 0x010F, 0x0110, 0x0112, 0x8769
DATE_ORIGINAL, OFFSET_ORIGINAL = 0x9003, 0x9011


def jpeg_bytes(image: Image.Image, taken_at: datetime | None, description: str = "") -> bytes:
    """JPEG with EXIF; an aware time keeps its offset, a naive one has none, None leaves it undated."""
    exif = Image.Exif()
    exif[DESCRIPTION] = description.encode("ascii", "replace").decode()
    exif[MODEL] = CAMERA
    exif[ORIENTATION] = 1
    if taken_at is not None:
        details = exif.get_ifd(EXIF_IFD)
        details[DATE_ORIGINAL] = taken_at.strftime("%Y:%m:%d %H:%M:%S")
        if taken_at.utcoffset() is not None:
            details[OFFSET_ORIGINAL] = taken_at.strftime("%z")[:3] + ":" + taken_at.strftime("%z")[3:5]
    buffer = BytesIO()
    image.save(buffer, "JPEG", quality=90, exif=exif, subsampling=0)
    return buffer.getvalue()
