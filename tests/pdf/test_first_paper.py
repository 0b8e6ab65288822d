"""Typefaces are read when the first paper of a process asks for one: whichever kind that is, it finds them."""

import subprocess
import sys

import pytest


@pytest.mark.parametrize(
    "made",
    [
        "labels.build_tag(specimens.TAG, specimens.ISSUED)",
        "labels.build_label(specimens.LABEL, specimens.ISSUED)",
        "specimens.condition_report()",
        "specimens.process_report()",
    ],
)
def test_a_paper_can_be_the_first_of_its_process(made):
    program = f"from records.pdf import labels; from tests.pdf import specimens; print({made}[:5])"

    ran = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)

    assert ran.stdout.strip() == "b'%PDF-'", ran.stderr
