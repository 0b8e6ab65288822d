"""A bar on the terminal that shows how far a long command is; nothing where nobody watches."""

import time
from typing import TextIO

WIDTH = 30
EVERY_S = 0.2


class Bar:
    """`bar.show(done, "1.2 GB")`; drawn over itself at most five times a second."""

    def __init__(self, total_count: int, stream: TextIO) -> None:
        self._total_count = max(total_count, 1)
        self._stream = stream
        self._drawn_at = -EVERY_S
        self._is_watched = stream.isatty()

    def show(self, done_count: int, words: str = "") -> None:
        now = time.monotonic()
        if self._is_watched and now - self._drawn_at >= EVERY_S:
            self._drawn_at = now
            filled = min(WIDTH, WIDTH * done_count // self._total_count)
            bar = "█" * filled + "·" * (WIDTH - filled)
            self._stream.write(f"\r{bar} {done_count:,} of {self._total_count:,} files {words}\033[K")
            self._stream.flush()

    def close(self) -> None:
        if self._is_watched:
            self._stream.write("\r\033[K")
            self._stream.flush()
