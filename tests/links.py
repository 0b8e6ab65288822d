"""Walks the site as one person: every link on every kind of page, a few of each kind, as a reader would follow them."""

from collections import Counter
from html.parser import HTMLParser
from urllib.parse import urljoin, urlsplit

from django.test import Client
from django.urls import resolve

OF_EACH_KIND = 3


class _Links(HTMLParser):
    """The addresses that the anchors of a page lead to."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        address = dict(attrs).get("href")
        if tag == "a" and address:
            self.found.append(address)


def broken_links(client: Client, start: str = "/") -> dict[str, str]:
    """What was answered with an error, and the page that led there; at most a few pages of each route are opened."""
    waiting, seen, opened, broken = [(start, "the beginning")], {start}, Counter[str](), {}
    while waiting:
        address, source = waiting.pop(0)
        route = resolve(urlsplit(address).path).view_name
        opened[route] += 1
        if opened[route] > OF_EACH_KIND:
            continue
        answer = client.get(address)
        if answer.status_code >= 400:
            broken[f"{answer.status_code} {address}"] = source
        for link in _links_of(answer, address):
            if link not in seen:
                seen.add(link)
                waiting.append((link, address))
    return broken


def _links_of(answer, address: str) -> list[str]:
    """The site's own pages; another query of the same list is the same page."""
    if answer.status_code in (301, 302):
        return [answer["Location"]]
    if answer.streaming or not answer["Content-Type"].startswith("text/html"):
        return []
    page = _Links()
    page.feed(answer.content.decode())
    joined = (urlsplit(urljoin(address, link)) for link in page.found)
    own = (each for each in joined if not each.netloc and not each.path.startswith("/static/"))
    return [each.path + (f"?{each.query}" if each.query else "") for each in own if each.path]
