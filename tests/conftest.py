"""Every test gets folders of its own for photographs and papers; nothing is written beside the code."""

import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from django.test import override_settings


@pytest.fixture(autouse=True)
def own_folders() -> Iterator[None]:
    """Photographs and issued papers of a test live and die with it."""
    with tempfile.TemporaryDirectory(prefix="register-test-") as folder:
        files, papers = Path(folder) / "files", Path(folder) / "papers"
        with override_settings(MEDIA_ROOT=files, DOCUMENTS_DIR=papers):
            yield
