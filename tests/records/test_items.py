"""Things: list, page, entering, mending, and what was changed."""

import pytest
from django.test import Client

from records.models import DescentLink, Item, LabelWording, Measurement
from tests.factories import (
    make_consent,
    make_item,
    make_mould,
    make_party,
    make_photo,
    make_place,
    make_report,
    make_user,
)

pytestmark = pytest.mark.django_db


@pytest.fixture
def registrar(client: Client) -> Client:
    client.force_login(make_user("registrar"))
    return client


def entered(**changes: str) -> dict[str, str]:
    """A form as it is sent when an original is entered."""
    return {
        "number": "OVM.1931.0044", "kind": "original", "title": "Portrait medal", "date_words": "1624",
        "status": "accessioned",
    } | changes  # fmt: skip


def test_entering_an_original_keeps_its_uncertain_date_as_words_and_bounds(registrar):
    answer = registrar.post("/things/new/", entered(date_words="about 1868"))

    item = Item.objects.get()
    assert answer.url == "/things/OVM.1931.0044/"
    assert (item.date_words, item.date_edtf) == ("about 1868", "1868~")
    assert item.date_earliest.year == 1863  # five years to either side, records.dating.ABOUT_YEARS


def test_number_that_is_taken_is_refused_in_any_case_of_its_letters_and_nothing_typed_is_lost(registrar):
    make_item("OVM.1931.0044")

    answer = registrar.post("/things/new/", entered(number="ovm.1931.0044", maker="Corvin Aldersey"))

    page = answer.content.decode()
    assert answer.status_code == 422
    assert "“ovm.1931.0044” is taken" in page
    assert 'value="Corvin Aldersey"' in page
    assert Item.objects.count() == 1


@pytest.mark.parametrize("number", ["1931/44", "new", "..", "50%", "   "])
def test_number_that_could_not_stand_in_an_address_is_refused(registrar, number):
    answer = registrar.post("/things/new/", entered(number=number))

    assert answer.status_code == 422
    assert not Item.objects.exists()


@pytest.mark.parametrize("words", ["1.2.1868", "the time of the mill", "1900 to 1800", "x" * 90])
def test_date_that_is_not_understood_comes_back_with_what_was_typed(registrar, words):
    answer = registrar.post("/things/new/", entered(date_words=words))

    assert answer.status_code == 422
    assert words in answer.content.decode()


@pytest.mark.parametrize("kind", ["mould", "shell", "copy", "core", "anything"])
def test_what_the_workshop_makes_is_not_entered_by_hand(registrar, kind):
    answer = registrar.post("/things/new/", entered(kind=kind))

    assert answer.status_code == 422
    assert not Item.objects.exists()


def test_reader_may_look_but_not_write(client):
    make_item("R.1")
    client.force_login(make_user("reader"))

    assert client.get("/things/R.1/").status_code == 200
    assert "Correct the record" not in client.get("/things/R.1/").content.decode()
    assert client.get("/things/new/").status_code == 403
    assert client.post("/things/R.1/edit/", entered()).status_code == 403


def test_second_of_two_people_is_shown_what_the_first_changed(registrar):
    make_item("R.1", maker="unknown")
    opened = registrar.get("/things/R.1/edit/").content.decode()
    assert 'name="version" value="0"' in opened
    registrar.post("/things/R.1/edit/", entered(number="R.1", maker="first", version="0"))

    answer = registrar.post("/things/R.1/edit/", entered(number="R.1", maker="second", version="0"))

    page = answer.content.decode()
    assert answer.status_code == 422
    assert "<td>first</td><td>second</td>" in page
    assert Item.objects.get().maker == "first"


def test_copy_in_the_workshop_leaves_it_by_acceptance_only(registrar):
    make_item("R.2026.1", kind="copy", status="workshop")

    registrar.post("/things/R.2026.1/edit/", entered(number="R.2026.1", kind="original", version="0"))

    copy = Item.objects.get()
    assert (copy.status, copy.kind) == ("workshop", "copy")


def test_page_says_in_a_sentence_what_the_thing_is_and_where(registrar):
    make_item(
        "L.2026.003", title="Ten-groat piece", object_type="coin, silver coin", date_words="1571", status="loan_in",
        owner=make_party("Almshouse Trust"), place=make_place("Strong room"),
    )  # fmt: skip

    page = registrar.get("/things/L.2026.003/").content.decode()

    assert "Silver coin, 1571; original, on loan to us from Almshouse Trust, in Strong room." in page


def test_unmarked_copy_is_said_to_be_unmarked_and_historic_copy_is_flagged(registrar):
    make_item("R.2026.1", kind="copy", status="workshop", date_words="2026")
    make_item("R.1889.7", kind="historic_copy", date_words="before 1889")

    copy = registrar.get("/things/R.2026.1/").content.decode()
    historic = registrar.get("/things/R.1889.7/").content.decode()

    assert "unmarked, not accepted yet" in copy
    assert "Historic copy, before 1889, first generation or more (first link undocumented)." in historic
    assert "flagged as such" in historic


