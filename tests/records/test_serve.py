"""Serving for real use: a fresh folder is prepared, what is missing is said, and nothing older is changed unasked."""

import os
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from io import StringIO
from pathlib import Path
from urllib.error import URLError
from urllib.request import urlopen

import pytest
from django.conf import settings
from django.core.management import CommandError, call_command
from django.db.migrations.recorder import MigrationRecorder
from django.test import override_settings

from records.serving import address_of, lead_codes_here, make_tables, shortcomings

ROOT = Path(__file__).parents[2]


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


@pytest.fixture(scope="module")
def served(tmp_path_factory) -> Iterator[tuple[str, Path, list[str]]]:
    """`manage.py serve` on an empty folder, as a process of its own."""
    folder, port = tmp_path_factory.mktemp("served"), free_port()
    environment = {k: v for k, v in os.environ.items() if not k.startswith(("REGISTER_", "DJANGO_", "DATABASE_"))}
    command = [sys.executable, "manage.py", "serve", "--port", str(port)]
    with (folder / "said.txt").open("w+", encoding="utf-8") as said:
        server = subprocess.Popen(
            command, cwd=ROOT, env=environment | {"REGISTER_DATA": str(folder), "PYTHONIOENCODING": "utf-8"},
            stdout=said, stderr=subprocess.STDOUT,
        )  # fmt: skip
        address = f"http://127.0.0.1:{port}"
        try:
            wait_for(f"{address}/health/", server)
            yield address, folder, (folder / "said.txt").read_text(encoding="utf-8").splitlines()
        finally:
            server.terminate()
            server.wait(10)


def wait_for(url: str, server: subprocess.Popen, limit_s: float = 120) -> None:
    end = time.monotonic() + limit_s
    while time.monotonic() < end and server.poll() is None:
        try:
            urlopen(url, timeout=2).close()
            return
        except URLError:
            time.sleep(0.2)
    pytest.fail(f"{url} does not answer")


def test_an_empty_folder_is_prepared_and_served(served):
    address, folder, said = served

    assert urlopen(f"{address}/sign-in/").status == 200
    assert (folder / "register.sqlite3").stat().st_size > 0
    assert any("making its tables" in line for line in said)


def test_it_says_what_is_missing_and_where_it_listens(served):
    address, folder, said = served
    text = "\n".join(said)

    assert "No administrator yet" in text
    assert str(folder / "secret_key") in text
    assert "no name yet" in text
    assert f"{address}/" in text


def test_static_files_are_served_without_being_collected(served):
    address, folder, _ = served

    with urlopen(f"{address}/static/records/tokens.css") as answer:
        assert answer.headers["Content-Type"].startswith("text/css")
    assert not (folder / "static").exists()


def test_nothing_of_the_inside_is_shown(served):
    address, _, said = served

    with pytest.raises(URLError, match="404"):
        urlopen(f"{address}/static/../records/settings.py")
    assert not any("Traceback" in line or "Warning" in line for line in said)


@pytest.mark.django_db
def test_older_tables_are_left_alone_with_the_command_to_run():
    MigrationRecorder.Migration.objects.filter(app="records").last().delete()

    with pytest.raises(CommandError, match=r"Back up .* run “manage.py migrate”"):
        make_tables(lambda line: None)


@override_settings(DEBUG=True)
def test_a_site_for_developers_is_not_served():
    with pytest.raises(CommandError, match="unset it"):
        call_command("serve", stdout=StringIO())


@override_settings(MUSEUM_NAME="A named museum", ALLOWED_HOSTS=["127.0.0.1"])
def test_a_server_for_the_network_asks_for_its_name():
    sentences = list(shortcomings("0.0.0.0", has_administrator=True))

    assert any("REGISTER_HOSTS" in sentence for sentence in sentences)
    assert not any("administrator" in sentence or "no name" in sentence for sentence in sentences)


def test_the_address_is_one_that_a_browser_understands():
    assert address_of("0.0.0.0", 8000) == "http://127.0.0.1:8000/"
    assert address_of("::1", 8000) == "http://[::1]:8000/"


@override_settings(BASE_URL="http://127.0.0.1:8000")
def test_printed_codes_lead_to_the_port_that_is_served_unless_an_address_is_named(monkeypatch):
    monkeypatch.setenv("REGISTER_BASE_URL", "")
    lead_codes_here("127.0.0.1", 8311)
    assert settings.BASE_URL == "http://127.0.0.1:8311"

    monkeypatch.setenv("REGISTER_BASE_URL", "https://register.example")
    lead_codes_here("127.0.0.1", 8312)
    assert settings.BASE_URL == "http://127.0.0.1:8311"  # what the settings read from there stays
