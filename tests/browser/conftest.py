"""The site in a real browser: Debian's chromium driven by Playwright, every page read by axe-core."""

import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from axe_playwright_python.sync_playwright import Axe
from django.conf import settings
from django.contrib.auth.models import Group
from django.test import Client
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from tests.browser.walking import Walker
from tests.factories import make_party
from tests.tools import tool

# Playwright's synchronous calls keep an event loop in this thread; its database calls remain synchronous.
os.environ.setdefault("DJANGO_ALLOW_ASYNC_UNSAFE", "true")

# Root in a container has no sandbox; the rest keeps the browser from calling home.
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
WCAG_22_AA = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
DESK, PHONE = {"width": 1440, "height": 900}, {"width": 360, "height": 740}


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """All tests of this folder need the browser and a database that the server's own threads can see.

    First, because pytest-django then moves such tests to the end.
    """
    here = Path(__file__).parent
    for item in items:
        if here in item.path.parents:
            item.add_marker(pytest.mark.browser)
            item.add_marker(pytest.mark.django_db(transaction=True))


@pytest.fixture(scope="session")
def chromium() -> str:
    """The browser’s path: another than the system’s is named in REGISTER_CHROMIUM."""
    return tool("chromium", found=os.environ.get("REGISTER_CHROMIUM") or shutil.which("chromium-browser"))


@pytest.fixture(scope="session")
def browser(chromium: str) -> Iterator[Browser]:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, headless=True, args=FLAGS)
        yield browser
        browser.close()


def _watch(context: BrowserContext, faults: list[str]) -> None:
    """Note script errors, refusals by the content security policy, and any host but our own."""

    def asked(request) -> None:
        host = urlsplit(request.url).hostname
        if host not in (None, "localhost", "127.0.0.1"):
            faults.append(f"asked a foreign host: {request.url}")

    def said(message) -> None:
        if "Content Security Policy" in message.text:
            faults.append(message.text)

    context.on("request", asked)
    context.on("console", said)
    context.on("weberror", lambda error: faults.append(str(error.error)))


def _page(browser: Browser, live_server, **choices) -> Iterator[Page]:
    context = browser.new_context(
        base_url=live_server.url,
        locale="en-GB",
        timezone_id=settings.TIME_ZONE,
        reduced_motion="reduce",
        **choices,
    )
    context.set_default_timeout(10_000)
    faults: list[str] = []
    _watch(context, faults)
    yield context.new_page()
    context.close()
    assert not faults, "\n".join(faults)


@pytest.fixture
def page(browser: Browser, live_server) -> Iterator[Page]:
    """A desk with a wide screen; addresses may be given without the host."""
    yield from _page(browser, live_server, viewport=DESK)


@pytest.fixture
def phone(browser: Browser, live_server) -> Iterator[Page]:
    """A phone at the bench."""
    yield from _page(browser, live_server, viewport=PHONE, has_touch=True)


@pytest.fixture
def page_without_script(browser: Browser, live_server) -> Iterator[Page]:
    yield from _page(browser, live_server, viewport=DESK, java_script_enabled=False)


@pytest.fixture
def sign_in_as(live_server, django_user_model) -> Callable[..., object]:
    """`sign_in_as(page, "registrar")` signs a person of that role in, without the form, and returns them."""

    def sign_in(page: Page, role: str, username: str = "") -> object:
        user, _ = django_user_model.objects.get_or_create(username=username or role)
        user.groups.add(Group.objects.get_or_create(name=role)[0])
        client = Client()
        client.force_login(user)
        session = client.cookies[settings.SESSION_COOKIE_NAME].value
        page.context.add_cookies([{"name": settings.SESSION_COOKIE_NAME, "value": session, "url": live_server.url}])
        return user

    return sign_in


@pytest.fixture
def axe() -> Callable[[Page], None]:
    """`axe(page)`: no violation of WCAG 2.2 AA on the page as it stands; nothing runs off its side."""

    def check(page: Page) -> None:
        result = Axe().run(page, options={"runOnly": {"type": "tag", "values": WCAG_22_AA}})
        found = [
            f"{rule['id']}: {rule['help']} — {', '.join(node['html'][:120] for node in rule['nodes'][:3])}"
            for rule in result.response["violations"]
        ]
        assert not found, f"{page.url}\n" + "\n".join(found)
        overhang = page.evaluate("document.documentElement.scrollWidth - window.innerWidth")
        assert overhang <= 0, f"{page.url} is {overhang} px wider than its window"

    return check


@pytest.fixture
def walk(axe, sign_in_as) -> Callable[..., Walker]:
    """`walk(page, "registrar")`: a person of that role at that screen, known among the parties by the same name."""

    def start(page: Page, role: str) -> Walker:
        user = sign_in_as(page, role)
        make_party(role.title(), user=user, initials=role[:2].upper())
        return Walker(page, axe)

    return start
