"""Programs of the system that some tests hold the register against: a browser, readers of papers and of pictures."""

import os
import shutil

import pytest

PACKAGES = {
    "chromium": "chromium", "qpdf": "qpdf", "pdftoppm": "poppler-utils", "exiftool": "libimage-exiftool-perl",
}  # fmt: skip


def tool(name: str, *, found: str | None = None) -> str:
    """Its path; without it the test is skipped with the reason, or fails where nothing may be skipped."""
    path = found or shutil.which(name)
    if path:
        return path
    reason = f"{name} is not installed (Debian: {PACKAGES[name]})"
    if os.environ.get("REGISTER_REQUIRE_TOOLS") == "1":
        pytest.fail(reason)
    pytest.skip(reason)  # README's test command works without system packages; the gate installs all and skips none
