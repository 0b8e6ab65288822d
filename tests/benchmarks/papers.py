"""Building each kind of paper that the demo has issued: nothing is stored."""

from collections.abc import Iterator

from records import clock, extensions
from records.models import ConditionReport, Document, Item
from tests.benchmarks.clock import median_ms


def lines(times: int) -> Iterator[str]:
    context = extensions.PaperContext(1, clock.now(), "Benchmark", "curator")
    yield f"{'paper':<20}{'of':<16}{'ms':>9}{'KiB':>9}"
    for kind, paper in extensions.paper_kinds.items():
        issued = Document.objects.filter(kind=kind).order_by("-size_bytes_count").first()
        if issued:
            subject = _subject(issued.number)
            ms = median_ms(lambda paper=paper, subject=subject: paper.build(subject, context), max(3, times // 5))
            yield f"{kind:<20}{issued.number:<16}{ms:>9.0f}{issued.size_bytes_count / 1024:>9.0f}"


def _subject(number: str) -> Item | ConditionReport:
    return Item.objects.filter(number=number).first() or ConditionReport.objects.get(number=number)
