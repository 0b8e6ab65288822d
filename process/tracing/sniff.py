"""A proposal of how a file is to be read: what is certain, and what a person must say."""

from collections.abc import Iterable
from collections.abc import Mapping as Lookup
from dataclasses import dataclass, replace

from process.tracing.cells import column_kind
from process.tracing.dialect import Dialect, dialect_of, is_sample, split
from process.tracing.errors import TraceRefused
from process.tracing.headers import CURRENT, TEMPERATURE, VOLTAGE, Header, header_of
from process.tracing.mapping import Mapping
from process.tracing.survey import Survey
from process.tracing.times import Time, time_of

PREVIEW_ROWS = 6


@dataclass(frozen=True)
class Question:
    """`field` is the entry of the mapping that the file leaves open, and why."""

    field: str
    sentence: str


@dataclass(frozen=True)
class Proposal:
    mapping: Mapping
    questions: tuple[Question, ...]
    columns: tuple[str, ...]  # as they stand in the file, or “column 2”
    preview: tuple[tuple[str, ...], ...]
    preamble: tuple[str, ...]
    remembered: bool = False

    def asks(self, field: str) -> str:
        return next((question.sentence for question in self.questions if question.field == field), "")


def sniff(
    surveyed: Survey,
    words: Iterable[tuple[str, str]],
    remembered: Lookup[str, Mapping] | None = None,
    delimiter: str = "",
) -> Proposal:
    """What the file shows of itself; `remembered` holds mappings of earlier files by their signature.

    `delimiter` is named by a person where the file's own look misleads.
    """
    dialect = dialect_of(surveyed.head, delimiter)
    names, headers = _headers(dialect, list(words))
    rows = [*dialect.rows, *_tail_rows(surveyed, dialect)]
    time = time_of(rows, headers, len(dialect.rows))
    numeric = [i for i in range(dialect.column_count) if column_kind([row[i] for row in rows]) == "number"]
    mapping, questions = _proposed(surveyed, dialect, names, headers, time, numeric)
    known = (remembered or {}).get(mapping.signature)
    if known:
        mapping = mapping.recalling(known)
        questions = [each for each in questions if each.field == "starts_at"]
    return Proposal(
        mapping, tuple(questions), names, dialect.rows[:PREVIEW_ROWS], surveyed.head[: dialect.skip], bool(known)
    )


def _headers(dialect: Dialect, words: list[tuple[str, str]]) -> tuple[tuple[str, ...], list[Header]]:
    """One line of names, or names with a line of units beneath."""
    above = [_fitted(row, dialect.column_count) for row in dialect.above]
    names = above[-1] if above else ("",) * dialect.column_count
    if len(above) == 2 and _are_units(above[1]) and not _are_units(above[0]):
        pairs = zip(above[0], above[1], strict=True)
        names = tuple(f"{name} [{unit.strip(' []()')}]" if unit.strip(" []()") else name for name, unit in pairs)
    columns = tuple(name.strip() or f"column {i}" for i, name in enumerate(names, 1))
    return columns, [header_of(name, words) for name in names]


def _fitted(row: tuple[str, ...], count: int) -> tuple[str, ...]:
    return (*row, *("",) * count)[:count]


def _are_units(row: tuple[str, ...]) -> bool:
    """A line of units: short, most of them known."""
    cells = [cell.strip(" []()").casefold() for cell in row if cell.strip(" []()")]
    known = sum(bool(header_of(f"x [{cell}]", ()).unit) for cell in cells)
    return bool(cells) and known >= max(1, len(cells) / 2)


def _tail_rows(surveyed: Survey, dialect: Dialect) -> list[tuple[str, ...]]:
    """Some of the last lines: they often say whether 02.03. was in March."""
    rows = [split(line, dialect.delimiter) for line in surveyed.tail[-200:-1] if line.strip()]
    return [row for row in rows if len(row) == dialect.column_count and is_sample(row)]


def _proposed(
    surveyed: Survey, dialect: Dialect, names: tuple[str, ...], headers: list[Header], time: Time, numeric: list[int]
) -> tuple[Mapping, list[Question]]:
    free = [i for i in numeric if i not in time.columns]
    if not free:
        raise TraceRefused("no column of figures is found beside the time: there is no current in this file.")
    questions: list[Question] = []
    mapping = Mapping(
        encoding=surveyed.encoding, delimiter=dialect.delimiter, decimal=dialect.decimal, skip=dialect.skip,
        headers=names, column_count=dialect.column_count, time_kind=time.kind, time_columns=time.columns,
        date_order=time.date_order, elapsed_unit=time.elapsed_unit,
    )  # fmt: skip
    mapping = _with_current(mapping, headers, free, dialect, questions)
    taken = mapping.current_column
    volts = _column(headers, free, VOLTAGE, taken)
    warm = _column(headers, free, TEMPERATURE, taken)
    mapping = replace(
        mapping, voltage_column=volts, voltage_unit=_unit(headers, volts, "V"), temperature_column=warm,
        temperature_unit=_unit(headers, warm, "°C"), zone="UTC" if time.says_utc and time.kind == "local" else "",
    )  # fmt: skip
    return mapping, [*questions, *_time_questions(mapping)]


def _with_current(
    mapping: Mapping, headers: list[Header], free: list[int], dialect: Dialect, questions: list[Question]
) -> Mapping:
    """The column of the current with its unit and sign, or the question which it is."""
    named = [i for i in free if headers[i].meaning == CURRENT]
    if len(named) != 1:
        which = "Several columns are called a current" if named else "No column is called a current"
        questions.append(Question("current_column", f"{which}: say which one went through this run’s rail."))
    elif not headers[named[0]].certain:
        questions.append(
            Question("current_column", f"“{headers[named[0]].text}” may mean several things: is it the current?")
        )
    at = named[0] if named else None
    unit = headers[at].unit if at is not None else ""
    if unit not in {"A", "mA"}:
        questions.append(Question("current_unit", "The file does not say whether the current is in A or in mA."))
        unit = ""
    values = [_number(row[at]) for row in dialect.rows] if at is not None else []
    negative = sum(value < 0 for value in values) > len(values) / 2
    if negative:
        questions.append(
            Question(
                "sign", "Most currents are negative: the logger counts the other way round, or the rail was reversed."
            )
        )
    return replace(mapping, current_column=at, current_unit=unit, sign=-1 if negative else 1)


def _time_questions(mapping: Mapping) -> list[Question]:
    asked = []
    if mapping.time_kind in {"instant", "local"} and not mapping.date_order:
        asked.append(Question("date_order", "Every date can be read with the day first or with the month first."))
    if mapping.time_kind == "local" and not mapping.zone:
        asked.append(Question("zone", "The times have no offset from UTC: say by which clock they were written."))
    if mapping.time_kind == "elapsed":
        asked.append(Question("starts_at", "The file counts from its own start: say when that was."))
        if not mapping.elapsed_unit:
            asked.append(Question("elapsed_unit", "The file does not say whether it counts seconds, minutes or hours."))
    return asked


def _column(headers: list[Header], free: list[int], meaning: str, taken: int | None) -> int | None:
    return next((i for i in free if headers[i].meaning == meaning and i != taken), None)


def _unit(headers: list[Header], at: int | None, usual: str) -> str:
    return (headers[at].unit or usual) if at is not None else usual


def _number(cell: str) -> float:
    try:
        return float(cell.strip().replace(",", "."))
    except ValueError:
        return 0.0
