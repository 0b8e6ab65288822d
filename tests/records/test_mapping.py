"""Findings on photographs: drawn in pixels of the whole picture, kept until signed, offered in open standards."""

import json
from io import BytesIO

import iiif_prezi3
import pytest
from django.core.files import File
from django.urls import reverse
from PIL import Image

from records.models import FindingMark, Item, Photo
from records.services.photographs import keep_photo
from tests.factories import make_item, make_report, make_user
from tests.records.findings import make_finding

pytestmark = pytest.mark.django_db


def sent(item: Item, colour: str = "#8a6a4a") -> Photo:
    file = BytesIO()
    Image.new("RGB", (120, 100), colour).save(file, "JPEG")
    return keep_photo(file=File(file), name="view.jpg", item=item)


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator", "tobias"))
    return client


@pytest.fixture
def finding():
    return make_finding(make_report(make_item("R.1"), signed=False))


@pytest.fixture
def photo(finding):
    return sent(finding.report.item)


def draw(client, finding, photo, shape="polygon", points="1 1\n90 1\n50 80", **more):
    return client.post(reverse("finding_draw", args=[finding.pk, photo.pk, shape]), {"points": points, **more})


def test_a_shape_is_kept_in_pixels_of_the_whole_picture(conservator, finding, photo):
    answer = draw(conservator, finding, photo)

    mark = FindingMark.objects.get()
    assert answer.status_code == 302
    assert (mark.shape, mark.points) == ("polygon", [[1, 1], [90, 1], [50, 80]])
    page = conservator.get(finding.report.get_absolute_url()).content.decode()
    assert 'd="M 1.0 1.0 L 90.0 1.0 L 50.0 80.0 Z"' in page
    assert f"Finding 1: {finding.term}" in page


@pytest.mark.parametrize(
    ("shape", "points", "complaint"),
    [
        ("polygon", "1 1\n90 1", "at least 3"),
        ("point", "1 1\n90 1", "Set 1 points"),
        ("rectangle", "1 1\n9999 1", "outside the picture"),
        ("line", "up there", "is no point"),
    ],
)
def test_what_is_no_such_shape_is_said_and_kept_in_the_form(conservator, finding, photo, shape, points, complaint):
    answer = draw(conservator, finding, photo, shape, points)

    assert answer.status_code == 422
    assert complaint in answer.content.decode()
    assert points.splitlines()[0] in answer.content.decode()
    assert not FindingMark.objects.exists()


def test_a_signed_report_is_not_drawn_on(conservator, finding, photo):
    draw(conservator, finding, photo)
    report, mark = finding.report, FindingMark.objects.get()
    report.signed_by, report.signed_role, report.signed_at = report.examiner, "conservator", report.created_at
    report.save()

    refused = draw(conservator, finding, photo)
    conservator.post(reverse("finding_mark_delete", args=[mark.pk]))

    assert "signed and stays as it is" in refused.content.decode()
    assert FindingMark.objects.count() == 1


def test_a_drawing_is_rubbed_out_and_its_history_stays(conservator, finding, photo):
    draw(conservator, finding, photo)

    conservator.post(reverse("finding_mark_delete", args=[FindingMark.objects.get().pk]))

    assert not FindingMark.objects.exists()
    assert FindingMark.history.filter(history_type="-").exists()


def test_another_things_photograph_is_not_drawn_on(conservator, finding, photo):
    other = sent(make_item("R.2"), colour="#123456")

    assert draw(conservator, finding, other).status_code == 404


def test_a_reader_draws_nothing(client, finding, photo):
    client.force_login(make_user("reader", "reader"))

    assert draw(client, finding, photo).status_code == 403


def manifest_of(client, finding) -> dict:
    return json.loads(client.get(reverse("condition_manifest", args=[finding.report.number])).content)


def test_the_manifest_passes_the_published_model(conservator, finding, photo):
    """Source of the model: iiif-prezi3, generated from the IIIF Presentation 3 JSON schema."""
    draw(conservator, finding, photo)

    said = manifest_of(conservator, finding)

    manifest = iiif_prezi3.Manifest(**said)
    canvas = manifest.items[0]
    assert (canvas.width, canvas.height) == (photo.width_px_count, photo.height_px_count)
    assert canvas.annotations[0].items[0].motivation == "assessing"
    assert said["items"][0]["annotations"][0]["items"][0]["target"]["source"] == canvas.id


def test_without_a_photograph_there_is_no_manifest(conservator, finding):
    assert conservator.get(reverse("condition_manifest", args=[finding.report.number])).status_code == 404


def test_photographs_of_the_report_are_canvases_without_drawings(conservator, finding, photo):
    finding.report.photos.add(Photo.objects.get(pk=photo.pk))

    assert "annotations" not in manifest_of(conservator, finding)["items"][0]
