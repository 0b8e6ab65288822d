"""The certificate of reproduction: that the piece is a copy, of what, how it is known again, how it may be used."""

from typing import Any

from django.utils.text import capfirst

from process.models import Mould
from process.reports import finished
from process.reports.making import Making, gather
from records.care import care_of
from records.extensions import PaperContext
from records.family import edition_of
from records.identity import identity_of
from records.limits import limits_along
from records.models import Consent, Item, SuppressedMark
from records.pdf import blocks as b
from records.pdf.document import build
from records.reports.attached import record
from records.reports.figures import figure_fact, row_fact
from records.reports.marking import is_unmarked
from records.reports.parts import caption_of, head, local_day, printed
from records.sentences import named
from records.wording import phrases

KIND = "Certificate of reproduction"


def _described(m: Making) -> b.Cover:
    """By which the copy itself can be known again: what was measured on it, and its photograph."""
    last, photo = m.inspection, m.portrait
    edition = capfirst(edition_of(m.copy))
    facts = [
        b.Fact("Number", m.copy.number), b.Fact("Edition", edition),
        b.Fact("Made", local_day(m.making_up.made_up_on)), b.Fact("Technique", m.making_up.get_technique_display()),
        b.Fact("Materials", m.copy.materials), b.Fact("Lead inside", m.making_up.get_lead_inside_display()),
        *([row_fact("Mass", last, "mass_g"), row_fact("Diameter or breadth", last, "diameter_mm"),
           row_fact("Thickness", last, "finished_thickness_mm")] if last else []),
    ]  # fmt: skip
    shown = printed(photo, caption_of(photo, m.copy)) if photo else None
    return b.Cover(shown, tuple(fact for fact in facts if fact.value))


def _model(m: Making) -> list[b.Block]:
    """What it was taken from, whose that is, and how many steps lie between."""
    line = m.chain.lineage
    rows = [
        f"{model.number}, {model.title.rstrip('.')}; {model.materials or 'material not recorded'}"
        + (f". Owner: {model.owner}." if model.owner else ".")
        for model in m.models
    ]
    steps = phrases.generation(line.generation, line.transfer_count, line.at_least)
    return [b.Heading("Taken from"), *(b.Prose(row) for row in rows), b.Prose(steps), *_masses(m)]


def _masses(m: Making) -> list[b.Block]:
    found = tuple(figure_fact(each) for each in (*m.figures.mass, *m.figures.size) if each.value is not None)
    return [b.FactList(found)] if found else []


def _allowed(m: Making) -> list[b.Block]:
    said = [_consent(consent) for consent in m.consents]
    fates = [_fate(mould) for mould in m.moulds]
    empty = ["No consent is recorded."] if not said else []
    return [
        b.Heading("Permission"), *(b.Prose(words) for words in [*said, *empty]),
        b.Heading("Moulds"), *(b.Prose(words) for words in fates),
    ]  # fmt: skip


def _consent(consent: Consent) -> str:
    given = f"Made by permission of {consent.owner}, given {local_day(consent.given_on)}."
    count = consent.copies_max_count
    counts = f" At most {count} {'copy' if count == 1 else 'copies'}." if count else ""
    return f"{given}{counts} {consent.conditions}".strip()


def _fate(mould: Mould) -> str:
    on = f" on {local_day(mould.fate_on)}" if mould.fate_on else ""
    seen = f", witness {mould.fate_witness}" if mould.fate_witness else ""
    return f"{mould.item.number} ({mould.get_side_display()}): {mould.get_fate_display()}{on}{seen}."


def _suppressed(copy: Item) -> list[b.Block]:
    rows = SuppressedMark.objects.filter(copy=copy).select_related("mark__item")
    return [b.Prose(f"Of {row.mark.item.number}, {row}. {row.reason}".strip()) for row in rows]


def _limits(m: Making) -> list[b.Block]:
    """Every limit with whose it is; a concession without one is named all the same."""
    limits = [f"{each.sentence.rstrip('.')}. ({each.source})" for each in limits_along(m.copy, m.chain)]
    told = " ".join(limits)
    rest = [f"Concession {c.number}: {c.reason.rstrip('.')}." for c in m.concessions if c.number not in told]
    told = "\n".join(dict.fromkeys([*limits, *rest]))
    return [b.Notice("Limits of use and concessions", told)] if told else []


def blocks(m: Making, context: PaperContext) -> list[b.Block]:
    known = identity_of(m.copy, m.chain)
    unmarked = [b.Notice(phrases.UNMARKED, "It carries no permanent, photographed mark.")]
    return [
        b.Notice(phrases.ALWAYS_A_COPY, f"Always to be described as: {known.heading}."),
        *(unmarked if is_unmarked(m.copy) else []), *_limits(m),
        _described(m), *_model(m), *finished.marks(m), *_suppressed(m.copy), *_allowed(m),
        b.Heading("Care"), b.Prose("\n\n".join(care.sentence for care in care_of(m.copy)) or "Gloves; no cleaning."),
        b.Prose(f"To check this certificate, compare the digest at its foot, or open {known.address}"),
        b.Signatures((b.Signer(context.issued_by, context.role.capitalize(), local_day(context.issued_at)),)),
    ]  # fmt: skip


def make(copy: Item, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    m = gather(copy)
    rows = {
        "copy": [copy], "making-up": [m.making_up], "marks": m.marks, "inspections": m.inspections, "models": m.models,
        "consents": m.consents, "moulds": m.moulds, "concessions": m.concessions,
        "marks of the original": SuppressedMark.objects.filter(copy=copy),
    }  # fmt: skip
    data = record(KIND, copy.number, context, rows, limits=limits_along(copy, m.chain))
    named_so = identity_of(copy, m.chain)
    paper = head(KIND, copy.number, phrases.NOT_ORIGINAL, f"{named_so.sentence}.", context, named(copy))
    return build(paper, blocks(m, context), data, context.issued_at), data
