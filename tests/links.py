"""Walks the site as one person: every link on every kind of page, a few of each kind, as a reader would follow them."""

from collections import Counter
from collections.abc import Iterator
from html.parser import HTMLParser
from typing import Any, NamedTuple
from urllib.parse import urljoin, urlsplit

from django.contrib.auth import authenticate
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import resolve

OF_EACH_KIND = 3


class Step(NamedTuple):
    address: str
    source: str  # the page that led there
    answer: Any
    questions: int  # that the database was asked


class _Links(HTMLParser):
    """The addresses that the anchors of a page lead to."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        address = dict(attrs).get("href")
        if tag == "a" and address:
            self.found.append(address)


def sign_in(name: str, password: str) -> Client:
    assert authenticate(username=name, password=password)
    client = Client()
    client.login(username=name, password=password)
    return client


def walk(client: Client, start: str = "/", of_each_kind: int = OF_EACH_KIND) -> Iterator[Step]:
    """At most so many pages of each route are opened, in the order in which their links are met."""
    waiting, seen, opened = [(start, "the beginning")], {start}, Counter[str]()
    while waiting:
        address, source = waiting.pop(0)
        route = resolve(urlsplit(address).path).view_name
        opened[route] += 1
        if opened[route] > of_each_kind:
            continue
        with CaptureQueriesContext(connection) as questions:
            answer = client.get(address)
        yield Step(address, source, answer, len(questions))
        for link in _links_of(answer, address):
            if link not in seen:
                seen.add(link)
                waiting.append((link, address))


def broken_links(client: Client) -> dict[str, str]:
    """What was answered with an error, and the page that led there."""
    steps = (step for step in walk(client) if step.answer.status_code >= 400)
    return {f"{step.answer.status_code} {step.address}": step.source for step in steps}


def asking_more_than(most: int, client: Client, of_each_kind: int) -> list[tuple[int, str]]:
    """The pages that ask the database more often than that."""
    steps = (step for step in walk(client, of_each_kind=of_each_kind) if _is_page(step.answer))
    return [(step.questions, step.address) for step in steps if step.questions > most]


def _is_page(answer: Any) -> bool:
    return not answer.streaming and answer["Content-Type"].startswith("text/html")


def _links_of(answer, address: str) -> list[str]:
    """The site's own pages; another query of the same list is the same page."""
    if answer.status_code in (301, 302):
        return [answer["Location"]]
    if not _is_page(answer):
        return []
    page = _Links()
    page.feed(answer.content.decode())
    joined = (urlsplit(urljoin(address, link)) for link in page.found)
    own = (each for each in joined if not each.netloc and not each.path.startswith("/static/"))
    return [each.path + (f"?{each.query}" if each.query else "") for each in own if each.path]
