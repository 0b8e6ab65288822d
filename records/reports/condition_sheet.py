"""The condition report as a sheet for the bench: what the last look found, and empty lines to write on by hand."""

from typing import Any

from django.conf import settings
from django.utils.text import capfirst

from records.extensions import PaperContext
from records.fitting_words import GENERAL, fitting_first
from records.limits import limits_along
from records.models import ConditionReport, Finding, Photo, Term
from records.pdf import blocks as b
from records.pdf.document import build
from records.portraits import best_of, in_order
from records.reports.attached import record
from records.reports.composition import cautions_of
from records.reports.figures import in_words
from records.reports.parts import caption_of, cautions, head, local_day, printed, sentences
from records.sentences import named, title_of

KIND = "Condition sheet"
ROW = 34.0  # 12 mm: a line of writing with a gloved hand
EMPTY_ROWS = 8
MOST_GROUNDS = 4
SEEN = (("Finding, in the word of the list", "", 44.0), ("Where", "side, hour", 32.0), ("Extent", "mm, %", 20.0),
        ("Severity", "1–3", 15.0), ("Stability", "S P A –", 17.0), ("Urgency", "0–3", 15.0),
        ("To do", "", 27.0))  # fmt: skip
KEYS = (
    "Severity 1 minor, 2 moderate, 3 major. Stability S stable, P possibly active, A active, – not assessed; an axis "
    "of its own. Urgency 0 next survey, 1 within years, 2 within 12 months, 3 at once."
)
AGAIN = (("Same", "", 12.0), ("Worse", "", 12.0), ("Better", "", 12.0), ("Treated", "", 13.0),
         ("Extent now", "mm, %", 26.0), ("Seen now", "", 40.0))  # fmt: skip
NOT_TICKED = "Tick one in each line. A line without a tick is “not re-examined”; it never counts as “same”."
AT_HAND = (("At the examination", "", 60.0),)
BY_HAND = (("Written by hand", "", 110.0),)


def blocks(report: ConditionReport) -> list[b.Block]:
    item = report.item
    photos = in_order(pictures(report))
    portrait = best_of(photos) or best_of(item.photos.all())
    address = f"{settings.BASE_URL}{report.get_absolute_url()}"
    grounds = [photo for photo in photos if best_of([photo])][:MOST_GROUNDS]
    return [
        b.BenchHead(printed(portrait) if portrait else None, facts(report), address, report.number, "opens the report"),
        *(b.Notice(f"Limits of use, {limit.source}", limit.sentence) for limit in limits_along(item)),
        *cautions(cautions_of(item)),
        b.BoxTable(AT_HAND, BY_HAND, tuple(conditions(report)), row_height=ROW),
        *earlier(report),
        b.BoxTable((("No.", "", 9.0),), SEEN, tuple(empty(report)), _seen_caption(report), KEYS, ROW),
        b.Heading("Where it lies", 2),
        b.DrawingGround(tuple(printed(photo, caption_of(photo, item)) for photo in grounds)),
        b.RuledLines("Not seen: what could not be examined, and why", 3),
        b.RuledLines("Restrictions: handling, moulding, humidity, transport", 2, report.restrictions),
        b.RuledLines("Recommendation", 2, report.recommendation),
        b.RuledLines("Summary, overall grade 0–3 and stability", 3),
        b.Signatures((b.Signer(str(report.examiner), "Examiner"), b.Signer("", "Seen by"))),
        *words(report),
        b.Prose(f"Type it into {report.number} the same day and sign there; this sheet alone proves nothing."),
    ]  # fmt: skip


def pictures(report: ConditionReport) -> list[Photo]:
    """Those of this examination, else of the last, else of the thing."""
    sources = [report.photos, *([report.previous.photos] if report.previous else []), report.item.photos]
    return next((found for source in sources if (found := list(source.all()))), [])


def facts(report: ConditionReport) -> tuple[b.Fact, ...]:
    item, last = report.item, report.previous
    return (
        b.Fact("Object", item.number), b.Fact("Material", item.materials), b.Fact("Owner", str(item.owner or "")),
        b.Fact("Occasion", report.get_occasion_display()), b.Fact("Day", local_day(report.examined_on)),
        b.Fact("Compared with", f"{last.number}, {local_day(last.examined_on)}" if last else "no earlier report"),
    )  # fmt: skip


def conditions(report: ConditionReport) -> list[tuple[str]]:
    """What is written down before one looks; the last report says what makes the two comparable."""
    last = report.previous
    mass = in_words(last, "mass_g") if last else ""
    return [
        (f"Light, with its direction{_was(last.light if last else '')}",),
        (f"Aids{_was(last.aids if last else '')}",),
        (f"Mass on the day, g{_was(mass)}",),
        ("Place, air: °C and % RH",),
    ]


def _was(words: str) -> str:
    return f"\nlast time: {words}" if words else ""


def earlier(report: ConditionReport) -> list[b.Block]:
    """A line for each finding of the last report, with what was said of it then."""
    known = list(report.findings.select_related("term"))
    if not known:
        return []
    return [b.BoxTable(
        (("Known findings", "", 55.0),), AGAIN, tuple(map(_known, known)), row_height=ROW, note=NOT_TICKED,
    )]  # fmt: skip


def _known(finding: Finding) -> tuple[str]:
    said = ", ".join(filter(None, [finding.extent, finding.get_severity_display(), finding.get_stability_display()]))
    return (f"{finding.position_count} · {finding.term}, {finding.location}\n{said}",)


def _seen_caption(report: ConditionReport) -> str:
    return "New findings" if report.findings.exists() else "Findings"


def empty(report: ConditionReport) -> list[tuple[str]]:
    """Numbered on from the last, so that paper and register say the same number."""
    first = max((finding.position_count for finding in report.findings.all()), default=0) + 1
    return [(str(number),) for number in range(first, first + EMPTY_ROWS)]


def words(report: ConditionReport) -> list[b.Block]:
    """The words that fit the thing, each with its meaning, so that nobody invents one at the bench."""
    terms = Term.objects.filter(scheme=Term.Scheme.FINDING, is_retired=False)
    ordered = fitting_first(terms, report.item)
    fitting = [entry for at, entry in enumerate(ordered) if at == 0 or entry[0] == GENERAL]
    if not fitting:
        return []
    said = [
        b.Prose(sentences(f"{capfirst(group)}: {'; '.join(f'{term.label}, {_meaning(term)}' for term in found)}"))
        for group, found in fitting
    ]
    return [b.Heading("The words and what they mean", 2), *said]


def _meaning(term: Term) -> str:
    meaning = term.definition.rstrip(".")
    return f"{meaning[:1].lower()}{meaning[1:]}" if meaning else "not defined yet"


def make(report: ConditionReport, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    title = f"{title_of(report.item)}, {report.get_occasion_display()}"
    said = "To be filled in by hand at the object, in pencil or permanent ink, then typed in."
    rows = {"report": [report], "object": [report.item], "findings": list(report.findings.select_related("term"))}
    data = record(KIND, report.number, context, rows, limits=limits_along(report.item))
    paper = head(KIND, report.number, title, said, context, named(report.item, report.number))
    return build(paper, blocks(report), data, context.issued_at), data
