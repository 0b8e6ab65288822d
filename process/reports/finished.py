"""What was done after the bath: making-up, finish, mark, inspection, and how the copy compares with its model."""

from collections.abc import Iterable

from process.models import HydrostaticWeighing, Inspection
from process.reports.making import Making
from process.summaries.acceptance import points_of
from process.summaries.densities import LIMITS, densities_of
from records.care import care_of
from records.models import Item, Mark, Term
from records.pdf import blocks as b
from records.reports.figures import figure_cell, figure_fact, number_of, row_fact
from records.reports.parts import caption_of, cautions, local_day, printed, sentences, signer
from records.units import SUFFIXES
from records.wording import phrases

LEAD = {"yes": True, "no": False}
ABSORBED = "absorbed"
ACID = (
    "Acid copper solution stayed in the core. Keep it dry, look for green spots and damp at the thin places, wear "
    "gloves; what drips is acid and a poison to water. Local rules and licensed practice come first."
)


def making_up(m: Making) -> list[b.Block]:
    made = m.making_up
    facts = (
        b.Fact("Technique", made.get_technique_display()),
        b.Fact("Shells", ", ".join(str(shell) for shell in m.shells)),
        b.Fact("Filling", made.fill.label if made.fill else "none"), b.Fact("Inside", made.fill_words),
        b.Fact("Lead inside", made.get_lead_inside_display()), *_filling(m),
        row_fact("Density of the filling", made, "fill_density_g_cm3"),
        row_fact("Temperature at the shell", made, "fill_temperature_degc"),
        b.Fact("Joined by", made.get_join_display()), b.Fact("Alloy or adhesive, seam", made.join_words),
        row_fact("Die axis", made, "die_axis_deg"), b.Fact("Made up on", local_day(made.made_up_on)),
        b.Fact("By", str(made.made_up_by or "")),
    )  # fmt: skip
    kept = tuple(fact for fact in facts if fact.value)
    inside = b.Prose(phrases.inside(LEAD.get(made.lead_inside)))
    return [b.Heading("Making-up"), b.FactList(kept), inside, *_cautions([made.fill] if made.fill else [])]


def _filling(m: Making) -> list[b.Fact]:
    """What the room in the shells would hold, and what was weighed: a void shows in the difference."""
    found = m.figures.fill
    weighed = row_fact("Filling, as weighed", m.making_up, "fill_mass_g")
    if found is None or found.kind == "measured":
        return [weighed]
    return [figure_fact(found, "Filling, by the room in the shells"), weighed]


def _cautions(terms: Iterable[Term]) -> list[b.Block]:
    """The caution of each material or finish, which it is named with."""
    return cautions(f"{term.label[:1].upper()}{term.label[1:]}: {term.caution}" for term in terms if term.caution)


def finish(m: Making) -> list[b.Block]:
    columns = (
        b.Column("Done on"),
        b.Column("Finish"),
        b.Column("How"),
        b.Column("Skin", "µm", "right"),
        b.Column("By"),
    )
    rows = tuple(
        (local_day(s.done_on), s.finish.label, s.words, number_of(s, "thickness_um")[0], str(s.done_by or ""))
        for s in m.finishes
    )
    found = b.FigureTable(columns, rows, empty="No finish is recorded.")
    return [b.Heading("Finish"), found, *_cautions(step.finish for step in m.finishes)]


def marks(m: Making) -> list[b.Block]:
    """Each mark with its photograph, its measured sizes."""
    if not m.marks:
        return [b.Heading("Marks"), b.Prose("The copy carries no mark.")]
    return [b.Heading("Marks"), *(_mark(m.copy, mark) for mark in m.marks)]


def _mark(copy: Item, mark: Mark) -> b.MarkBlock:
    facts = (
        b.Fact("Purpose", mark.get_purpose_display()), b.Fact("Face", mark.get_face_display()),
        b.Fact("Position", mark.position),
        b.Fact("Method", mark.get_method_display()), b.Fact("Technique", mark.get_technique_display()),
        row_fact("Letter height", mark, "letter_height_mm"),
        row_fact("Width of the word COPY", mark, "copy_word_width_mm"),
        row_fact("Depth", mark, "depth_mm"),
        b.Fact("Made", ", ".join(filter(None, [local_day(mark.made_on), str(mark.made_by or "")]))),
        b.Fact("Witness", str(mark.witness or "")),
    )  # fmt: skip
    kept = tuple(
        fact for fact in facts if fact.value or fact.label in {"Letter height", "Width of the word COPY", "Depth"}
    )
    photo = printed(mark.photo, caption_of(mark.photo, copy)) if mark.photo else None
    return b.MarkBlock(mark.text, kept, photo, _judgement(mark))


