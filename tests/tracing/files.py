"""Files as loggers write them: the trace of the invented run D-2026-003 in several hands, and small ones."""

from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from process.tracing import Context, Mapping, Samples, Switching, read, sniff, survey

SCENARIO = Path(__file__).parent.parent / "data" / "trace_d_2026_003.csv"
LIMIT = 10**7
WORDS = [
    ("time", "timestamp"), ("time", "time"), ("time", "datum"), ("time", "zeit"), ("date", "date"),
    ("elapsed", "elapsed"), ("current", "current"), ("current", "i"), ("current", "strom"), ("voltage", "voltage"),
    ("voltage", "u"), ("voltage", "v"), ("temperature", "t"), ("temperature", "bath"), ("other", "set"),
]  # fmt: skip
# What the bench sheet alone would have said of the run: nobody wrote that the unit resumed by itself.
RUN = Context(
    planned_a=0.42,
    starts_s=datetime.fromisoformat("2026-03-02T14:00:00Z").timestamp(),
    stops_s=datetime.fromisoformat("2026-03-03T17:00:00Z").timestamp(),
    switchings=tuple(
        Switching(datetime.fromisoformat(f"{at}Z").timestamp(), True)
        for at in ("2026-03-02T14:00", "2026-03-02T15:30", "2026-03-02T17:00", "2026-03-03T07:45", "2026-03-03T08:00")
    ),
)


def hostile() -> str:
    """The same trace in local time without offset, with semicolons, decimal commas and milliamperes."""
    lines = ["Datum;U [V];I [mA];T [C]"]
    for row in SCENARIO.read_text().splitlines()[1:]:
        stamp, volts, amperes, warmth = row.split(",")
        local = datetime.fromisoformat(stamp).astimezone(ZoneInfo("Europe/Berlin"))
        figures = [volts.replace(".", ","), f"{float(amperes) * 1000:.0f}", warmth.replace(".", ",")]
        lines.append(";".join([f"{local:%d.%m.%Y %H:%M:%S}", *figures]))
    return "\n".join(lines) + "\n"


def written(folder: Path, text: str | bytes, encoding: str = "utf-8") -> Path:
    path = folder / "trace.csv"
    path.write_bytes(text if isinstance(text, bytes) else text.encode(encoding))
    return path


def mapped(path: Path, **answers) -> Mapping:
    """The file's own proposal, completed by a person's answers."""
    return Mapping.from_json(sniff(survey(path, LIMIT), WORDS).mapping.as_json() | answers)


def sampled(path: Path, *, careful: bool = False, **answers) -> Samples:
    return read(survey(path, LIMIT), mapped(path, **answers), careful=careful)
