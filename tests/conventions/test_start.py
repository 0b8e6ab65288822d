"""What is read when a command or the server starts: nothing that only a paper, a trace, a scan or a date needs."""

import os
import subprocess
import sys

import pytest
from django.utils.module_loading import import_string

from records import extensions
from tests.conventions.source import ROOT

LATER = ("reportlab.platypus", "reportlab.graphics", "pikepdf", "edtf", "duckdb", "trimesh", "rdflib")
STARTED = f"""
import os, sys
from django.core.management import call_command
import django; django.setup()
call_command("check", stdout=open(os.devnull, "w"))
print(*(name for name in {LATER!r} if name in sys.modules))
"""


@pytest.mark.parametrize("kind", extensions.paper_kinds.values(), ids=lambda kind: kind.code)
def test_the_maker_of_a_paper_is_found_by_its_name(kind):
    assert callable(import_string(kind.maker))


def test_a_start_reads_no_library_that_is_needed_later():
    environment = os.environ | {"DJANGO_SETTINGS_MODULE": "records.settings"}
    answer = subprocess.run([sys.executable, "-c", STARTED], cwd=ROOT, env=environment, capture_output=True, text=True)
    assert answer.returncode == 0, answer.stderr[-2000:]
    assert answer.stdout.split() == []
