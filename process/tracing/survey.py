"""One pass over the bytes of a file: how many lines, which encoding; and what is no text at all is refused."""

import codecs
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from process.tracing.errors import TraceRefused

CHUNK_BYTES = 1 << 18  # stays in the processor's own memory
NEWLINE = 10
HEAD_BYTES = 1 << 18
LONGEST_LINE = 20_000
BOMS = ((codecs.BOM_UTF8, "utf-8-sig"), (codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"))
CONTROL = bytes(set(range(32)) - {9, 10, 12, 13, 26})


@dataclass(frozen=True)
class Survey:
    """`head` and `tail` are whole lines of the beginning and of the end."""

    path: Path
    encoding: str
    size_bytes: int
    newline_count: int
    ends_with_newline: bool
    is_plain: bool  # ASCII or UTF-8 with ordinary line ends: can be read where it lies
    has_underscores_below: bool  # beyond the lines of `head`
    head: tuple[str, ...]
    tail: tuple[str, ...]


def survey(path: Path, limit_bytes: int) -> Survey:
    """What the file is made of; refuses what is empty, too large, or no text."""
    size = path.stat().st_size
    if size == 0:
        raise TraceRefused("the file is empty; export the trace again.")
    if size > limit_bytes:
        raise TraceRefused(
            f"the file has {size / 1e6:,.1f} MB, more than the {limit_bytes / 1e6:,.1f} MB that are taken; "
            "export a shorter stretch or a longer interval."
        )
    with path.open("rb") as file:
        head = file.read(HEAD_BYTES)
        file.seek(max(0, size - HEAD_BYTES // 4))
        tail = file.read()
    _refuse_binary(head)
    encoding, newlines, old_line_ends, underscores = _pass_over(path, head)
    lines = _lines(head, encoding, whole=size <= HEAD_BYTES)
    for number, line in enumerate(_lines(head, encoding, whole=True), 1):
        if len(line) > LONGEST_LINE:
            raise TraceRefused(f"has more than {LONGEST_LINE} characters: this is no table of samples.", number)
    return Survey(
        path, encoding, size, newlines, tail.endswith((b"\n", b"\r", b"\n\x00")),
        encoding in {"utf-8", "utf-8-sig"} and not old_line_ends, underscores,
        tuple(lines), tuple(_lines(tail, encoding, whole=True)[1:]),
    )  # fmt: skip


def _refuse_binary(head: bytes) -> None:
    if head.startswith((b"PK\x03\x04", b"\xd0\xcf\x11\xe0")):
        raise TraceRefused("this is a workbook or an archive, not text; save the sheet as CSV and send that.")
    if head.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)) or _utf16_without_mark(head):
        return
    odd = len(head) - len(head.translate(None, CONTROL))
    if b"\x00" in head or odd > len(head) / 200:
        raise TraceRefused("the file is not text; export the trace as CSV or plain text and send that.")


def _utf16_without_mark(head: bytes) -> str:
    """Text of mostly Latin letters in UTF-16 has a zero in every other byte."""
    start = head[:2000]
    evens, odds = start[::2].count(0), start[1::2].count(0)
    if len(start) < 20:
        return ""
    if odds > len(start) * 0.4 and evens == 0:
        return "utf-16-le"
    return "utf-16-be" if evens > len(start) * 0.4 and odds == 0 else ""


def _pass_over(path: Path, head: bytes) -> tuple[str, int, bool, bool]:
    """Encoding, number of line ends, whether they are those of very old machines, and underscores below the head."""
    encoding = next((name for mark, name in BOMS if head.startswith(mark)), "") or _utf16_without_mark(head)
    decoder = codecs.getincrementaldecoder("utf-8")()
    is_utf8, has_c1, newlines = not encoding.startswith("utf-16"), False, 0
    old_line_ends, underscores = head.count(b"\r") > head.count(b"\n"), b"_" in head[head.rfind(b"\n") + 1 :]
    with path.open("rb") as file:
        while chunk := file.read(CHUNK_BYTES):
            underscores = underscores or (file.tell() > HEAD_BYTES and b"_" in chunk)
            newlines += int(np.count_nonzero(np.frombuffer(chunk, np.uint8) == NEWLINE))  # half the time of bytes.count
            if is_utf8 and (decoder.getstate()[0] or not chunk.isascii()):
                has_c1 = has_c1 or any(0x80 <= byte < 0xA0 for byte in set(chunk))
                is_utf8 = _goes_on(decoder, chunk)
    if encoding:
        return encoding, newlines, old_line_ends, underscores
    return "utf-8" if is_utf8 else "cp1252" if has_c1 else "latin-1", newlines, old_line_ends, underscores


def _goes_on(decoder: codecs.IncrementalDecoder, chunk: bytes) -> bool:
    try:
        decoder.decode(chunk)
    except UnicodeDecodeError:
        return False
    return True


def _lines(part: bytes, encoding: str, *, whole: bool) -> list[str]:
    """Lines of a part; the last is left out where the part was cut off within it."""
    if encoding in {"utf-16", "utf-16-le", "utf-16-be"} and len(part) % 2:
        part = part[:-1]
    text = part.decode("utf-16-le" if encoding == "utf-16" and not _has_mark(part) else encoding, "replace")
    lines = text.splitlines()
    return lines if whole else lines[:-1]


def _has_mark(part: bytes) -> bool:
    return part.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE))
