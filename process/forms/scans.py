"""A scan that is sent, and the area that one has given: looked at, corrected, kept."""

from contextlib import ExitStack
from typing import Any

from django import forms
from django.core.exceptions import ValidationError

from process.chemistry.errors import ChemistryError
from process.chemistry.scans import LENGTH_UNITS, MOST_BYTES, MOST_FACES, read_scan
from process.forms.areas import AreaForm
from process.models import AreaPart
from process.ranges import Opinion
from process.services import scan_jobs
from process.services.areas import keep_part
from process.services.scan_files import pass_scan, stored_path
from process.services.trace_files import digest
from process.summaries.scans import SIDE_WORDS, facts_of, in_unit, side_choices, sides_of
from records import imaging
from records.models import Job

UNIT_WORDS = {"mm": "millimetres", "cm": "centimetres", "m": "metres", "inch": "inches"}
KEPT = ("part", "words", "pieces_count", "uncertainty_pct")


class OfScan(AreaForm):
    """The area of one piece comes from the scan's facts, by the side that takes metal."""

    def _reckon(self, cleaned: dict[str, Any]) -> None:
        part, side = self.instance, cleaned["side"]
        facts = part.scan_facts | {"sides_dm2": sides_of(part), "side": side}
        part.scan_facts = in_unit(facts, cleaned["unit"])
        found = part.scan_facts["sides_dm2"][side] * cleaned["pieces_count"]
        part.area_dm2 = float(f"{found:.4g}")


class ScanForm(OfScan):
    """A small mesh is read while the form is checked, outside of any transaction; a large one by the worker.

    The file is laid aside once checked: leave the form through `holding`, which takes away what was not kept.
    """

    file = forms.FileField(
        label="Scan", max_length=255,
        help_text=f"STL, OBJ or PLY, up to {MOST_BYTES // 1_000_000} MB and {MOST_FACES // 1_000_000} million "
        "triangles. It is kept byte for byte beside the area that it gave.",
    )  # fmt: skip
    unit = forms.ChoiceField(
        label="The file counts in",
        choices=[("", "choose"), *((u, UNIT_WORDS[u]) for u in LENGTH_UNITS)],
        help_text="A file of points does not say: look at the size in the scanning program.",
    )
    side = forms.ChoiceField(label="Which side takes metal", choices=SIDE_WORDS.items())

    def __init__(self, *args: Any, user: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.user, self.holding = user, ExitStack()

    def clean_file(self) -> Any:
        file = self.cleaned_data["file"]
        if file.size > MOST_BYTES:
            raise ValidationError(f"The file is larger than {MOST_BYTES // 1_000_000} MB: reduce the mesh.")
        return file

    def opinions(self) -> dict[str, Opinion]:
        """Of a large scan nothing is known yet: the area is asked about when it is."""
        if not self.errors and scan_jobs.is_large(self.cleaned_data["file"].size):
            self._fill(self.cleaned_data)
            self._lay_aside(self.cleaned_data)
            return {}
        return super().opinions()

    def _lay_aside(self, cleaned: dict[str, Any]) -> None:
        file = cleaned["file"]
        sha256 = digest(file)
        self.instance.scan_facts = {
            "name": file.name[-120:], "sha256": sha256, "path": stored_path(sha256, file.name),
            "unit": cleaned["unit"], "side": cleaned["side"],
        }  # fmt: skip
        self.staged = self.holding.enter_context(imaging.stage_as(file, self.instance.scan_facts["path"]))

    def _reckon(self, cleaned: dict[str, Any]) -> None:
        file = cleaned["file"]
        try:
            scan = read_scan(file.read(), file.name, cleaned["unit"], cleaned["side"], MOST_FACES)
        except ChemistryError as error:
            self.add_error("file", scan_jobs.sentence_of(error))
            return
        self._lay_aside(cleaned)
        self.instance.scan_facts |= facts_of(scan)
        super()._reckon(cleaned)

    def save(self, commit: bool = True) -> AreaPart | Job:
        """The part and the file that it came from, together or not at all."""
        pass_scan(part=self.instance, afterwards="afterwards" in self.data)  # the button of a closed gate
        self.staged.keep()
        if not scan_jobs.is_large(self.cleaned_data["file"].size):
            return keep_part(part=self.instance)
        typed = {name: self.cleaned_data[name] for name in KEPT}
        return scan_jobs.begin(part=self.instance, typed=typed, user=self.user)


class ScanReadForm(OfScan):
    """A scan that was read: another side or unit, more pieces, without sending it again."""

    unit = forms.ChoiceField(
        label="The file counts in",
        choices=UNIT_WORDS.items(),
        help_text="Another unit makes another size of all of it.",
    )
    side = forms.ChoiceField(label="Which side takes metal")

    def __init__(self, *args: Any, job: Job | None = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.job = job
        self.fields["side"].choices = side_choices(self.instance)
        self.initial |= {name: self.instance.scan_facts[name] for name in ("unit", "side")}
        self.initial |= job.arguments["typed"] if job else {}

    def save(self, commit: bool = True) -> AreaPart:
        return scan_jobs.keep(job=self.job, part=self.instance) if self.job else keep_part(part=self.instance)
