"""A large original cut into tiles once, upright and sRGB, so that a closer look decodes what it shows and no more.

Tiles are small copies like others: named by the digest, made again where they are gone. All together they take no
more than `KEPT_BYTES`; those that nobody looked at longest go first.
"""

import math
import os
from collections.abc import Iterator
from io import BytesIO
from itertools import groupby
from pathlib import Path

from django.conf import settings
from PIL import Image

from records.imaging import exif
from records.imaging.opening import load, open_picture
from records.imaging.rendering import QUALITY, TURNS, on_white, plain_bands, to_srgb
from records.imaging.store import original_path, put_copy, unfolding

TILE_PX = 1024
LARGEST_PX = 1600  # of a piece; what is larger than a screen is made smaller
TILE_QUALITY = 92
KEPT_BYTES = 2 * 1024**3
REDUCTIONS = (8, 4, 2, 1)  # at which a JPEG decodes without unfolding everything
Box = tuple[int, int, int, int]  # left, top, right, bottom in the upright picture


def crop(stored: str, box: Box, largest_px: int = LARGEST_PX) -> bytes:
    """JPEG bytes of a piece of the original, as sharp as it was taken or as `largest_px` can show."""
    if not tile_path(stored, 0, 0).exists():
        cut(stored)
    os.utime(tile_path(stored, 0, 0))
    left, top, right, bottom = box
    longer = max(right - left, bottom - top)
    by = next(by for by in REDUCTIONS if by == 1 or longer / by >= largest_px)
    ground = Image.new("RGB", (math.ceil((right - left) / by), math.ceil((bottom - top) / by)), "white")
    for column in range(left // TILE_PX, (right - 1) // TILE_PX + 1):
        for row in range(top // TILE_PX, (bottom - 1) // TILE_PX + 1):
            tile = _tile(tile_path(stored, column, row), by)
            ground.paste(tile, ((column * TILE_PX - left) // by, (row * TILE_PX - top) // by))
    ground.thumbnail((largest_px, largest_px), Image.Resampling.BICUBIC)
    return _jpeg(ground, QUALITY)


def _tile(path: Path, by: int) -> Image.Image:
    with Image.open(path, formats=["JPEG"]) as tile:
        size = math.ceil(tile.width / by), math.ceil(tile.height / by)
        tile.draft("RGB", size)
        return tile.convert("RGB") if tile.size == size else tile.resize(size)


def cut(stored: str) -> None:
    """Decode once and lay every tile in its place; the first, by which they are known, comes last."""
    with unfolding(), original_path(stored).open("rb") as file, open_picture(file, stored) as picture:
        profile = picture.info.get("icc_profile")
        load(picture, stored, max(picture.size))
        orientation = exif.read(picture).orientation
        whole = plain_bands(picture)
        whole = whole.transpose(TURNS[orientation]) if orientation in TURNS else whole
        for column, row, box in reversed(list(_grid(whole.size))):
            tile = to_srgb(on_white(whole.crop(box)), profile)
            tile.info.clear()
            put_copy(tile_path(stored, column, row), _jpeg(tile, TILE_QUALITY))
    make_room()


def _grid(size: tuple[int, int]) -> Iterator[tuple[int, int, Box]]:
    width, height = size
    for column in range(math.ceil(width / TILE_PX)):
        for row in range(math.ceil(height / TILE_PX)):
            x, y = column * TILE_PX, row * TILE_PX
            yield column, row, (x, y, min(x + TILE_PX, width), min(y + TILE_PX, height))


def tile_path(stored: str, column: int, row: int) -> Path:
    original = Path(stored)
    folder = Path(settings.MEDIA_ROOT) / "derivatives" / original.parent.name
    return folder / f"{original.stem}-tile-{column:03d}-{row:03d}.jpg"


def make_room(limit_bytes: int = 0) -> int:
    """Take away the tiles that nobody looked at longest, beyond the limit; return how many pictures lost theirs."""
    found = sorted((Path(settings.MEDIA_ROOT) / "derivatives").glob("*/*-tile-*.jpg"))
    sets = [list(tiles) for _, tiles in groupby(found, key=lambda path: path.name.partition("-")[0])]
    sized = sorted((tiles[0].stat().st_mtime, sum(t.stat().st_size for t in tiles), tiles) for tiles in sets)
    over = sum(size for _, size, _ in sized) - (limit_bytes or KEPT_BYTES)
    gone = 0
    for _, size, tiles in sized[:-1]:  # the one that was just made stays
        if over <= 0:
            break
        for tile in tiles:
            tile.unlink(missing_ok=True)
        over, gone = over - size, gone + 1
    return gone


def _jpeg(image: Image.Image, quality: int) -> bytes:
    out = BytesIO()
    image.save(out, "JPEG", quality=quality)
    return out.getvalue()
