"""The bench sheets of the six invented runs that the demo tells of, in hours after the start and amperes."""

SHEETS: dict[str, tuple[tuple[float, float], ...]] = {
    "D-2026-001": ((0, 11.8), (40 / 60, 0)),
    "D-2026-002": (
        (0, 0.24), (1 + 40 / 60, 0.24), (2, 0.64), (4, 1.21), (6, 1.21), (8.5, 1.21), (23.5, 1.21),
        (27, 1.21), (30, 1.21), (33, 0),
    ),
    "D-2026-003": (
        (0, 0.08), (1.5, 0.20), (3, 0.42), (11 + 20 / 60, 0), (14.5, 0.42), (17 + 20 / 60, 0),
        (17.75, 0.20), (18, 0.42), (27, 0),
    ),
    "D-2026-004": ((0, 0.15), (2, 0.40), (3, 0.75), (30, 0)),
    "D-2026-005": ((0, 0.24), (2, 0.64), (4, 1.21), (44, 0)),
    "D-2026-006": (
        (0, 3.0), (1, 6.0), (2, 10.3), (4, 10.3), (6, 10.3), (7.5, 10.3), (8.5, 10.3), (13, 10.3), (17, 0),
    ),
}  # fmt: skip


def sheet(run: str) -> tuple[list[float], list[float]]:
    """Instants in seconds and currents in amperes."""
    hours, currents = zip(*SHEETS[run], strict=True)
    return [hour * 3600 for hour in hours], list(currents)
