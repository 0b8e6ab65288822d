"""Specimen papers from the invented museum of the demo: a condition report, a process report, a label and tags."""

from datetime import UTC, datetime
from zoneinfo import ZoneInfo

from records.pdf import blocks as b
from records.pdf.charts import Axis, Chart, Event, Panel, Series, Target
from records.pdf.document import Paper, build
from records.pdf.labels import GalleryLabel
from records.pdf.tags import ObjectTag, UnmarkedTag
from tests.pdf.pictures import medal

ISSUED = datetime(2026, 4, 20, 9, 30, tzinfo=UTC)
ZONE = ZoneInfo("Europe/Berlin")
MUSEUM = "Ostrel Vale Museum of Art and Trade"
RECORD = {"number": "R.2026.1", "charge_ah": 36.85, "note": "Ø 58.34 mm <b>&"}

CONDITION = Paper(
    kind="Condition report",
    number="CR-2026-01",
    version="1",
    museum=MUSEUM,
    issued_on="3 February 2026",
    title="Portrait medal of Maud Ferrigan, before moulding",
    summary="Stable, grade 1: an old knock at the edge and worn patina on the high points; fit for a silicone mould.",
)
PROCESS = Paper(
    kind="Process report",
    number="PR-2026-01",
    version="2",
    museum=MUSEUM,
    issued_on="20 April 2026",
    title="Electrotype copy R.2026.1 after the medal of Maud Ferrigan",
    summary="A hollow copper electrotype, made in February 2026 from moulds of OVM.1931.0044; first generation.",
)

# Local clock, current in A, volts, °C, note: the good medal run, start 16 February 2026, 09:00.
READINGS = (
    (16, 9, 0, 0.24, 0.31, 21.2, "live entry, strike 0.30 A/dm²"),
    (16, 10, 40, 0.24, 0.28, 21.3, "both fully covered (1 h 40)"),
    (16, 11, 0, 0.64, 0.50, 21.4, "0.80 A/dm²"),
    (16, 13, 0, 1.21, 0.80, 21.6, "1.50 A/dm²"),
    (16, 15, 0, 1.21, 0.79, 21.9, "smooth"),
    (16, 17, 30, 1.21, 0.80, 22.1, "filter checked"),
    (17, 8, 30, 1.21, 0.82, 22.6, "edge thicker, no trees"),
    (17, 12, 0, 1.21, 0.82, 22.5, ""),
    (17, 15, 0, 1.21, 0.83, 22.6, ""),
    (17, 18, 0, 0.0, None, 22.6, "stop at 36.85 Ah"),
)


def _at(day: int, hour: int, minute: int) -> datetime:
    return datetime(2026, 2, day, hour, minute, tzinfo=ZONE).astimezone(UTC)


def run_chart() -> Chart:
    current = tuple((_at(*row[:3]), row[3]) for row in READINGS)
    grown, charge = [(current[0][0], 0.0)], 0.0
    for (start, amperes), (end, _) in zip(current, current[1:], strict=False):
        charge += amperes * (end - start).total_seconds() / 3600
        grown.append((end, 0.6019 * charge / 36.85))
    events = (
        Event(_at(16, 9, 0), "live entry"),
        Event(_at(16, 10, 40), "covered"),
        Event(_at(16, 17, 30), "filter checked"),
        Event(_at(17, 18, 0), "stop"),
    )
    return Chart(
        title="Run D-2026-002, current and grown thickness",
        description="Current in three steps from 0.24 to 1.21 A over 33 hours; mean thickness grows to 0.60 mm.",
        panels=(
            Panel(Axis("Current", "A"), (Series("sheet", current, step=True),)),
            Panel(
                Axis("Mean thickness", "mm"),
                (Series("grown", tuple(grown), calculated=True),),
                (Target("target 0.60 mm", 0.6),),
            ),
        ),
        tz=ZONE,
        events=events,
    )


