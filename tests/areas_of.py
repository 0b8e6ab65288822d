"""A cathode's area in rows: a part that counts, and a scan that a worker has read and nobody has kept yet."""

from typing import Any

from process.models import AreaPart, Cathode
from records import clock
from records.models import Job

FACTS = {
    "name": "face.stl", "sha256": "0" * 64, "path": "scans/00/none.stl", "unit": "mm", "side": "+z", "faces": 12,
    "volume_cm3": 50.0, "remarks": [], "sides_dm2": {"all": 1.3, "+z": 0.5}, "whole_area_dm2": 1.3,
    "extent_mm": [100.0, 50.0, 10.0],
}  # fmt: skip


def areas_of(cathode: Cathode) -> dict[str, Any]:
    said = {"cathode": cathode.pk, "facts": FACTS, "typed": {}, "waits": True}
    part = AreaPart.objects.create(cathode=cathode, shape="disc", diameter_mm=58.4, area_dm2=0.289, uncertainty_pct=10)
    now = clock.now()
    job = Job.objects.create(kind="scan", title="Reading", asked_at=now, seen_at=now, state="done", arguments=said)
    return {"area_part": part, "scan_job": job}
