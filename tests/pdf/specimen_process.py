"""A process report of the demo museum, as a paper and its blocks."""

from records.pdf import blocks as b
from records.pdf.document import Paper
from tests.pdf.pictures import medal
from tests.pdf.specimen_condition import MUSEUM
from tests.pdf.specimen_run import READINGS, run_chart

PROCESS = Paper(
    kind="Process report",
    number="PR-2026-01",
    version="2",
    museum=MUSEUM,
    issued_on="20 April 2026",
    title="Electrotype copy R.2026.1 after the medal of Maud Ferrigan",
    summary="A hollow copper electrotype, made in February 2026 from OVM.1931.0044; first generation.",
)


def working() -> b.Working:
    return b.Working(
        title="Deposited copper, run D-2026-002",
        formula="m = Q · M / (z · F)",
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


COVER_FACTS = (
    b.Fact("Copy", "R.2026.1"),
    b.Fact("Made from", "OVM.1931.0044"),
    b.Fact("Metal", "copper, tin-rich filling"),
    b.Fact("Mass", "64.71 ± 0.02", "g"),
    b.Fact("Predicted mass", "64.43", "g", "calculated"),
    b.Fact("Diameter", "58.34", "mm"),
    b.Fact("Contains lead", "no"),
    b.Fact("Copy number", "1 of 3"),
)
DESCENT = b.DescentStrip(
    (
        b.Piece("OVM.1931.0044", "bronze medal, 1624", "+"),
        b.Link("moulded"),
        b.Piece("M-2026-01", "silicone, obverse", "−"),
        b.Link("deposited"),
        b.Piece("S-03", "copper shell", "+"),
        b.Link("joined"),
        b.Piece("R.2026.1", "electrotype copy", "+"),
    )
)
OTHER_DESCENT = b.DescentStrip(
    (
        b.Piece("medal of 1702", "untraced since 1811", "+", known=False),
        b.Link(known=False),
        b.Piece("R.1889.7", "electrotype", "+"),
        b.Link("moulded"),
        b.Piece("M-2026-05", "silicone", "−"),
    ),
    caption="For comparison: a copy of a copy",
)
SHELL_COLUMNS = (
    b.Column("Shell"),
    b.Column("Area", "cm²", "right"),
    b.Column("Gain", "g", "right"),
    b.Column("Mean thickness", "mm", "right"),
)
SHELLS = b.FigureTable(
    SHELL_COLUMNS,
    (
        ("S-03 obverse", "40.2", "22.05", b.Cell("0.615", calculated=True)),
        ("S-04 reverse", "40.2", "21.13", b.Cell("0.589", calculated=True)),
        (b.Cell("both", strong=True), b.Cell("80.4", strong=True), b.Cell("43.18", strong=True), ""),
    ),
    caption="Weighing after separation",
)

POINTS = (
    ("rim", "0.71"),
    ("field, 12 h", "0.60"),
    ("field, 3 h", "0.58"),
    ("cheek", "0.62"),
    ("nose", "0.66"),
    ("under chin", "0.33"),
    ("legend", "0.47"),
)
THICKNESSES = b.FigureTable(
    (b.Column("Point"), b.Column("Thickness", "mm", "right")), POINTS, caption="Thickness of S-03, obverse"
)
SHEET = b.FigureTable(
    (
        b.Column("Local time"),
        b.Column("Current", "A", "right"),
        b.Column("Voltage", "V", "right"),
        b.Column("Bath", "°C", "right"),
        b.Column("Note"),
    ),
    tuple(
        (f"{d} Feb {h:02d}:{m:02d}", f"{i:.2f}", f"{v:.2f}" if v else "", f"{t:.1f}", n)
        for d, h, m, i, v, t, n in READINGS
    ),
    caption="Sheet of readings, run D-2026-002",
)
MARK_FACTS = (
    b.Fact("Face", "reverse"),
    b.Fact("Position", "rim"),
    b.Fact("Method", "mould-borne, incuse"),
    b.Fact("Letter height", "2.0", "mm"),
    b.Fact("Width of the word", "6.5", "mm"),
    b.Fact("Depth", "0.30", "mm"),
)


def process_blocks(photo: b.Photo | None = None) -> list[b.Block]:
    return [
        b.Notice(
            "Unmet, recorded afterwards",
            "Analysis of bath B-01 not older than 30 days: met only on 2 April 2026.",
        ),
        b.Cover(photo, COVER_FACTS),
        b.Heading("Descent"),
        DESCENT,
        OTHER_DESCENT,
        b.Heading("The run"),
        b.ChartBlock(run_chart()),
        SHELLS,
        THICKNESSES,
        b.Heading("Mark"),
        b.MarkBlock(
            "OVM 2026 COPY",
            MARK_FACTS,
            b.Photo(medal(300), "The mark, ×4") if photo else None,
            "● done: permanent, photographed",
        ),
        b.Heading("Care"),
        b.Prose("Keep below 50 % relative humidity. Do not polish: the wax and the patina are part of the copy."),
        b.Caution("Handle the piece with gloves; the joint is soldered."),
        b.Signatures((b.Signer("Tobias Marrowby", "Conservator"), b.Signer("Odalys Finchwater", "Curator"))),
        b.Appendix(
            "A",
            "Readings and working",
            "What was written at the bench, and how each calculated figure follows.",
        ),
        SHEET,
        working(),
    ]
