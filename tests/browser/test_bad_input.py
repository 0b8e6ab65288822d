"""What is typed wrongly comes back with what to do; nothing is lost, nothing is written twice."""

from process.models import Event, Reading
from records.models import Item, Photo
from tests.browser.walking import Walker, moment
from tests.factories import NINE, make_item, make_run

PAPER = {"name": "medal.jpg", "mimeType": "image/jpeg", "buffer": b"%PDF-1.7\n%not a picture\n"}


def test_a_paper_called_a_picture_is_refused_and_leaves_no_file(page, walk, settings):
    make_item("OVM.1")
    person = walk(page, "registrar")

    person.go("/things/OVM.1/photographs/new/")
    person.fill({"Photographs": PAPER, "Caption": "the obverse"})
    person.send_photographs("0 kept, 1 not kept")

    assert "“medal.jpg” is a PDF, whatever its name says" in page.locator("li.sent").inner_text()
    assert person.field("Caption").input_value() == "the obverse"
    assert not Photo.objects.exists()
    assert [path for path in settings.MEDIA_ROOT.rglob("*") if path.is_file()] == []


def test_a_number_that_is_taken_comes_back_with_everything_else(page, walk):
    make_item("OVM.1")
    person = walk(page, "registrar")

    person.go("/things/new/")
    person.fill({"Number": "ovm.1", "Title": "Life mask", "Maker": "unknown"})
    person.press("Enter it", refused=True)

    assert "ovm.1" in person.said().casefold()
    assert person.field("Title").input_value() == "Life mask"
    assert Item.objects.count() == 1


def test_the_second_of_two_people_is_shown_the_difference(page, walk):
    make_item("OVM.1", title="Medal")
    person = walk(page, "registrar")
    other = Walker(page.context.new_page(), lambda page: None)
    for each in (person, other):
        each.go("/things/OVM.1/edit/")
    other.fill({"Title": "Portrait medal"})
    other.press("Save")

    person.fill({"Title": "Cast medal"})
    person.press("Save", refused=True)

    assert "Portrait medal" in person.text()
    assert person.field("Title").input_value() == "Cast medal"
    assert Item.objects.get().title == "Portrait medal"
    person.press("Save")
    assert Item.objects.get().title == "Cast medal"


def test_a_reading_sent_twice_is_one_reading(phone, walk):
    run = make_run("D-1")
    Event.objects.create(run=run, kind=Event.Kind.ENTRY, at=NINE, current_a=0.24)
    person = walk(phone, "technician")

    person.go("/runs/D-1/readings/new/")
    person.fill({"Current": "1,21 A"})
    sent = phone.locator("#form").evaluate("form => Object.fromEntries(new FormData(form))")
    phone.get_by_role("button", name="Save the reading").dblclick()
    phone.wait_for_url("**/runs/D-1/**#reading-*")
    again = phone.request.post("/runs/D-1/readings/new/", form=sent)

    assert again.ok and again.url.endswith(f"/runs/D-1/#reading-{Reading.objects.get().pk}")
    assert Reading.objects.count() == 1


def test_words_that_are_no_current_come_back_with_advice(phone, walk):
    run = make_run("D-1")
    Event.objects.create(run=run, kind=Event.Kind.ENTRY, at=NINE, current_a=0.24)
    person = walk(phone, "technician")

    person.go("/runs/D-1/readings/new/")
    for typed in ("1e999", "5 kW", "9" * 70, "about one"):
        person.fill({"Current": typed, "Note": "smooth"})
        person.press("Save the reading", refused=True)
        assert person.field("Current").input_value() == typed
        assert person.field("Note").input_value() == "smooth"

    person.fill({"Current": "1.21", "Time": moment(-48)})
    person.press("Save the reading", refused=True)
    assert "not come yet" in person.said()
    assert not Reading.objects.exists()
