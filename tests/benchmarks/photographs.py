"""Fifty photographs of 24 megapixels: examined and shrunk to all sizes, beside the naive way; and files read again.

Both ways take turns, ten pictures at a time in a process of their own; the peak is that process's whole memory.
"""

import json
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from time import perf_counter

import numpy as np
from PIL import Image

ROUNDS, DISTINCT, EACH = 5, 5, 2  # fifty in all
MOST_SHARE, MOST_MB = 0.4, 150
FILES = 10_000
OURS = """
from records.imaging.facts import examine_picture
def call(path):
    with open(path, "rb") as file:
        return len(examine_picture(file, "view.jpg", limit_bytes=10**9, sizes_px=SIZES).copies)
"""
NAIVE = """
from io import BytesIO
from PIL import Image, ImageOps
def call(path):
    image = ImageOps.exif_transpose(Image.open(path)).convert("RGB")
    for size in SIZES.values():
        small = image.copy()
        small.thumbnail((size, size), Image.Resampling.LANCZOS, reducing_gap=None)
        small.save(BytesIO(), "JPEG", quality=82)
    return len(SIZES)
"""
CHILD = """
import json, sys, time
SIZES = json.loads(sys.argv[1])
{call}
began, cpu = time.perf_counter(), time.process_time()
for path in sys.argv[2:]:
    call(path)
took = time.perf_counter() - began, time.process_time() - cpu
with open("/proc/self/status") as status:
    peak = next(int(line.split()[1]) for line in status if line.startswith("VmHWM"))
print(json.dumps([*took, peak / 1024]))
"""


def lines(times: int) -> Iterator[str]:
    with tempfile.TemporaryDirectory(prefix="register-photographs-") as folder:
        paths = [write(Path(folder) / f"{k}.jpg", k) for k in range(DISTINCT)] * EACH
        yield from _derivatives(paths)
        yield from _reading_again(Path(folder))


def write(path: Path, seed: int) -> Path:
    """6000 × 4000, 5 MB: soft forms and a grain, as a camera writes them, lying on its side."""
    noise = np.random.default_rng(seed)
    coarse = Image.fromarray(noise.integers(0, 255, (40, 60, 3), dtype=np.uint8)).resize((6000, 4000))
    grain = noise.normal(0, 4, (4000, 6000, 1)).astype(np.float32)
    exif = Image.Exif()
    exif[0x0112] = 6
    image = Image.fromarray(np.clip(np.asarray(coarse, np.float32) + grain, 0, 255).astype(np.uint8))
    image.save(path, quality=92, exif=exif)
    return path


def _derivatives(paths: list[Path]) -> Iterator[str]:
    from records.imaging import SIZES_PX

    took: dict[str, list[tuple[float, float, float]]] = {"ours": [], "naive": []}
    for _ in range(ROUNDS):
        for name, call in (("ours", OURS), ("naive", NAIVE)):
            code = [sys.executable, "-c", CHILD.format(call=call), json.dumps(SIZES_PX), *map(str, paths)]
            answer = subprocess.run(code, capture_output=True, text=True, check=True)
            took[name].append(tuple(json.loads(answer.stdout)))
    count = ROUNDS * len(paths)
    size_mb = sum(path.stat().st_size for path in paths) / len(paths) / 1e6
    yield f"{count} photographs of 24 megapixels and {size_mb:.1f} MB to {len(SIZES_PX)} sizes"
    yield f"{'':<10}{'ms each':>10}{'CPU ms':>10}{'peak MB':>10}{'naive ×':>10}"
    whole = {name: sum(row[0] for row in rows) for name, rows in took.items()}
    for name, rows in took.items():
        cpu, peak = sum(row[1] for row in rows), max(row[2] for row in rows)
        share = whole[name] / whole["naive"]
        wrong = name == "ours" and (share > MOST_SHARE or peak > MOST_MB)
        yield (
            f"{name:<10}{whole[name] / count * 1000:>10.0f}{cpu / count * 1000:>10.0f}{peak:>10.0f}{share:>10.2f}"
            f"{' ▲' if wrong else ''}"
        )


def _reading_again(folder: Path) -> Iterator[str]:
    """What `check_files` does with ten thousand files of 100 kB, without the rows of a database."""
    from records.extensions import KeptFile
    from records.imaging import digest_of
    from records.services.file_checks import Reading, read_again

    files = []
    for k in range(FILES):
        path = folder / f"{k // 100:03d}" / f"{k}.bin"
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(k.to_bytes(4, "big") * 25_000)
        with path.open("rb") as file:
            files.append(KeptFile(path, digest_of(file), "", ""))
    reading, began = Reading(), perf_counter()
    whole = sum(read_again(file, reading, lambda *_: None) for file in files)
    took_s = perf_counter() - began
    yield ""
    yield f"{whole:,} files of 0.1 MB read again in {took_s:.1f} s, {reading.size_bytes / took_s / 1e6:.0f} MB/s"
