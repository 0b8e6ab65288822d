"""The site's own settings in a throw-away data folder, whatever REGISTER_DATA says at the keyboard."""

import atexit
import os
import shutil
import tempfile

# A command that a test starts inherits the marker, and may be given a REGISTER_DATA of its own.
if "REGISTER_TEST_DATA" not in os.environ:
    os.environ["REGISTER_TEST_DATA"] = os.environ["REGISTER_DATA"] = tempfile.mkdtemp(prefix="register-tests-")
    atexit.register(shutil.rmtree, os.environ["REGISTER_DATA"], ignore_errors=True)

from records.settings import *  # noqa: F403
from records.settings import DATA_DIR, DATABASES, SQLITE_OPTIONS

# A file instead of memory: the live server and the test then hold connections of their own, as in real use.
if "sqlite3" in str(DATABASES["default"]["ENGINE"]):
    DATABASES["default"]["TEST"] = {"NAME": str(DATA_DIR / "test.sqlite3")}
    # A power cut may take the test with it: no waiting for the disk.
    _pragmas = SQLITE_OPTIONS["init_command"].replace("synchronous=FULL", "synchronous=OFF")
    DATABASES["default"]["OPTIONS"] = {**SQLITE_OPTIONS, "init_command": _pragmas}
DATABASES["default"]["CONN_MAX_AGE"] = 0

# Signing in a hundred times needs no slow hash.
PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]

# Nothing is collected for a test; whitenoise only wants to see the folder.
(DATA_DIR / "static").mkdir(exist_ok=True)
