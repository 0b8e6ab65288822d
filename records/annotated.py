"""A report's drawings as open documents: which addresses, whose words."""

from collections.abc import Callable
from typing import Any

from django.urls import reverse

from records.annotating.documents import Note, Picture, collection, manifest
from records.models import ConditionReport, Finding, FindingMark, Photo

Absolute = Callable[[str], str]  # from a path of the register to its address


def picture_of(photo: Photo, absolute: Absolute) -> Picture:
    file_url = absolute(reverse("photo_file", args=[photo.pk, "screen"]))
    size = photo.width_px_count, photo.height_px_count
    return Picture(absolute(photo.get_absolute_url()), file_url, *size, photo.caption or photo.view_words)


def notes_of(report: ConditionReport, absolute: Absolute) -> list[Note]:
    """One for each shape; reads `findings__marks__photo`."""
    return [_note(report, f, mark, absolute) for f in report.findings.all() for mark in f.marks.all()]


def _note(report: ConditionReport, finding: Finding, mark: FindingMark, absolute: Absolute) -> Note:
    url = f"{absolute(reverse('condition_annotations', args=[report.number]))}#drawing-{mark.pk}"
    picture = picture_of(mark.photo, absolute)
    term_urls = tuple(line.strip() for line in finding.term.identifiers.splitlines() if line.strip())
    return Note(
        url, picture, mark.shape, mark.points, finding.term.label, words_of(finding), term_urls,
        report.examined_on.isoformat() + "T00:00:00Z", report.examiner.name,
    )  # fmt: skip


def words_of(finding: Finding) -> str:
    """Everything said of a finding, the two axes apart."""
    said = [f"Finding {finding.position_count}: {finding.term}, {finding.location}"]
    said += [part for part in (finding.extent, finding.layer and f"in the {finding.layer}") if part]
    axes = f"severity {finding.get_severity_display()}; stability {finding.get_stability_display()}"
    return f"{'; '.join(said)}. {axes.capitalize()}."


def annotations(report: ConditionReport, absolute: Absolute) -> dict[str, Any]:
    url = absolute(reverse("condition_annotations", args=[report.number]))
    return collection(url, f"Findings of {report.number}", notes_of(report, absolute))


def iiif_manifest(report: ConditionReport, absolute: Absolute) -> dict[str, Any]:
    """The report's photographs and those on which something is drawn, once each."""
    url = absolute(reverse("condition_manifest", args=[report.number]))
    notes = notes_of(report, absolute)
    own = [picture_of(photo, absolute) for photo in report.photos.all()]
    pictures = list(dict.fromkeys([*own, *(note.picture for note in notes)]))
    facts = [
        ("Object", str(report.item)), ("Occasion", report.get_occasion_display()), ("Light", report.light),
        ("Examined on", report.examined_on.isoformat()), ("Examined by", str(report.examiner)),
        ("Not seen", report.not_seen),
    ]  # fmt: skip
    return manifest(url, f"{report.number}, {report.item.title}", pictures, notes, facts)
