"""What the demo prints at its end: a table of the runs, the papers, the address, the sign-ins."""

from collections.abc import Iterator

from process.demo import scenario
from process.models import Run
from process.summaries.runs import RunSummary, summarise
from records.figures import Figure
from records.models import Document
from records.services.papers import path_of
from records.serving import address_of


def lines(host: str, port: int) -> Iterator[str]:
    yield ""
    yield "Run         charge Ah  expected g  measured g  efficiency %  outcome"
    for run in Run.objects.with_sheet().order_by("number"):
        yield _run(summarise(run))
    yield ""
    yield "Papers"
    yield from (str(path_of(document).resolve()) for document in Document.objects.order_by("id"))
    yield ""
    yield f"Address   {address_of(host, port)}"
    museum = scenario.read()
    yield f"Sign-ins  password {museum['museum']['password']}"
    for person in museum["party"]:
        if "sign_in" in person:
            yield f"  {person['sign_in']:<8}{person['role']:<13}{person['name']}"
    yield ""


def _run(summary: RunSummary) -> str:
    result = summary.result
    figures = (
        _number(summary.charge.chosen, 9, 2), _number(summary.theory, 10, 2),
        _number(result.gain if result else None, 10, 2), _number(result.efficiency if result else None, 12, 1),
    )  # fmt: skip
    return f"{summary.run.number}  {'  '.join(figures)}  {summary.run.get_outcome_display() or 'going on'}"


def _number(figure: Figure | None, width: int, digits: int) -> str:
    return f"{figure.value:.{digits}f}".rjust(width) if figure and figure.value is not None else "–".rjust(width)
