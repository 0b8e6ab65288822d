"""Every command, environment variable and paper is named where a person looks for it."""

import re
import tomllib

import pytest
from django.core.management import get_commands

from records import extensions
from tests.conventions.source import APPS, ROOT, python_files

DOCUMENTS = [ROOT / "README.md", ROOT / "DEVELOPERS.md"]
WORDS = "\n".join(path.read_text() for path in DOCUMENTS if path.exists())
# Set by one test for another, not by a person.
INTERNAL = {"REGISTER_TEST_DATA"}
VARIABLES = sorted(
    {
        name
        for path in python_files("records", "process", "tests")
        for name in re.findall(r"[\"'](REGISTER_[A-Z_]+|DATABASE_URL)[\"']", path.read_text())
    }
    - INTERNAL
)
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
NEEDED = [*PROJECT["dependencies"], *(each for extra in PROJECT["optional-dependencies"].values() for each in extra)]
PACKAGES = sorted({re.split(r"[\[<>=~!]", each)[0] for each in NEEDED} - {PROJECT["name"]})
PATHS = sorted(set(re.findall(r"`((?:records|process|templates|tests|\.ci)/[\w./]+)`", WORDS)))
COMMANDS = sorted(name for name, app in get_commands().items() if app in APPS)


@pytest.mark.parametrize("name", VARIABLES)
def test_an_environment_variable_is_documented(name):
    assert re.search(rf"\b{name}\b", WORDS)


@pytest.mark.parametrize("name", PACKAGES)
def test_a_package_has_its_reason(name):
    assert re.search(rf"(?<![\w-]){re.escape(name)}(?![\w-])", WORDS)


@pytest.mark.parametrize("name", PATHS)
def test_a_file_that_is_named_is_there(name):
    assert (ROOT / name).exists()


@pytest.mark.parametrize("name", COMMANDS)
def test_a_command_is_documented(name):
    assert f"manage.py {name}" in WORDS


def test_a_paper_is_documented():
    named = " ".join(WORDS.split()).casefold()
    assert [kind.title for kind in extensions.paper_kinds.values() if kind.title.casefold() not in named] == []


def test_the_settings_answer_to_their_variables():
    """The search above still finds what it is meant to find."""
    assert {"REGISTER_DATA", "REGISTER_BASE_URL", "DATABASE_URL"} <= set(VARIABLES)
