"""A condition report of the demo museum, as a paper and its blocks."""

from records.pdf import blocks as b
from records.pdf.document import Paper
from tests.pdf.pictures import medal

MUSEUM = "Ostrel Vale Museum of Art and Trade"
CONDITION = Paper(
    kind="Condition report",
    number="CR-2026-01",
    version="1",
    museum=MUSEUM,
    issued_on="3 February 2026",
    title="Portrait medal of Maud Ferrigan, before moulding",
    summary="Stable, grade 1: an old knock at the edge, worn patina on the high points; fit for silicone.",
)


FINDINGS = b.FigureTable(
    (
        b.Column("No.", "", "right"),
        b.Column("Finding"),
        b.Column("Where"),
        b.Column("Extent", "mm", "right"),
        b.Column("Severity", "0–3", "right"),
        b.Column("Stability"),
        b.Column("Urgency"),
    ),
    (
        ("1", "knock", "edge, 4 h", "1.5", "1", "stable", "none"),
        ("2", "patina worn", "high points of the obverse", "", "1", "stable", "none"),
    ),
    caption="Findings",
    note="Not seen: the surface under the old inventory label on the edge.",
)
FACTS = (
    b.Fact("Object", "OVM.1931.0044"),
    b.Fact("Maker", "Corvin Aldersey the Younger, 1624"),
    b.Fact("Material", "leaded bronze, brown patina"),
    b.Fact("Diameter", "58.40", "mm"),
    b.Fact("Mass", "71.36", "g"),
    b.Fact("Density", "8.80", "g/cm³", "calculated"),
    b.Fact("Occasion", "before moulding"),
    b.Fact("Examined by", "Tobias Marrowby, conservator"),
    b.Fact("Light", "raking, 30°, 4000 K"),
    b.Fact("Grade", "1, stable"),
    b.Fact("Place", ""),
)

RESTRICTIONS = (
    b.Fact("Handling", "gloves, padded tray"),
    b.Fact("Moulding", "silicone, addition cure; no barrier"),
)
SIGNERS = (
    b.Signer("Tobias Marrowby", "Conservator", "3 February 2026"),
    b.Signer("Ines Quillfeather", "Registrar"),
)


def condition_blocks(photo: b.Photo | None = None) -> list[b.Block]:
    return [
        b.Cover(photo, FACTS),
        b.Heading("What was seen"),
        b.Prose("Cast, chased, two-sided. The patina is even and firm.\n\nNo active corrosion was seen at ×10."),
        FINDINGS,
        b.Heading("Details"),
        b.PhotoGrid((b.Photo(medal(400), "1 · Knock at 4 h"), b.Photo(medal(420), "2 · Worn patina")) if photo else ()),
        b.Heading("Restrictions"),
        b.FactList(RESTRICTIONS),
        b.Caution("Solvents and dusts: follow the local rules and the data sheet of the product in hand."),
        b.Signatures(SIGNERS),
    ]
