"""Readings pasted from a spreadsheet: each row is judged by the form that a person would fill in for it."""

import uuid
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any

from django import forms

from process.forms.asking import IT_IS_SO
from process.forms.sheet import ReadingForm
from process.models import Reading, Run
from process.services.runs import between
from process.tracing.stamps import EPOCH, Unreadable, stamp

COLUMNS = ("at", "current_a", "voltage_v", "temperature_degc", "meter_ah", "note")
UNITS = {"current_a": "A", "voltage_v": "V", "temperature_degc": "°C", "meter_ah": "Ah"}
MOST_ROWS, MOST_CHARACTERS = 500, 60_000


@dataclass
class Row:
    """One pasted row with the form that judged it; `known` where the run has this very reading already."""

    number: int
    cells: list[str]
    form: ReadingForm | None = None
    known: bool = False
    errors: list[str] = field(default_factory=list)
    question: str = ""


class PasteForm(forms.Form):
    rows = forms.CharField(
        label="Rows: time, A, V, °C, Ah, note", max_length=MOST_CHARACTERS,
        widget=forms.Textarea({"rows": 12, "spellcheck": "false"}),
        help_text="Parted by tabs, as a spreadsheet copies them, or by semicolons. Time as 2026-03-02 15:00. "
        "Columns may be empty; a line of headings is passed over.",
        error_messages={
            "required": "Paste at least one row.",
            "max_length": f"Paste at most {MOST_ROWS} rows at once.",
        },
    )  # fmt: skip
    confirmed = forms.BooleanField(label="The unusual values are so", required=False)

    def __init__(self, *args: Any, run: Run, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.run, self.lines = run, []

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        texts = [line for line in cleaned.get("rows", "").splitlines() if line.strip()]
        if len(texts) > MOST_ROWS:
            self.add_error("rows", f"These are {len(texts)} rows: paste at most {MOST_ROWS} at once.")
            return cleaned
        mark = "\t" if any("\t" in text for text in texts) else ";"
        cells = [
            (at, [cell.strip() for cell in text.rstrip().rstrip(mark).split(mark)]) for at, text in enumerate(texts, 1)
        ]
        known = set(Reading.every.filter(run=self.run).values_list("token", flat=True))
        confirmed = cleaned.get("confirmed", False)
        rows = [_judged(self.run, at, row, confirmed, known) for at, row in cells if _is_row(at, row)]
        marks = {event.kind: event.at for event in self.run.events.all()}
        for row in rows:
            _look_at_the_time(row, marks)
        if not confirmed:
            _ask_about_doubles(rows)
        self.lines = rows
        return cleaned

    @property
    def wrong(self) -> list[Row]:
        return [row for row in self.lines if row.errors]

    @property
    def asking(self) -> list[Row]:
        return [row for row in self.lines if row.question]

    @property
    def fresh(self) -> list[Row]:
        """What would be kept."""
        return [row for row in self.lines if not row.errors and not row.question and not row.known]


def _is_row(number: int, cells: list[str]) -> bool:
    """The first line may hold headings: no figure in its first cell."""
    return number > 1 or any(sign.isdigit() for sign in cells[0])


def _judged(run: Run, number: int, cells: list[str], confirmed: bool, known: set[uuid.UUID]) -> Row:
    row = Row(number, cells)
    if len(cells) > len(COLUMNS):
        row.errors = [f"has {len(cells)} columns; time, A, V, °C, Ah and note are {len(COLUMNS)}."]
        return row
    try:
        values = dict(zip(COLUMNS, [_instant(cells[0]), *cells[1:]], strict=False))
    except Unreadable as error:
        row.errors = [f"{error}: write day and time as 2026-03-02 15:00."]
        return row
    # The same row of the same run has the same token, however often it is pasted.
    token = uuid.uuid5(uuid.NAMESPACE_URL, "\x1f".join([str(run.pk), *(values.get(name, "") for name in COLUMNS)]))
    row.known = token in known
    data = values | {f"{name}_unit": unit for name, unit in UNITS.items()} | {"token": str(token)}
    row.form = _form(run, data)
    if not row.form.is_valid() and IT_IS_SO in row.form.fields:
        asked = row.form.fields[IT_IS_SO]
        row.question = " ".join(row.form.errors.get(IT_IS_SO, []))
        if confirmed:
            row.form, row.question = _form(run, data | {IT_IS_SO: asked.widget.attrs["value"]}), ""
    if not row.question and not row.form.is_valid():
        row.errors = [message for messages in row.form.errors.values() for message in messages]
    return row


def _look_at_the_time(row: Row, marks: dict[str, datetime]) -> None:
    """Before the entry, or after the stop: said while it can be mended, not when all rows are kept."""
    at = row.form.cleaned_data.get("at") if row.form and not row.known else None
    if at is None:
        return
    try:
        between(marks, at)
    except forms.ValidationError as error:
        row.errors = list(dict.fromkeys([*row.errors, *error.messages]))


def _ask_about_doubles(rows: list[Row]) -> None:
    """Two rows of one instant: the sheet would count with one of them only."""
    first: dict[datetime, Row] = {}
    for row in rows:
        at = row.form.cleaned_data.get("at") if row.form and not row.errors else None
        other = first.setdefault(at, row) if at else row
        if other.cells == row.cells or row.question:
            row.known = row.known or other is not row
        else:
            row.question = f"Row {other.number} has the same time: leave one out, or confirm that both are so."


def _form(run: Run, data: dict[str, str]) -> ReadingForm:
    return ReadingForm(data, run=run, instance=Reading(run=run))


def _instant(text: str) -> str:
    """“02.03.2026 15:00” as the form reads it; with strokes nobody knows which is the month."""
    year_first = text[:4].isdigit()
    if not year_first and "/" in text:
        raise Unreadable(f"“{text[:30]}” may be read with the day or the month first")
    at, offset = stamp(text, "ymd" if year_first else "dmy")
    if offset is not None:
        return text
    return (EPOCH + timedelta(microseconds=at)).isoformat(" ", "seconds")
