"""The server itself: one process with a few threads, enough for a museum."""

import os
import signal
import sys
from collections.abc import Callable
from typing import Any

import waitress
from django.conf import settings
from django.core.management.base import CommandError
from django.db import connections

from records.serving import address_of
from records.worker import beside

THREADS = 8
# Set by the proxy that speaks https in front of this server on the same machine; from others they are dropped.
BEHIND_PROXY = {"trusted_proxy": "127.0.0.1", "trusted_proxy_headers": {"x-forwarded-proto", "x-forwarded-for"}}


def listen(host: str, port: int, say: Callable[[str], Any]) -> None:
    """Serve until Ctrl-C."""
    from records.wsgi import application  # only now: it looks through the static files

    connections.close_all()
    behind = BEHIND_PROXY if settings.BASE_URL.startswith("https://") else {}
    try:
        server = waitress.create_server(application, host=host, port=port, threads=THREADS, ident=None, **behind)
    except OSError as error:
        reason = os.strerror(error.errno) if error.errno else str(error)
        raise CommandError(f"Cannot listen at {host}:{port} ({reason}). Choose another with --port.") from error
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(0))  # so that the worker ends too
    say(f"Serving at {address_of(host, port)}  (stop with Ctrl-C)")
    try:
        with beside(say):
            server.run()
    finally:
        server.close()