def condition_blocks(photo: b.Photo | None = None) -> list[b.Block]:
    findings = b.FigureTable(
        (b.Column("No.", "", "right"), b.Column("Finding"), b.Column("Where"), b.Column("Extent", "mm", "right"),
         b.Column("Severity", "0–3", "right"), b.Column("Stability"), b.Column("Urgency")),
        (("1", "knock", "edge, 4 h", "1.5", "1", "stable", "none"),
         ("2", "patina worn", "high points of the obverse", "", "1", "stable", "none")),
        caption="Findings",
        note="Not seen: the surface under the old inventory label on the edge.",
    )  # fmt: skip
    return [
        b.Cover(
            photo,
            (
                b.Fact("Object", "OVM.1931.0044"), b.Fact("Maker", "Corvin Aldersey the Younger, 1624"),
                b.Fact("Material", "leaded bronze, brown patina"), b.Fact("Diameter", "58.40", "mm"),
                b.Fact("Mass", "71.36", "g"), b.Fact("Density", "8.80", "g/cm³", "calculated"),
                b.Fact("Occasion", "before moulding"), b.Fact("Examined by", "Tobias Marrowby, conservator"),
                b.Fact("Light", "raking, 30°, 4000 K"), b.Fact("Grade", "1, stable"), b.Fact("Place", ""),
            ),
        ),
        b.Heading("What was seen"),
        b.Prose("Cast, chased, two-sided. The patina is even and firmly attached.\n\nNo active corrosion was seen at ×10."),
        findings,
        b.Heading("Details"),
        b.PhotoGrid((b.Photo(medal(400), "1 · Knock at 4 h"), b.Photo(medal(420), "2 · Worn patina")) if photo else ()),
        b.Heading("Restrictions"),
        b.FactList((b.Fact("Handling", "gloves, padded tray"), b.Fact("Moulding", "silicone, addition cure; no barrier"))),
        b.Caution("Solvents and dusts: follow the local rules and the data sheet of the product in hand."),
        b.Signatures((b.Signer("Tobias Marrowby", "Conservator", "3 February 2026"), b.Signer("Ines Quillfeather", "Registrar"))),
    ]  # fmt: skip


def working() -> b.Working:
    return b.Working(
        title="Deposited copper, run D-2026-002",
        formula="m = Q · M · η / (z · F)",
        substituted="m = 36.85 Ah × 3600 s/h × 63.546 g/mol / (2 × 96 485.332 C/mol)",
        result="43.69",
        unit="g",
        terms=(
            b.Term("Q", "charge by the sheet", "36.85", "Ah", "readings, appendix A"),
            b.Term("M", "molar mass of copper", "63.546", "g/mol", "IUPAC 2021"),
            b.Term("z", "electrons per ion, Cu²⁺", "2", "", "Cu²⁺ + 2 e⁻ → Cu"),
            b.Term("F", "Faraday constant", "96 485.332", "C/mol", "CODATA 2022"),
        ),
        sources=("Faraday's law of electrolysis; CODATA 2022; IUPAC standard atomic weights 2021.",),
    )