def test_missing_categories_of_object_id_are_named(registrar):
    """Object ID's nine categories: International Council of Museums, object-id.com (from memory)."""
    item = make_item("R.1", object_type="medal", materials="bronze", inscriptions="none", features="none seen")
    Measurement.objects.create(item=item, what="mass", mass_g=71.36)

    page = registrar.get("/things/R.1/").content.decode()

    assert "Object ID: 7 of 9 categories recorded; missing: subject, maker." in page


def test_limits_of_a_concession_follow_what_is_made_of_the_thing(registrar):
    from records.services.permissions import give_concession

    model, copy = make_item("R.1889.7", kind="historic_copy"), make_item("R.2026.3", kind="copy", status="workshop")
    DescentLink.objects.create(source=model, target=copy, transfer="making_up")
    give_concession(
        gate="G2", check_names=["risk assessed"], items=[model], given_by=make_party(), role="conservator",
        reason="seam stopped with wax",
        limits_of_use="Display only, no handling.",
    )  # fmt: skip

    assert "Display only, no handling." in registrar.get("/things/R.2026.3/").content.decode()


def test_conditions_of_the_owner_stand_beside_the_mould_too(registrar):
    model = make_item("L.2026.003")
    mould = make_mould(model, "M-2026-01").item
    DescentLink.objects.create(source=model, target=mould, transfer="moulding", side="obverse")
    make_consent(model, copies_max_count=1, temperature_max_degc=30.0)

    page = registrar.get("/things/M-2026-01/").content.decode()

    assert "At most 1 copy." in page and "Nothing above 30 °C." in page


def test_page_of_a_full_record_makes_few_queries(registrar, django_assert_max_num_queries):
    item = make_item("OVM.1931.0044")
    make_consent(item)
    for number in range(50):
        make_photo(item)
        make_report(item, number=f"CR-2026-1{number:02d}")
        Measurement.objects.create(item=item, what="diameter", length_mm=58.4)

    with django_assert_max_num_queries(15):
        assert registrar.get("/things/OVM.1931.0044/").status_code == 200


def test_page_of_a_marked_and_labelled_copy_with_its_papers_makes_few_queries(client, django_assert_max_num_queries):
    model, copy = make_item("OVM.1931.0044"), make_item("R.2026.1", kind="copy", status="inventory", date_words="2026")
    DescentLink.objects.create(source=model, target=copy, transfer="making_up")
    make_consent(model)
    copy.marks.create(text="COPY", face="edge", method="punch", photo=make_photo(copy))
    LabelWording.objects.create(item=copy, kind_of_copy="Electrotype copy", copy_date="2026", after="a medal")
    client.force_login(make_user("curator"))

    with django_assert_max_num_queries(15):
        page = client.get("/things/R.2026.1/").content.decode()

    assert "Gallery label" in page and "The wording is not approved" in page


def test_list_pages_by_the_last_number_and_makes_few_queries(registrar, django_assert_max_num_queries):
    for number in range(60):
        make_photo(make_item(f"A.{number:03d}"))

    with django_assert_max_num_queries(15):
        first = registrar.get("/things/").content.decode()
    second = registrar.get("/things/?after=A.049").content.decode()

    assert "A.049" in first and "A.050" not in first
    assert "A.050" in second and "A.049<" not in second


def test_list_is_narrowed_by_kind_and_words_and_exported_as_shown(registrar):
    make_item("A.1", title="Medal of the café")
    make_item("A.2", title="Medal of the mill")
    make_item("M-1", kind="mould", title="Mould for the cafe medal")

    answer = registrar.get("/things/?kind=original&q=cafe&export=csv")

    lines = b"".join(answer.streaming_content).decode("utf-8-sig").splitlines()
    assert [line.split(",")[0] for line in lines] == ["number", "A.1"]
    assert "attachment" in answer["Content-Disposition"]


def test_exported_cell_never_runs_in_a_spreadsheet(registrar):
    make_item("A.1", title='=HYPERLINK("x")')

    answer = registrar.get("/things/?export=csv")

    assert b"\"'=HYPERLINK" in b"".join(answer.streaming_content)


def test_history_says_who_changed_what(client):
    user = make_user("registrar", "ines")
    client.force_login(user)
    make_item("R.1", maker="")

    client.post("/things/R.1/edit/", entered(number="R.1", maker="C. Aldersey", version="0"))

    page = client.get("/things/R.1/history/").content.decode()
    assert "maker: <del>empty</del>" in page and "<ins>C. Aldersey</ins>" in page
    assert "Ines" in page


def test_health_answers_strangers(client):
    assert client.get("/health/").json() == {"status": "ok"}
    assert client.post("/health/").status_code == 405
