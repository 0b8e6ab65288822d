"""The arrow between the parts: kits that know no Django, a register that stands without the making."""

import os
import pkgutil
import subprocess
import sys
from importlib import import_module

import pytest

from tests.conventions.source import ROOT

# process.chemistry is tried in tests/chemistry/test_docstrings.py, without Django and without scipy.
KITS = (
    "process.tracing",
    "records.pdf",
    "records.marking",
    "records.wording",
    "records.descent",
    "records.telling",
    "records.units",
)
# An import of Django raises inside the child, as if it were not installed.
BLOCKED = "import sys; sys.modules['django'] = sys.modules['simple_history'] = None; import "


def modules(kit: str) -> list[str]:
    found = pkgutil.walk_packages(import_module(kit).__path__, f"{kit}.")
    return [kit, *(module.name for module in found)]


@pytest.mark.parametrize("kit", KITS)
def test_a_kit_imports_where_django_is_absent(kit):
    answer = subprocess.run(
        [sys.executable, "-c", BLOCKED + ", ".join(modules(kit))], cwd=ROOT, capture_output=True, text=True
    )
    assert answer.returncode == 0, answer.stderr[-2000:]


ALONE = """
import django; django.setup()
from django.apps import apps
from django.core.management import call_command
from django.test import Client
assert not apps.is_installed("process")
call_command("check", fail_level="WARNING")
call_command("migrate", verbosity=0)
from django.contrib.auth.models import User
client = Client(SERVER_NAME="localhost")
assert client.get("/").headers["Location"].startswith("/sign-in/")
client.force_login(User.objects.create_superuser("someone"))
from records.models import Item
Item.objects.create(number="A.1", kind="original", title="Medal")
for address in ("/", "/things/", "/things/A.1/", "/things/A.1/history/", "/commissions/", "/search/?q=a"):
    answer = client.get(address)
    assert answer.status_code == 200, (address, answer.status_code)
"""


def test_the_register_stands_without_the_making(tmp_path):
    environment = {
        **{name: value for name, value in os.environ.items() if name != "DATABASE_URL"},
        "REGISTER_RECORDS_ALONE": "1",
        "REGISTER_DATA": str(tmp_path),
        "DJANGO_SETTINGS_MODULE": "records.settings",
    }
    answer = subprocess.run(
        [sys.executable, "-W", "ignore", "-c", ALONE], cwd=ROOT, env=environment, capture_output=True, text=True
    )
    assert answer.returncode == 0, answer.stderr[-3000:]
