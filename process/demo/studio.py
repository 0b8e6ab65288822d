"""The demo's photographs: drawn by helpers beside the loading, kept by the register's own service."""

import multiprocessing
from concurrent.futures import Future, ProcessPoolExecutor
from io import BytesIO
from typing import Any, Self

from django.core.files import File
from django.utils import timezone

from process.demo.camera import take
from process.demo.measuring import measure
from process.demo.rows import Table, instant, values_of
from records.models import Photo
from records.services.photographs import keep_photo

DRAWERS = 2
NOT_COLUMNS = {"name", "picture", "number", "by", "when", "measure"}


class Studio:
    """Begins every picture at once; `keep` waits for the one that is needed now."""

    def __init__(self, size_px: int) -> None:
        self._size_px = size_px
        # Spawned: a forked helper would inherit the open database.
        self._pool = ProcessPoolExecutor(DRAWERS, mp_context=multiprocessing.get_context("spawn"))
        self._begun: dict[str, Future[bytes]] = {}

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_exception: object) -> None:
        self._pool.shutdown(cancel_futures=True)

    def begin(self, photo: Table, number: str | None) -> None:
        taken_at = timezone.localtime(instant(photo["taken_at"])) if "taken_at" in photo else None
        self._begun[photo["name"]] = self._pool.submit(
            take, photo["picture"], self._size_px, photo.get("number", number), taken_at, photo.get("caption", "")
        )

    def keep(self, photo: Table, **about: Any) -> Photo:
        content = self._begun.pop(photo["name"]).result()
        columns = {name: value for name, value in photo.items() if name not in NOT_COLUMNS}
        kept = keep_photo(file=File(BytesIO(content)), name=photo["name"], **values_of(Photo, columns) | about)
        measure(kept, photo)
        return kept
