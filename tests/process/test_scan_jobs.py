"""A large scan is read by the worker, looked at by a person, and only then counts; nothing is left behind."""

import pytest
import trimesh
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from process.models import AreaPart
from process.services.scan_files import stored_path
from records import imaging, kept_files
from records.models import Job
from tests.factories import make_cathode, make_run, make_user
from tests.records.test_jobs import work_off

pytestmark = pytest.mark.django_db(transaction=True)
BOX = trimesh.creation.box((100.0, 50.0, 10.0)).export(file_type="stl")


@pytest.fixture
def bench(client, settings, tmp_path):
    settings.MEDIA_ROOT, settings.SCAN_AT_ONCE_BYTES = tmp_path, 100
    client.force_login(make_user("technician"))
    return client


@pytest.fixture
def cathode():
    return make_cathode(make_run(), label="obverse", face_area_dm2=0.3, total_area_dm2=0.5)


def send(bench, cathode, content: bytes = BOX, name: str = "face.stl", **fields):
    data = {"file": SimpleUploadedFile(name, content), "unit": "mm", "side": "+z", "part": "face", "pieces_count": "2"}
    return bench.post(reverse("area_add", args=[cathode.pk, "scan"]), data | fields)


def files_left() -> list:
    return list(kept_files.found_on_disk())


def test_the_worker_reads_it_and_a_person_keeps_its_area(bench, cathode):
    answer = send(bench, cathode, words="obverse, scanned", uncertainty_pct="2")
    assert answer.status_code == 302 and not AreaPart.objects.exists()
    for waits in (reverse("cathode_area", args=[cathode.pk]), reverse("run_plan", args=[cathode.run.number])):
        assert "look at what the scan gave" in bench.get(waits).text
    assert bench.get(reverse("scan_found", args=[Job.objects.get().token])).url == answer.url  # not read yet
    work_off()
    found = bench.get(answer.url).url
    page = bench.get(found)
    assert "100.0 × 50.0 × 10.0 mm" in page.text and "what looks towards +z: 0.500" in page.text
    assert page.context["form"]["words"].value() == "obverse, scanned"

    kept = bench.post(found, {"unit": "mm", "side": "+z", "part": "face", "pieces_count": "2", "uncertainty_pct": "2"})

    assert kept.url == reverse("cathode_area", args=[cathode.pk])
    part = AreaPart.objects.get()
    assert (part.area_dm2, part.uncertainty_pct, part.scan_facts["side"]) == (1.0, 2, "+z")
    assert [each.path for each in kept_files.every_file()] == files_left()
    assert bench.get(found).url == kept.url  # once


def test_a_scan_that_waits_is_known_to_the_check_of_files(bench, cathode):
    send(bench, cathode)
    assert [each.path for each in kept_files.every_file()] == files_left() != []


@pytest.mark.parametrize(
    ("content", "name", "words"),
    [
        (b"solid of my argument, in prose\n" * 9, "face.stl", "holds no triangles"),
        (b"v 0 0 0\nv 1 0 0\nv 2 0 0\nf 1 2 3\n" * 9, "face.obj", "no area on that side"),
        (b"\xff\x00" * 300, "face.ply", "has not its heading"),
    ],
)
def test_what_is_no_scan_is_refused_by_the_worker_and_is_gone(bench, cathode, content, name, words):
    answer = send(bench, cathode, content, name)
    work_off()
    page = bench.get(answer.url).text
    assert words in page and "Nothing was kept." in page
    assert not AreaPart.objects.exists() and not files_left()


def test_too_many_triangles_are_refused_by_the_worker(bench, cathode, monkeypatch):
    monkeypatch.setattr("process.services.scan_jobs.MOST_FACES", 10)
    answer = send(bench, cathode)
    work_off()
    assert "12 faces, more than 10" in bench.get(answer.url).text and not files_left()


def test_a_wrong_unit_is_seen_and_put_right_without_sending_it_again(bench, cathode):
    answer = send(bench, cathode, unit="m")
    work_off()
    found = bench.get(answer.url).url
    said = {"side": "+z", "part": "face", "pieces_count": "1"}

    refused = bench.post(found, said | {"unit": "m"})
    kept = bench.post(found, said | {"unit": "mm"})

    assert refused.status_code == 422 and "is not possible here" in refused.text and kept.status_code == 302
    part = AreaPart.objects.get()
    assert part.area_dm2 == pytest.approx(0.5) and part.scan_facts["extent_mm"] == [100, 50, 10]
    assert part.scan_facts["volume_cm3"] == pytest.approx(50)


def test_a_scan_that_nobody_wants_is_taken_away(bench, cathode):
    answer = send(bench, cathode)
    work_off()
    found = bench.get(answer.url).url
    for _ in range(2):
        bench.post(reverse("scan_away", args=[Job.objects.get().token]))
    assert not files_left() and not AreaPart.objects.exists()
    assert bench.get(found).url == reverse("cathode_area", args=[cathode.pk])


def test_a_cathode_taken_off_meanwhile_takes_the_scan_with_it(bench, cathode):
    answer = send(bench, cathode)
    cathode.delete()
    work_off()
    assert "taken off the plan meanwhile" in bench.get(answer.url).text and not files_left()


def test_side_and_pieces_are_corrected_without_the_file(bench, cathode, settings):
    settings.SCAN_AT_ONCE_BYTES = 4_000_000
    send(bench, cathode)
    part = AreaPart.objects.get()
    page = bench.get(reverse("area_edit", args=[part.pk]))
    form = page.context["form"]
    said = {name: form[name].value() for name in form.fields if form[name].value() is not None}
    bench.post(reverse("area_edit", args=[part.pk]), said | {"side": "-x", "pieces_count": "1"})
    part.refresh_from_db()
    assert part.area_dm2 == pytest.approx(0.05) and part.scan_facts["side"] == "-x"


def test_the_file_goes_with_the_last_part_that_names_it(bench, cathode, settings):
    settings.SCAN_AT_ONCE_BYTES = 4_000_000
    for _ in range(2):
        send(bench, cathode)
    first, second = AreaPart.objects.all()
    bench.post(reverse("area_remove", args=[first.pk]))
    assert files_left() == [imaging.original_path(stored_path(second.scan_facts["sha256"], "face.stl"))]
    bench.post(reverse("area_remove", args=[second.pk]))
    assert not files_left()


def test_a_reader_does_not_keep_it(bench, cathode):
    send(bench, cathode)
    work_off()
    bench.force_login(make_user("reader"))
    assert bench.get(reverse("scan_found", args=[Job.objects.get().token])).status_code == 403
