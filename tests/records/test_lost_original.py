"""An original that is lost, stolen or destroyed: whatever was taken from it carries the flag, wherever it is met."""

import pytest
from django.core.files.base import ContentFile

from records.labelling import complaints
from records.limits import limited_among, limits_of
from records.models import Item
from records.services import papers
from records.services.photographs import keep_photo
from tests.factories import make_consent, make_copy, make_item, make_mark, make_mould, make_party, make_user
from tests.pdf.pictures import medal
from tests.pdf.reading import text
from tests.records.test_papers import label_for

pytestmark = pytest.mark.django_db
FLAG = "original lost"


@pytest.fixture
def reader(client):
    client.force_login(make_user("registrar"))
    return client


@pytest.fixture
def copy():
    """A marked copy with an approved label, of a medal that was there when it was made."""
    medal = make_item("OVM.1931.0044", object_type="medal")
    made = make_copy("R.2026.1", model=medal)
    made.status = Item.Status.ACCESSIONED
    made.save()
    make_mark(made)
    label_for(made)
    return made


def lose(status: str) -> None:
    medal = Item.objects.get(number="OVM.1931.0044")
    medal.status = status
    medal.save()


@pytest.mark.parametrize(
    ("status", "said"), [("lost", "lost or untraced"), ("stolen", "stolen"), ("destroyed", "destroyed")]
)
def test_pages_of_copy_mould_and_family_carry_the_flag(reader, copy, status, said):
    lose(status)
    mould = Item.objects.filter(kind="mould").first()

    for address in ("/things/R.2026.1/", mould.get_absolute_url(), "/things/R.2026.1/family/"):
        page = reader.get(address).content.decode()
        assert FLAG in page and f"is recorded as {said}." in page


@pytest.mark.parametrize("status", ["accessioned", "loan_in", "left"])
def test_an_original_that_is_here_or_went_back_home_flags_nothing(reader, copy, status):
    lose(status)

    assert FLAG not in reader.get("/things/R.2026.1/").content.decode()
    assert FLAG not in reader.get("/copies/").content.decode()
    assert limits_of(copy) == []


@pytest.mark.parametrize("address", ["/things/", "/copies/", "/moulds/", "/search/?q=R.2026"])
def test_lists_carry_it_beside_each_piece_and_in_the_export(reader, copy, address):
    make_copy("R.2026.9")  # of another original, which is there
    lose("stolen")

    shown = reader.get(address)
    page = shown.content.decode() if shown.status_code == 200 else ""

    rows = [part for part in page.replace("<tr>", '<li class="row">').split('<li class="row">') if FLAG in part]
    assert rows and not any("R.2026.9" in row for row in rows)
    if "search" not in address:
        export = b"".join(reader.get(address, {"export": "csv"}).streaming_content).decode()
        assert FLAG in export


def test_tags_labels_and_papers_of_the_copy_print_it(copy, django_capture_on_commit_callbacks):
    lose("destroyed")
    mark = copy.marks.get()
    with django_capture_on_commit_callbacks(execute=True):
        mark.photo = keep_photo(file=ContentFile(medal(300)), name="mark.jpg", item=copy, view="mark")
    mark.save()
    for photo in copy.photos.exclude(pk=mark.photo_id):  # a row without a file, which no paper prints
        photo.delete()

    for kind in ("object-tag", "gallery-label", "acknowledgement", "process-report", "descent-sheet"):
        paper = papers.issue(kind=kind, subject=copy, party=make_party(), role="registrar")
        assert "Original lost: OVM.1931.0044 is recorded as destroyed." in text(papers.path_of(paper).read_bytes()), (
            kind
        )


def test_the_certificate_of_a_destroyed_mould_says_what_else_is_gone():
    medal = make_item("OVM.1", status="lost")
    mould = make_mould(medal, fate="destroyed", fate_on="2026-04-17", fate_witness=make_party())
    medal.descendants.create(target=mould.item, transfer="moulding")
    make_consent(medal)

    paper = papers.issue(kind="mould-destruction", subject=mould.item, party=make_party(), role="registrar")

    assert "Original lost: OVM.1 is recorded as lost or untraced." in text(papers.path_of(paper).read_bytes())


def test_the_wording_of_a_label_is_asked_to_say_it(copy):
    lose("stolen")
    label = copy.label

    assert "original.lost" in {each.code for each in complaints(label)}

    label.body = "Copper. The original, OVM.1931.0044, has been stolen."
    assert "original.lost" not in {each.code for each in complaints(label)}


def test_the_home_page_knows_at_once_which_of_many_things_are_concerned(copy, django_assert_num_queries):
    lose("lost")
    other = make_copy("R.2026.9")

    with django_assert_num_queries(1):
        assert limited_among(["R.2026.1", other.number]) == {"R.2026.1"}
