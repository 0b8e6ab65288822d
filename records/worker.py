"""The worker beside the server: a child process that ends with it, and is started again should it die."""

import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

from django.conf import settings

LOOK_EVERY_S = 1.0
REST_S = 5.0  # before one that died is started again
GRACE_S = 10.0  # to end the work in hand


@contextmanager
def beside(say: Callable[[str], Any]) -> Iterator[None]:
    """A worker for as long as the server runs."""
    over = threading.Event()
    keeper = threading.Thread(target=_keep, args=(over, say), daemon=True)
    keeper.start()
    try:
        yield
    finally:
        over.set()
        keeper.join(GRACE_S + 2)


def _keep(over: threading.Event, say: Callable[[str], Any]) -> None:
    child = _start()
    while not over.wait(LOOK_EVERY_S):
        if child.poll() is not None:
            say(f"The worker ended ({child.returncode}); it is started again.")
            if over.wait(REST_S):
                return
            child = _start()
    child.terminate()
    try:
        child.wait(GRACE_S)
    except subprocess.TimeoutExpired:
        child.kill()


def _start() -> subprocess.Popen:
    command = [sys.executable, str(settings.BASE_DIR / "manage.py"), "work", "--parent", str(os.getpid())]
    return subprocess.Popen(command, stdin=subprocess.DEVNULL)


def end_with(parent: int) -> None:
    """In the worker: a server that was killed cannot say so; whoever adopts its children is another."""

    def look() -> None:
        while os.getppid() == parent:
            time.sleep(LOOK_EVERY_S)
        os.kill(os.getpid(), signal.SIGTERM)

    threading.Thread(target=look, daemon=True).start()
