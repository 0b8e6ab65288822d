"""Which files the register stands behind: each with its digest, what it is and where it is shown."""

import os
from collections.abc import Iterable, Iterator
from pathlib import Path

from django.conf import settings
from django.urls import reverse

from records import imaging
from records.extensions import KeptFile, kept_files
from records.models import Document, Photo

AT_ONCE = 500  # rows held in memory


def photographs() -> Iterable[KeptFile]:
    rows = Photo.objects.order_by("pk").values_list("pk", "path", "sha256", "original_name")
    for pk, path, sha256, name in rows.iterator(chunk_size=AT_ONCE):
        yield KeptFile(imaging.original_path(path), sha256, f"photograph {name}", reverse("photo", args=[pk]))


def papers() -> Iterable[KeptFile]:
    rows = Document.objects.order_by("pk").values_list("pk", "path", "sha256", "title")
    for pk, path, sha256, title in rows.iterator(chunk_size=AT_ONCE):
        yield KeptFile(settings.DOCUMENTS_DIR / path, sha256, f"paper {title}", reverse("document", args=[pk]))


def every_file() -> Iterator[KeptFile]:
    for source in kept_files:
        yield from source()


def found_on_disk() -> Iterator[Path]:
    """Every file in the folders of files and papers, whoever laid it there."""
    for root in (Path(settings.MEDIA_ROOT), Path(settings.DOCUMENTS_DIR)):
        for folder, _, names in os.walk(root):
            yield from (Path(folder) / name for name in names)


kept_files += [photographs, papers]
