"""The condition report as a paper: a page of summary, then numbered findings, photographs and what was not seen."""

from dataclasses import dataclass
from functools import cached_property
from typing import Any

from records.extensions import Limit, PaperContext
from records.limits import concessions_of, limits_along
from records.mapping import Map, maps_of
from records.models import (
    Addendum,
    Concession,
    ConditionReport,
    Finding,
    Incident,
    Measurement,
    Photo,
    PhotoPair,
    Urgency,
)
from records.mouldings import occasion_words
from records.pdf import blocks as b
from records.pdf.document import build
from records.portraits import best_of, in_order
from records.reports import finding_pictures as pictures
from records.reports import findings as tables
from records.reports.attached import record
from records.reports.composition import cautions_of
from records.reports.figures import row_fact, size_facts
from records.reports.parts import caption_of, cautions, head, local_day, printed, sentences, signer
from records.sentences import named, title_of

KIND = "Condition report"


@dataclass(frozen=True)
class Gathered:
    """A report with all its rows, read once."""

    report: ConditionReport
    findings: list[Finding]
    photos: list[Photo]
    sizes: list[Measurement]
    concessions: list[Concession]
    limits: list[Limit]
    addenda: list[Addendum]
    pairs: list[PhotoPair]
    incident: Incident | None

    @cached_property
    def maps(self) -> list[Map]:
        """The photographs on which something is drawn; that of the summary first."""
        found = maps_of(self.findings)
        ranked = in_order(shown.photo for shown in found)
        order = [self.portrait, *ranked] if self.portrait in ranked else ranked
        return sorted(found, key=lambda shown: order.index(shown.photo))

    @property
    def main_map(self) -> Map | None:
        """What the summary shows: never a mere detail while nothing else is drawn on."""
        first = next(iter(self.maps), None)
        return first if first and (first.photo == self.portrait or first.photo.view != Photo.View.DETAIL) else None

    @cached_property
    def portrait(self) -> Photo | None:
        """The best of the report's own photographs, else the one that stands for the thing."""
        own = [*self.photos, *(finding.photo for finding in self.findings if finding.photo)]
        return best_of(own) or best_of(self.report.item.photos.all())

    @property
    def every_photo(self) -> list[Photo]:
        """All that the paper shows."""
        added = [photo for each in self.addenda for photo in each.photos.all()]
        compared = [photo for pair in self.pairs for photo in (pair.before, pair.after)]
        of_findings = [finding.photo for finding in self.findings if finding.photo]
        return [*self.photos, *of_findings, *(shown.photo for shown in self.maps), *compared, *added]

    @property
    def urgency(self) -> int:
        return max((finding.urgency for finding in self.findings), default=Urgency.NONE)


def gather(report: ConditionReport) -> Gathered:
    findings = list(report.findings.select_related("term", "photo").prefetch_related("marks__photo"))
    own = list(report.photos.select_related("taken_by"))
    shown = {f.photo_id for f in findings}
    photos = in_order(photo for photo in own if photo.pk not in shown)
    addenda = list(report.addenda.select_related("signed_by").prefetch_related("photos"))
    sizes = [
        row for row in report.item.measurements.all() if row.what != Measurement.What.MASS or report.mass_g is None
    ]
    return Gathered(
        report, findings, photos, sizes, list(concessions_of(report.item)), limits_along(report.item), addenda,
        list(report.pairs.select_related("before", "after")), Incident.objects.filter(report=report).first(),
    )  # fmt: skip


def summary(g: Gathered) -> str:
    """One sentence: examined when and by whom, and how it stands on each of the three axes."""
    report, count = g.report, len(g.findings)
    seen = f"{count} finding{'' if count == 1 else 's'}" if count else "no findings"
    urgency = tables.URGENCY_WORDS[Urgency(g.urgency)].split(" ", 1)[1]
    return (
        f"Examined by {report.examiner} on {local_day(report.examined_on)}, {report.get_occasion_display()}: "
        f"grade {tables.grade_words(report)}, {report.get_stability_display()}, urgency {urgency}; {seen}."
    )


def cover(g: Gathered) -> b.Cover:
    report, item = g.report, g.report.item
    facts = [
        b.Fact("Object", item.number), b.Fact("Maker", ", ".join(filter(None, [item.maker, item.date_words]))),
        b.Fact("Material", item.materials), b.Fact("Owner", str(item.owner or "")), *size_facts(g.sizes, 4),
        row_fact("Mass on the day", report, "mass_g"), b.Fact("Occasion", occasion_words(report)),
        b.Fact("Examined on", local_day(report.examined_on)), b.Fact("Examined by", str(report.examiner)),
        b.Fact("Place", report.examined_at_place), b.Fact("Light", report.light), b.Fact("Aids", report.aids),
        b.Fact("Commission", report.commission.number if report.commission else ""),
        b.Fact("Compared with", report.previous.number if report.previous else "no earlier report"),
    ]  # fmt: skip
    kept = tuple(fact for fact in facts if fact.value or fact.label in {"Light", "Mass on the day"})
    if g.main_map:
        return b.Cover(pictures.mapped(g.main_map, item), kept, is_large=True)
    return b.Cover(printed(g.portrait, caption_of(g.portrait, item)) if g.portrait else None, kept)


