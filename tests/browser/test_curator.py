"""The curator's path: a label that hides the copy is refused, an honest one is approved, the papers print."""

from datetime import date

import pytest
from django.core.files.base import ContentFile

from process.models import MakingUp
from records.models import DescentLink, Document, Item, Mark, Photo
from records.services.photographs import keep_photo
from tests.browser.walking import picture
from tests.everything import make_shell
from tests.factories import make_cathode, make_item, make_mould, make_report, make_run

COLOURS = {"mark": "#8a6a3a", "obverse": "#6d5a44"}  # two pictures, for the same file is kept once


def photograph(item: Item, view: str) -> Photo:
    content = ContentFile(picture(colour=COLOURS[view])["buffer"])
    return keep_photo(file=content, name=f"{view}.jpg", item=item, view=view)


@pytest.fixture
def copy() -> Item:
    """A marked copy with its line of descent, as the workshop hands it over."""
    original = make_item("OVM.1931.0044", title="Medal of Maud Ferrigan", maker="Corvin Aldersey the Younger")
    mould = make_mould(original, "M-1")
    DescentLink.objects.create(source=original, target=mould.item, transfer="moulding", side="obverse")
    shell = make_shell(make_cathode(make_run("D-1"), mould=mould))
    copy = make_item(
        "R.2026.1", kind="copy", title="Electrotype copy of the medal", status="accessioned", date_words="2026"
    )
    DescentLink.objects.create(source=shell.item, target=copy, transfer="making_up")
    shell.making_up = MakingUp.objects.create(
        copy=copy, technique="uniface", lead_inside="no", made_up_on=date(2026, 3, 2)
    )
    shell.fate = "used"
    shell.save()
    photo = photograph(copy, "mark")
    Mark.objects.create(item=copy, text="OVM 2026 COPY", face="reverse", method="mould_borne", photo=photo)
    make_report(original, "before", number="CR-1").photos.add(photograph(original, "obverse"))
    return copy


def test_from_a_wording_that_hides_the_copy_to_the_printed_papers(page, walk, copy):
    curator = walk(page, "curator")

    curator.go("/")
    curator.go(f"/things/{copy.number}/label/")
    curator.fill({"Body": "This is the original of 1624."})
    curator.press("Keep the wording")
    assert "draft, refused" in curator.text()
    assert "keep the word for what it repeats" in curator.text()

    curator.fill(
        {
            "Body": "Copper, one face. The medal is OVM.1931.0044.",
            "After what": "after a cast bronze medal of Maud Ferrigan by Corvin Aldersey the Younger, 1624",
        }
    )
    curator.press("Keep the wording")
    curator.press("Approve")
    assert "approved" in curator.text()

    for address, words in (
        (f"/things/{copy.number}/", "Issue the gallery label"),
        (f"/things/{copy.number}/", "Issue the object tag"),
        (f"/things/{copy.number}/", "Issue the process report"),
        ("/condition/CR-1/", "Issue the condition report"),
    ):
        curator.go(address)
        paper_of(curator, words)

    curator.go("/papers/")
    assert Document.objects.count() == 4


def paper_of(walker, words: str) -> None:
    """Issue it, and look that what came is a PDF."""
    before = Document.objects.count()
    walker.page.get_by_role("button", name=words).first.click()
    walker.page.wait_for_load_state()
    assert Document.objects.count() == before + 1, walker.text()
    document = Document.objects.latest("pk")
    answer = walker.page.request.get(f"/papers/{document.pk}/")
    assert answer.headers["content-type"] == "application/pdf"
    assert answer.body().startswith(b"%PDF-")
