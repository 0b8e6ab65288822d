"""A medal's face as a scanning program would export it: a binary STL of invented relief. Pure."""

import struct

import numpy as np

RINGS, SPOKES = 40, 120
HEIGHT_MM = 0.92  # with it the relief has 1.07 times the surface of a flat disc
TRIANGLE = np.dtype([("normal", "<f4", 3), ("corners", "<f4", (3, 3)), ("spare", "<u2")])


def stl_bytes(diameter_mm: float) -> bytes:
    radius, angle = np.meshgrid(
        np.linspace(0, diameter_mm / 2, RINGS + 1), np.linspace(0, 2 * np.pi, SPOKES + 1), indexing="ij"
    )
    height = HEIGHT_MM * np.sin(radius * 0.9) ** 2 * (0.6 + 0.4 * np.cos(5 * angle))
    points = np.stack([radius * np.cos(angle), radius * np.sin(angle), height], axis=-1)
    inner, outer = points[:-1], points[1:]
    first = np.stack([inner[:, :-1], outer[:, :-1], outer[:, 1:]], axis=2)
    second = np.stack([inner[:, :-1], outer[:, 1:], inner[:, 1:]], axis=2)
    corners = np.concatenate([first.reshape(-1, 3, 3), second[1:].reshape(-1, 3, 3)])  # at the centre one is enough
    rows = np.zeros(len(corners), dtype=TRIANGLE)
    rows["corners"] = corners
    return bytes(80) + struct.pack("<I", len(rows)) + rows.tobytes()
