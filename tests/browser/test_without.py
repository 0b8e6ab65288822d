"""Without script, and without a mouse."""

from django.contrib.auth.models import Group, User

from records.models import Item, Place
from tests.browser.walking import Walker
from tests.factories import make_party


def a_registrar() -> None:
    user = User.objects.create_user("ines", password="a long password")
    user.groups.add(Group.objects.get_or_create(name="registrar")[0])
    make_party("Ines Quillfeather", user=user)


def test_the_register_works_without_script(page_without_script):
    """Axe itself is a script: these pages are read by it in the other walks."""
    a_registrar()
    person = Walker(page_without_script, lambda page: None)

    person.go("/")
    person.fill({"Username": "ines", "Password": "a long password"})
    person.press("Sign in")
    person.follow("Objects")
    person.follow("Enter an object")
    person.fill({"Number": "OVM.1", "Title": "Portrait medal", "Materials and techniques": "bronze"})
    person.press("Enter it")
    person.page.get_by_role("searchbox").fill("portrait")
    person.page.get_by_role("searchbox").press("Enter")
    person.arrived()

    assert "OVM.1" in person.text()
    person.press("Sign out")
    assert Item.objects.get().materials == "bronze"


def test_a_keyboard_is_enough(page, axe):
    a_registrar()
    page.goto("/places/new/")
    axe(page)

    tab_to(page, "Username")
    page.keyboard.type("ines")
    page.keyboard.press("Tab")
    page.keyboard.type("a long password")
    enter(page)
    tab_to(page, "Name")
    page.keyboard.type("Bath room")
    enter(page)

    assert Place.objects.get().name == "Bath room"


def enter(page) -> None:
    with page.expect_navigation():
        page.keyboard.press("Enter")


def tab_to(page, label: str) -> None:
    """Press Tab until the field with this label has the focus, which must be seen."""
    for _ in range(40):
        page.keyboard.press("Tab")
        found = page.evaluate("(document.activeElement.labels?.[0]?.innerText || '').trim()")
        if found.startswith(label):
            outline = page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
            assert outline != "none", "the focus is not seen"
            return
    raise AssertionError(f"no field “{label}” is reached by Tab on {page.url}")
