"""Choosing among thousands by typing a part of a name, and entering somebody new without leaving the form."""

from records.models import Item, Party
from tests.factories import make_party
from tests.many import many


def test_a_part_of_a_name_is_enough_and_a_newcomer_is_entered_with_the_form(page, walk, axe):
    registrar = walk(page, "registrar")
    many(200)
    make_party("Sallowness Harbour Trust", kind="institution")

    registrar.go("/things/new/")
    registrar.fill({"Number": "L.2026.009", "Title": "Ten-groat piece"})
    registrar.field("Owner").press_sequentially("harbour")
    page.get_by_role("button", name="Sallowness Harbour Trust").wait_for()
    axe(page)
    page.get_by_role("button", name="Sallowness Harbour Trust").click()
    page.locator("[name=owner][value='Sallowness Harbour Trust']").wait_for()
    registrar.fill({"Place": "Annexe, drawer 4"})
    registrar.press("Enter it", refused=True)
    assert "tick that it is a new one" in registrar.text()
    page.get_by_label("Enter the name above as a new place").check()
    registrar.press("Enter it")

    item = Item.objects.get(number="L.2026.009")
    assert (item.owner.name, item.place.name) == ("Sallowness Harbour Trust", "Annexe, drawer 4")
    assert Party.objects.filter(name__icontains="harbour").count() == 1


def test_without_script_one_chooses_from_the_list_that_comes_back(page_without_script, sign_in_as):
    page = page_without_script
    sign_in_as(page, "registrar")
    make_party("Sallowness Harbour Trust", kind="institution")

    page.goto("/things/new/")
    page.locator("[name=number]").fill("L.2026.010")
    page.locator("[name=title]").fill("Ten-groat piece")
    page.locator("[name=owner]").fill("harbour")
    page.get_by_role("button", name="Enter it").click()
    page.get_by_role("radio", name="Sallowness Harbour Trust").check()
    page.get_by_role("button", name="Enter it").click()

    assert Item.objects.get(number="L.2026.010").owner.name == "Sallowness Harbour Trust"


def test_a_form_that_explains_its_fields_keeps_its_button_at_its_end_on_a_phone(phone, walk):
    registrar = walk(phone, "registrar")

    registrar.go("/things/new/")

    button = phone.locator(".form-end .verb-main")
    assert button.evaluate("each => getComputedStyle(each).position") == "static"
