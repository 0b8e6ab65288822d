"""A whole condition report by keys alone on a screen of 360 pixels: begun, a finding written and drawn, signed."""

from django.core.files.base import ContentFile

from records.models import ConditionReport, FindingMark
from records.services.photographs import keep_photo
from tests.browser.walking import Walker, picture
from tests.factories import NINE, make_item, make_party, make_term

MOST_TABS = 20  # from the top of a page to what is wanted; a person with a switch feels each

SEEN = "(() => { const b = document.activeElement.getBoundingClientRect(); return [b.top, b.bottom, innerHeight]; })()"


class Keys:
    """One person without a pointer."""

    def __init__(self, page, axe) -> None:
        self.page, self.person = page, Walker(page, axe)
        self.tabs = 0

    def to(self, condition: str, argument: str = "") -> None:
        """Tab until the focus is where it is wanted; it must be seen there."""
        for _ in range(120):
            self.page.keyboard.press("Tab")
            self.tabs += 1
            if self.page.evaluate(
                f"(argument) => {{ const at = document.activeElement; return {condition}; }}", argument
            ):
                break
        else:
            raise AssertionError(f"Not reached by Tab: {argument or condition}")
        top, bottom, height = self.page.evaluate(SEEN)
        assert bottom > 0 and top < height, f"out of sight: {argument or condition}"

    def follow(self, words: str, condition: str = "at.textContent.includes(argument)") -> None:
        self.tabs = 0
        self.to(f"at.matches('a, button') && {condition}", words)
        used = self.tabs
        with self.page.expect_navigation():
            self.page.keyboard.press("Enter")
        self.person.arrived()
        assert used <= MOST_TABS, f"{words}: {used} tabs"

    def write(self, name: str, text: str) -> None:
        self.to("at.name === argument", name)
        self.page.keyboard.press("Control+a")
        self.page.keyboard.type(text)

    def tick(self, name: str) -> None:
        """The first of a group of choices."""
        self.to("at.name === argument", name)
        self.page.keyboard.press("Space")


def test_a_report_is_begun_drawn_on_and_signed_without_a_pointer(phone, axe, sign_in_as):
    make_party("Tobias", user=sign_in_as(phone, "conservator"))
    item = make_item("R.1", title="Medal of the mill")
    make_term("finding", "dent")
    file = ContentFile(picture("medal.jpg")["buffer"])
    keep_photo(file=file, name="medal.jpg", item=item, view="obverse", taken_at=NINE.replace(month=1))
    keys = Keys(phone, axe)

    keys.person.go("/things/R.1/condition/new/")
    keys.write("light", "raking, left")
    keys.follow("Begin")
    report = ConditionReport.objects.get()
    assert report.light == "raking, left"

    keys.follow("Add a finding")
    keys.to("at.name === 'term'")
    phone.keyboard.type("dent")
    keys.write("location", "obverse rim, 4 h")
    keys.tick("severity")
    keys.follow("Keep")
    assert report.findings.get().location == "obverse rim, 4 h"

    keys.follow("Draw on a photograph")
    keys.follow("Rectangle on")
    keys.to("at.matches('.layer-picture')")
    phone.keyboard.press("Enter")
    for _ in range(6):
        phone.keyboard.press("Shift+ArrowRight")
        phone.keyboard.press("Shift+ArrowDown")
    phone.keyboard.press("Enter")
    keys.follow("Keep the drawing")
    assert len(FindingMark.objects.get().points) == 2

    keys.person.go(report.get_absolute_url())
    keys.follow("Sign", "at.textContent.trim() === argument")
    report.refresh_from_db()
    assert report.is_signed
    assert phone.evaluate("document.documentElement.scrollWidth <= innerWidth")