def process_blocks(photo: b.Photo | None = None) -> list[b.Block]:
    figure = ("left", "right", "right", "right")
    shells = b.FigureTable(
        tuple(b.Column(h, u, a) for h, u, a in zip(("Shell", "Area", "Gain", "Mean thickness"), ("", "cm²", "g", "mm"), figure, strict=True)),
        (("S-03 obverse", "40.2", "22.05", b.Cell("0.615", calculated=True)),
         ("S-04 reverse", "40.2", "21.13", b.Cell("0.589", calculated=True)),
         (b.Cell("both", strong=True), b.Cell("80.4", strong=True), b.Cell("43.18", strong=True), "")),
        caption="Weighing after separation",
    )  # fmt: skip
    points = (("rim", "0.71"), ("field, 12 h", "0.60"), ("field, 3 h", "0.58"), ("cheek", "0.62"), ("nose", "0.66"),
              ("under chin", "0.33"), ("legend", "0.47"))  # fmt: skip
    readings = b.FigureTable(
        (b.Column("Local time"), b.Column("Current", "A", "right"), b.Column("Voltage", "V", "right"),
         b.Column("Bath", "°C", "right"), b.Column("Note")),
        tuple((f"{d} Feb {h:02d}:{m:02d}", f"{i:.2f}", f"{v:.2f}" if v else "", f"{t:.1f}", n) for d, h, m, i, v, t, n in READINGS),
        caption="Sheet of readings, run D-2026-002",
    )  # fmt: skip
    return [
        b.Notice("Unmet, recorded afterwards", "Analysis of bath B-01 not older than 30 days: met only on 2 April 2026."),
        b.Cover(photo, (
            b.Fact("Copy", "R.2026.1"), b.Fact("Made from", "OVM.1931.0044"), b.Fact("Metal", "copper, tin-rich filling"),
            b.Fact("Mass", "64.71 ± 0.02", "g"), b.Fact("Predicted mass", "64.43", "g", "calculated"),
            b.Fact("Diameter", "58.34", "mm"), b.Fact("Contains lead", "no"), b.Fact("Copy number", "1 of 3"),
        )),
        b.Heading("Descent"),
        b.DescentStrip((
            b.Piece("OVM.1931.0044", "bronze medal, 1624", "+"), b.Link("moulded"), b.Piece("M-2026-01", "silicone, obverse", "−"),
            b.Link("deposited"), b.Piece("S-03", "copper shell", "+"), b.Link("joined"), b.Piece("R.2026.1", "electrotype copy", "+"),
        )),
        b.DescentStrip((
            b.Piece("medal of 1702", "untraced since 1811", "+", known=False), b.Link(known=False), b.Piece("R.1889.7", "electrotype", "+"),
            b.Link("moulded"), b.Piece("M-2026-05", "silicone", "−"),
        ), caption="For comparison: a copy of a copy"),
        b.Heading("The run"),
        b.ChartBlock(run_chart()),
        shells,
        b.FigureTable((b.Column("Point"), b.Column("Thickness", "mm", "right")), points, caption="Thickness of S-03, obverse"),
        b.Heading("Mark"),
        b.MarkBlock("OVM 2026 COPY", (
            b.Fact("Face", "reverse"), b.Fact("Position", "rim"), b.Fact("Method", "mould-borne, incuse"),
            b.Fact("Letter height", "2.0", "mm"), b.Fact("Width of the word", "6.5", "mm"), b.Fact("Depth", "0.30", "mm"),
        ), b.Photo(medal(300), "The mark, ×4") if photo else None, "● done: permanent, photographed"),
        b.Heading("Care"),
        b.Prose("Keep below 50 % relative humidity. Do not polish: the wax and the patina are part of the copy."),
        b.Caution("Handle the piece with gloves; the joint is soldered."),
        b.Signatures((b.Signer("Tobias Marrowby", "Conservator"), b.Signer("Odalys Finchwater", "Curator"))),
        b.Appendix("A", "Readings and working", "What was written at the bench, and how each calculated figure follows."),
        readings,
        working(),
    ]  # fmt: skip


def condition_report(photo: b.Photo | None = None, page_size: str = "A4") -> bytes:
    paper = CONDITION if page_size == "A4" else Paper(**{**CONDITION.__dict__, "page_size": page_size})
    return build(paper, condition_blocks(photo), RECORD, ISSUED)


def process_report(photo: b.Photo | None = None) -> bytes:
    return build(PROCESS, process_blocks(photo), RECORD, ISSUED)


PHOTO = b.Photo(medal(), "Obverse. Photograph of the original, scale 1 : 1")
LABEL = GalleryLabel(
    kind_and_date="Electrotype copy, 2026",
    title="after a cast bronze medal of Maud Ferrigan by Corvin Aldersey the Younger, 1624",
    lines=("Copper, tin-alloy filling, patinated", "Original OVM.1931.0044, in store"),
    text="The mistress of the tide-mill had her portrait cast once. This copy weighs 65 g, the bronze 71 g.",
    credit="Copy made in the museum's workshop.",
    number="R.2026.1",
)
TAG = ObjectTag(
    "R.2026.1",
    "Electrotype copy, 2026",
    "after the medal of Maud Ferrigan, 1624",
    "https://register.example/c/R.2026.1",
)
UNMARKED_TAG = UnmarkedTag("R.2026.4", "Electrotype copy, 2026, after OVM.1931.0044")
