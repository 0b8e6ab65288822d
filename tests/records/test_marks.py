"""Marks: recorded with their photograph, and held against the recorded rules."""

from io import BytesIO
from pathlib import Path

import pytest
from django.conf import settings
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from PIL import Image

from records.judging import class_of, piece_facts, verdicts_of
from records.models import Mark, Measurement, Photo
from tests.factories import make_copy, make_item, make_mark, make_party, make_photo, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    return client


@pytest.fixture
def copy():
    return make_copy("R.2026.1")


def _picture(name="mark.jpg", content=None):
    if content is None:
        buffer = BytesIO()
        Image.new("RGB", (320, 240), (140, 90, 50)).save(buffer, "JPEG")
        content = buffer.getvalue()
    return SimpleUploadedFile(name, content, content_type="image/jpeg")


def _typed(**more):
    return {
        "text": "OVM 2026 COPY", "purpose": "copy", "face": "reverse", "position": "rim", "method": "mould_borne",
        "technique": "raised", "letter_height_mm": "2.1", "copy_word_width_mm": "6.5", "is_legible": "true",
        "is_sans_serif": "true", "made_on": "2026-02-20",
    } | more  # fmt: skip


def _mark(client, **more):
    return client.post(reverse("mark_add", args=["R.2026.1"]), _typed(**more))


def _files():
    return [path for path in Path(settings.MEDIA_ROOT).rglob("*") if path.is_file()]


def test_a_mark_is_kept_with_one_of_the_things_photographs(technician, copy):
    photo = make_photo(copy, view="mark")

    answer = _mark(technician, photo=photo.pk)

    mark = Mark.objects.get()
    assert answer["Location"] == reverse("mark_edit", args=[mark.pk])
    assert mark.photo == photo and mark.is_photographed_copy_mark


def test_nothing_is_claimed_of_the_letters_that_nobody_looked_at(technician, copy):
    form = technician.get(reverse("mark_add", args=["R.2026.1"])).context["form"]
    assert [form[name].value() for name in ("is_legible", "is_sans_serif")] == [None, None]

    _mark(technician, is_legible="unknown", is_sans_serif="false")

    mark = Mark.objects.get()
    assert (mark.is_legible, mark.is_sans_serif) == (None, False)


def test_a_photograph_can_be_sent_along(technician, copy):
    _mark(technician, new_photo=_picture())

    mark = Mark.objects.get()
    assert (mark.photo.item, mark.photo.view) == (copy, "mark")


@pytest.mark.parametrize("content", [b"", b"%PDF-1.7 no picture at all", b"\xff\xd8 broken"])
def test_a_file_that_is_no_picture_leaves_nothing_behind(technician, copy, content):
    answer = _mark(technician, text="OVM 2026 COPY", new_photo=_picture("mark.jpg", content))

    assert answer.status_code == 422 and "OVM 2026 COPY" in answer.content.decode()
    assert not Mark.objects.exists() and not Photo.objects.filter(view="mark").exists() and not _files()


def test_the_photograph_of_another_thing_is_not_offered(technician, copy):
    answer = _mark(technician, photo=make_photo(make_item()).pk)

    assert answer.status_code == 422 and "photo" in answer.context["form"].errors


@pytest.mark.parametrize(
    ("field", "value"),
    [("letter_height_mm", "0"), ("letter_height_mm", "9"), ("depth_mm", "-0.3"), ("copy_word_width_mm", "6 parsec"),
     ("made_on", "2999-01-01"), ("text", "   ")],
)  # fmt: skip
def test_bad_input_is_named_at_its_field_and_kept(technician, copy, field, value):
    answer = _mark(technician, position="rim at 6 h", **{field: value})

    assert answer.status_code == 422 and field in answer.context["form"].errors
    assert "rim at 6 h" in answer.content.decode()


def test_nobody_witnesses_their_own_mark(technician, copy):
    person = make_party().pk

    answer = _mark(technician, made_by=person, witness=person)

    assert "witness" in answer.context["form"].errors


def test_before_the_mark_the_page_says_what_will_do(technician, copy):
    Measurement.objects.create(item=copy, what="diameter", length_mm=58.35)

    page = technician.get(reverse("mark_add", args=["R.2026.1"])).content.decode()

    assert "at least 2.00 mm high" in page and "not legal advice" in page


def test_afterwards_each_rule_answers_with_required_and_found(technician, copy):
    """16 CFR 304.6: at least 2.0 mm high, 6.0 mm wide; seen in public copies."""
    Measurement.objects.create(item=copy, what="diameter", length_mm=58.34)
    mark = make_mark(copy, letter_height_mm=1.9, copy_word_width_mm=6.5)

    page = technician.get(reverse("mark_edit", args=[mark.pk])).content.decode()

    assert "at least 2.00\u00a0mm" in page and "1.90\u00a0mm" in page
    assert "fail" in page and "pass" in page and "unknown" in page and "ask the competent authority" in page


def test_correcting_a_mark_keeps_the_rest(technician, copy):
    mark = make_mark(copy)
    typed = _typed(text="OVM 2026 COPY 1", photo=mark.photo_id, version=mark.version)

    answer = technician.post(reverse("mark_edit", args=[mark.pk]), typed)

    mark.refresh_from_db()
    assert answer.status_code == 302 and mark.text == "OVM 2026 COPY 1" and mark.photo_id


def test_two_people_do_not_overwrite_each_other(technician, copy):
    mark = make_mark(copy)
    mark.save()

    answer = technician.post(reverse("mark_edit", args=[mark.pk]), _typed(text="mine", version=0))

    assert answer.status_code == 422 and "compare" in answer.content.decode().lower()


def test_a_curator_records_no_marks(client, copy):
    client.force_login(make_user("curator"))

    assert client.get(reverse("mark_add", args=["R.2026.1"])).status_code == 403


def test_sizes_come_from_the_piece_before_its_model(copy):
    medal = make_item(object_type="medal")
    Measurement.objects.create(item=medal, what="diameter", length_mm=60.0)
    foretold = piece_facts(copy, [medal]).longest_mm
    Measurement.objects.create(item=copy, what="diameter", length_mm=58.34)

    assert (foretold, piece_facts(copy, [medal]).longest_mm) == (60.0, 58.34)


def test_rules_about_coins_are_silent_on_a_mask():
    mask = make_item(object_type="life mask")

    verdicts = verdicts_of(make_mark(mask), piece_facts(mask))

    assert verdicts and not any(verdict.rule.id.startswith("us-copy") for verdict in verdicts)


def test_a_makers_mark_is_not_asked_whether_it_says_copy(copy):
    assert verdicts_of(make_mark(copy, purpose="maker"), piece_facts(copy)) == []


@pytest.mark.parametrize(
    ("words", "expected"), [("Coins, silver", "coin"), ("portrait medal", "medal"), ("coinage", "coinage")]
)
def test_the_class_is_read_from_whole_words(words, expected):
    assert class_of(words) == expected
