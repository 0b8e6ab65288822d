"""Colour profiles built by hand from published numbers, so that no profile file need lie here.

Layout: ICC.1:2001-04 (version 2), sections 6.1 to 6.5.
"""

import struct

D50 = (0.9642, 1.0, 0.8249)
# Adobe RGB (1998) Color Image Encoding, version 2005-05, section 4.3: primaries adapted to D50; gamma 563/256.
ADOBE_PRIMARIES = {
    b"rXYZ": (0.60974, 0.31111, 0.01947), b"gXYZ": (0.20528, 0.62567, 0.06087), b"bXYZ": (0.14919, 0.06322, 0.74457),
}  # fmt: skip
ADOBE_GAMMA = 563
# CIE Lab of paper, the inks and their overprints, C M Y K as four bits; roughly those of coated paper, from memory.
INKS = {
    0b0000: (95, 0, -2), 0b1000: (55, -37, -50), 0b0100: (48, 74, -3), 0b0010: (89, -5, 93), 0b1100: (24, 22, -46),
    0b1010: (50, -68, 27), 0b0110: (47, 68, 48), 0b1110: (23, 0, 0),
}  # fmt: skip


def adobe_rgb() -> bytes:
    curve = b"curv" + struct.pack(">IIH", 0, 1, ADOBE_GAMMA)
    tags = {name: _xyz(value) for name, value in ADOBE_PRIMARIES.items()}
    return _profile(b"mntr", b"RGB ", b"XYZ ", tags | dict.fromkeys((b"rTRC", b"gTRC", b"bTRC"), curve))


def cmyk() -> bytes:
    """Four inks mixed in straight lines between their corners."""
    straight = struct.pack(">2H", 0, 65535)
    corners = b"".join(struct.pack(">3H", *_coded(bits)) for bits in range(16))
    matrix = struct.pack(">9i", *(65536 if k % 4 == 0 else 0 for k in range(9)))
    table = b"mft2" + struct.pack(">I4B", 0, 4, 3, 2, 0) + matrix + struct.pack(">2H", 2, 2)
    return _profile(b"prtr", b"CMYK", b"Lab ", {b"A2B0": table + straight * 4 + corners + straight * 3})


def _coded(bits: int) -> tuple[int, int, int]:
    """Black darkens whatever lies under it; lightness and a, b as version 2 codes them."""
    lightness, a, b = INKS[bits & ~1] if bits & 1 == 0 else (12, 0, 0)
    return round(lightness * 652.8), round((a + 128) * 256), round((b + 128) * 256)


def _xyz(value: tuple[float, float, float]) -> bytes:
    return b"XYZ \0\0\0\0" + struct.pack(">3i", *(round(part * 65536) for part in value))


def _profile(kind: bytes, space: bytes, between: bytes, tags: dict[bytes, bytes]) -> bytes:
    tags = {b"wtpt": _xyz(D50)} | tags
    start, table, body = 132 + 12 * len(tags), b"", b""
    for name, content in tags.items():
        table += struct.pack(">4sII", name, start + len(body), len(content))
        body += content + b"\0" * (-len(content) % 4)
    when = struct.pack(">6H", 2026, 1, 1, 0, 0, 0)
    rest = b"\0" * 28 + _xyz(D50)[8:] + b"\0" * 48
    head = struct.pack(">4s4s", b"\0" * 4, b"\x02\x10\0\0") + kind + space + between + when + b"acsp" + rest
    whole = struct.pack(">I", start + len(body)) + head
    assert len(whole[4:]) + 4 == 128, len(whole)
    return whole + struct.pack(">I", len(tags)) + table + body