def _judgement(mark: Mark) -> str:
    if mark.is_photographed_copy_mark:
        return "● Permanent, photographed, and says that this is a copy."
    return "■ Not a permanent, photographed mark that says copy." if mark.purpose == Mark.Purpose.COPY else ""


def inspection(m: Making) -> list[b.Block]:
    last = m.inspection
    if last is None:
        return [b.Heading("Inspection"), b.Prose("The finished copy has not been inspected.")]
    facts = (
        b.Fact("Inspected on", local_day(last.inspected_on)), b.Fact("By", str(last.inspector)),
        row_fact("Mass", last, "mass_g"),
        row_fact("Diameter or largest breadth", last, "diameter_mm"),
        row_fact("Thickness of the piece", last, "finished_thickness_mm"),
        _least(last), b.Fact("Decision", last.get_decision_display()),
        b.Fact("Concession", last.concession.number if last.concession else ""),
    )  # fmt: skip
    kept = tuple(fact for fact in facts if fact.value)
    return [b.Heading("Inspection and acceptance"), b.FactList(kept), *_points(last),
            b.Prose(sentences(last.look), leads=True),
            b.Signatures((signer(last, str(last.inspector), "conservator"),))]  # fmt: skip


def _points(last: Inspection) -> list[b.Block]:
    """The specification, point by point."""
    points = points_of(last)
    if not points:
        return []
    columns = (b.Column("Point"), b.Column("Required"), b.Column("Found", empty=""), b.Column("Verdict"))
    rows = tuple((p.label, p.required, p.found, f"{p.word}: {p.reason}" if p.reason else p.word) for p in points)
    return [b.Prose("Held against the specification:", leads=True), b.FigureTable(columns, rows)]


def _least(last: Inspection) -> b.Fact:
    if last.thickness_min_mm is None:
        return b.Fact("Least thickness", f"not measured: {last.not_measured_reason}")
    fact = row_fact("Least thickness, measured", last, "thickness_min_mm")
    how = "".join(f", {word}" for word in (last.get_thickness_method_display(), last.thickness_place) if word)
    return b.Fact(fact.label + how, fact.value, fact.unit, fact.kind)


def comparison(m: Making) -> list[b.Block]:
    """Mass and size, predicted and measured, against the model."""
    columns = (b.Column("Figure"), b.Column("Value", align="right"), b.Column("Unit", empty=""), b.Column("Kind"))
    figures = [figure for figure in (*m.figures.mass, *m.figures.size) if figure.value is not None]
    rows = tuple(
        (f.label, figure_cell(f), {"pct": "%"}.get(SUFFIXES[f.suffix], SUFFIXES[f.suffix]), f.kind) for f in figures
    )
    return [
        b.Heading(f"Compared with the {m.model_word}"),
        b.FigureTable(columns, rows, empty="Neither mass nor size is measured on both."),
        *_density(m),
        *(b.Prose(words) for words in m.figures.warnings),
    ]  # fmt: skip


def _density(m: Making) -> list[b.Block]:
    """By weighing in water, with the sentence on what that can and cannot tell."""
    weighed = HydrostaticWeighing.objects.filter(item__in=[m.copy, *m.models]).select_related("item")
    found = [each for each in densities_of(weighed) if each.figure.value is not None]
    if not found:
        return []
    facts = tuple(figure_fact(each.figure, f"Density of {each.row.item.number}, in water") for each in found)
    return [b.FactList(facts, leads=True), b.Prose(LIMITS)]


def care(m: Making) -> list[b.Block]:
    said = [care.sentence for care in care_of(m.copy)]
    survey = (
        "three months"
        if m.making_up.core_id
        else "six months"
        if any(each.interruptions for each in m.runs)
        else "twelve months"
    )
    usual = (
        f"Look at it again {survey} after acceptance, in the terms of a condition report; then every one to five years."
    )
    blocks: list[b.Block] = [b.Heading("Care"), b.Prose("\n\n".join([*said, usual, phrases.ALWAYS_A_COPY]))]
    if any(each.result and each.result.band == ABSORBED for each in m.runs):
        blocks.append(b.Caution(ACID))
    if m.making_up.lead_inside != "no":
        words = "There is or may be lead inside: local rules and licensed practice decide how it is worked and shipped."
        blocks.append(b.Caution(words))
    return blocks


def photographs(m: Making) -> list[b.Block]:
    shown = [printed(photo, caption_of(photo, m.copy)) for photo in m.photos if photo != m.portrait]
    return [b.Heading("Photographs"), b.PhotoGrid(tuple(shown))] if shown else []
