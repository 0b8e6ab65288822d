"""A scan is sent by the form that the page shows."""

from django.core.files.uploadedfile import SimpleUploadedFile

from process.demo.pictures.scanned import stl_bytes
from process.demo.rows import Table
from process.forms.scans import ScanForm
from process.models import AreaPart, Cathode


def send(cathode: Cathode, table: Table) -> None:
    said = {name: str(table[name]) for name in ("part", "words", "side", "unit", "uncertainty_pct")}
    file = SimpleUploadedFile(table["scan"], stl_bytes(table["diameter_mm"]))
    part = AreaPart(cathode=cathode, shape=AreaPart.Shape.SCAN)
    form = ScanForm(said | {"pieces_count": "1"}, {"file": file}, instance=part, user=None)
    with form.holding:
        if not form.is_valid():
            raise ValueError(form.errors.as_text())
        form.save()
