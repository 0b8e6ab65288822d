"""How a person walks the site: links and buttons by their words, fields by their labels, every page read by axe."""

import re
from collections.abc import Callable
from datetime import datetime, timedelta
from io import BytesIO
from typing import Any

from django.utils import timezone
from PIL import Image, ImageDraw
from playwright.sync_api import Locator, Page

from records import clock


class Walker:
    """One person at one screen. Each step ends on a page that answered, and that axe has read."""

    def __init__(self, page: Page, axe: Callable[[Page], None]) -> None:
        self.page = page
        self._axe = axe
        self.visited: list[str] = []
        self.status = 0
        page.on("response", self._note)

    def _note(self, response: Any) -> None:
        if response.request.is_navigation_request():
            self.status = response.status

    def arrived(self, *, refused: bool = False) -> None:
        """The page is there: 200, or 422 where it gives the form back."""
        self.page.wait_for_load_state()
        assert self.status == (422 if refused else 200), f"{self.page.url}: {self.status}\n{self.said()}"
        self.visited.append(self.page.url)
        self._axe(self.page)

    def said(self) -> str:
        """What the page says is wrong, for a failing test."""
        return "\n".join(self.page.get_by_role("alert").all_inner_texts())

    def go(self, address: str) -> None:
        self.page.goto(address)
        self.arrived()

    def follow(self, words: str) -> None:
        self._named("link", words).click()
        self.arrived()

    def press(self, words: str, *, refused: bool = False) -> None:
        self._named("button", words).click()
        self.arrived(refused=refused)

    def send_photographs(self, answer: str = "1 kept.") -> None:
        """Chosen photographs are sent one by one and the page stays: wait for what it says became of them."""
        self._named("button", "Keep the photographs").click()
        self.page.get_by_text(answer).wait_for()
        self._axe(self.page)

    def _named(self, role: Any, words: str) -> Locator:
        """The link or button of just these words, else the first that holds them."""
        exact = self.page.get_by_role(role, name=words, exact=True)
        return exact.first if exact.count() else self.page.get_by_role(role, name=words).first

    def field(self, label: str) -> Locator:
        """A field by its label, with or without the words “if known”."""
        return self.page.get_by_label(re.compile(rf"^\s*{re.escape(label)}(\s+if known)?\s*$")).first

    def fill(self, values: dict[str, Any]) -> None:
        """Write, choose or tick by label; a fold that hides the field is opened first."""
        for label, value in values.items():
            field = self.field(label)
            self._unfold(field)
            kind = field.evaluate("each => each.type || each.tagName")
            if kind.startswith("select"):
                option = field.locator("option", has_text=str(value)).first
                field.select_option(value=option.get_attribute("value"))
            elif kind in {"checkbox", "radio"}:
                field.set_checked(value)
            elif kind == "file":
                field.set_input_files(value)
            else:
                field.fill(str(value))

    def _unfold(self, field: Locator) -> None:
        for fold in field.locator("xpath=ancestor::details[not(@open)]").all():
            fold.locator("> summary").click()

    def text(self) -> str:
        return self.page.get_by_role("main").inner_text()


def day(days_ago: int = 0) -> str:
    """A date as a date field takes it."""
    return f"{clock.today() - timedelta(days=days_ago):%Y-%m-%d}"


def moment(hours_ago: float = 0) -> str:
    """A local time as a time field takes it."""
    return f"{_local(hours_ago):%Y-%m-%dT%H:%M}"


def _local(hours_ago: float) -> datetime:
    return timezone.localtime(clock.now() - timedelta(hours=hours_ago))


def picture(name: str = "medal.jpg", colour: str = "#8a6a3a") -> dict[str, Any]:
    """A photograph as a browser sends it: a disc on grey."""
    image = Image.new("RGB", (640, 480), "#777777")
    ImageDraw.Draw(image).ellipse((140, 60, 500, 420), fill=colour)
    buffer = BytesIO()
    image.save(buffer, "JPEG")
    return {"name": name, "mimeType": "image/jpeg", "buffer": buffer.getvalue()}