def notices(g: Gathered) -> list[b.Block]:
    blocks: list[b.Block] = []
    if not g.report.is_signed:
        blocks.append(
            b.Notice("Draft, not signed", "Nobody has signed this report yet: it proves nothing and may still change.")
        )
    return blocks + [b.Notice(f"Limits of use, {limit.source}", limit.sentence) for limit in g.limits]


def axes(g: Gathered) -> list[b.Block]:
    """Grade, stability and urgency, never merged into one."""
    report = g.report
    facts = (
        b.Fact("Grade, 0–3", tables.grade_words(report)),
        b.Fact("Stability", report.get_stability_display()),
        b.Fact("Urgency, 0–3", tables.URGENCY_WORDS[Urgency(g.urgency)]),
    )
    reason = f"The grade is not that of the worst finding: {report.grade_reason}" if report.grade_reason else ""
    return [b.Heading("State"), b.FactList(facts, columns=3), b.Prose(sentences(reason))]


def first_page(g: Gathered) -> list[b.Block]:
    report = g.report
    seen = [b.Heading("Summary"), b.Prose(report.summary)] if report.summary else []
    made_of = [b.Heading("Materials and structure as seen"), b.Prose(report.structure)] if report.structure else []
    bounds = [b.Heading("Restrictions"), b.Prose(report.restrictions)] if report.restrictions else []
    advice = [b.Heading("Recommendation"), b.Prose(report.recommendation)] if report.recommendation else []
    return [*notices(g), cover(g), *axes(g), *seen, *bounds, *advice, *made_of]


def detail(g: Gathered) -> list[b.Block]:
    report = g.report
    return [
        *([b.NewPage()] if g.findings else []),
        b.Heading("Findings"), tables.findings_table(g.findings), *tables.notes(g.findings),
        *([b.Heading("Tests"), b.Prose(report.tests)] if report.tests else []),
        b.Heading("Not seen"), b.Prose(report.not_seen or "Nothing is recorded as not examined."),
        *photographs(g),
        *tables.comparison(report, g.findings), *pairs(g), *incident(g),
        *cautions([*cautions_of(g.report.item), *(f.term.caution for f in g.findings)]),
        b.Heading("Signatures"),
        b.Signatures((signer(report, str(report.examiner), "examiner"), b.Signer("", "Registrar or owner"))),
        *added(g),
        *tables.definitions(g.findings),
    ]  # fmt: skip


def pairs(g: Gathered) -> list[b.Block]:
    """Earlier and later beside each other."""
    both = [photo for one in g.pairs for photo in pictures.pair(one, g.report.item)]
    return [b.Heading("Before and after", 2), b.PhotoGrid(tuple(both), columns=2)] if both else []


def incident(g: Gathered) -> list[b.Block]:
    """What the change set going, and whether the owner was told."""
    if g.incident is None:
        return []
    told = f"Owner told on {local_day(g.incident.owner_told_on)}: {g.incident.owner_told_words}"
    said = sentences(g.incident.treatment, told if g.incident.owner_told_on else "The owner was not told yet")
    return [b.Heading(f"Incident {g.incident.number}", 2), b.Prose(said)]


def added(g: Gathered) -> list[b.Block]:
    """What was added after the signature, each under its own name and day."""
    blocks: list[b.Block] = []
    for each in g.addenda:
        pictures = tuple(printed(photo, caption_of(photo, g.report.item)) for photo in in_order(each.photos.all()))
        blocks += [b.Heading("Added after the signature"), b.Prose(each.words)]
        blocks += [b.PhotoGrid(pictures)] if pictures else []
        blocks.append(b.Signatures((signer(each, "", ""),)))
    return blocks


def photographs(g: Gathered) -> list[b.Block]:
    """The other photographs that are drawn on, details by the number of their finding, then the views."""
    item = g.report.item
    maps = [shown for shown in g.maps if shown != g.main_map]
    drawn_on = {shown.photo for shown in g.maps}
    details = pictures.details(g.findings, g.maps, item)
    views = [printed(p, caption_of(p, item)) for p in g.photos if p != g.portrait and p not in drawn_on]
    blocks: list[b.Block] = []
    if maps:
        shown_on = b.PhotoGrid(tuple(pictures.mapped(shown, item) for shown in maps), columns=2)
        blocks = [b.Heading("Where the findings lie"), shown_on]
    return [*blocks, b.Heading("Photographs"), b.PhotoGrid((*details, *views), empty=_no_more(g))]


def _no_more(g: Gathered) -> str:
    return "The photograph on the first page is the only one." if g.photos else "No photographs belong to this report."


def attached(g: Gathered, context: PaperContext) -> dict[str, Any]:
    report = g.report
    rows = {
        "report": [report], "object": [report.item], "findings": g.findings, "sizes of the object": g.sizes,
        "photographs": list(dict.fromkeys(g.every_photo)),
        "drawings": [mark for finding in g.findings for mark in finding.marks.all()],
        "photographs compared": g.pairs, "incident": [g.incident] if g.incident else [],
        "concessions": g.concessions, "added after the signature": g.addenda,
        "report compared with": [report.previous] if report.previous else [],
    }  # fmt: skip
    return record(KIND, report.number, context, rows, limits=g.limits)


def make(report: ConditionReport, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    g = gather(report)
    title = f"{title_of(report.item)}, {report.get_occasion_display()}"
    data = attached(g, context)
    paper = head(KIND, report.number, title, summary(g), context, named(report.item, report.number))
    return build(paper, [*first_page(g), *detail(g)], data, context.issued_at), data
