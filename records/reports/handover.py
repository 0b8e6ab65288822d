"""The paper that goes with a copy: to a finisher, on loan, or for good; its way out beside its way back."""

from typing import Any

from records.care import care_of
from records.extensions import PaperContext
from records.identity import identity_of
from records.limits import concessions_of, limits_along
from records.lineage import descent_of
from records.models import Handover, Item
from records.pdf import blocks as b
from records.pdf.document import build
from records.reports import handing
from records.reports.attached import record
from records.reports.figures import in_words, row_fact
from records.reports.parts import head, local_day
from records.sentences import named

Kind = Handover.Kind
TITLES = {
    Kind.FINISHER: ("Custody paper", "In the hands of an outside finisher"),
    Kind.LOAN: ("Loan paper", "A copy on loan, not an original work"),
    Kind.EXCHANGE: ("Transfer paper", "A copy exchanged, not an original work"),
    Kind.GIFT: ("Transfer paper", "A copy given away, not an original work"),
    Kind.SALE: ("Transfer paper", "A copy sold, not an original work"),
}


def make(row: Handover, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    copy, (kind, title) = row.item, TITLES[Kind(row.kind)]
    chain, limits, conceded = descent_of(copy), limits_along(copy), list(concessions_of(copy))
    known = identity_of(copy, chain)
    data = record(kind, row.number, context, {"handover": [row]} | handing.rows_of(copy, conceded), limits=limits)
    until = f", due back on {local_day(row.due_on)}" if row.due_on else ""
    summary = f"{known.sentence}, goes to {row.party}: {row.purpose.rstrip('.')}{until}."
    paper = head(kind, row.number, title, summary, context, named(copy, row.number))
    blocks = [
        handing.cover(copy, known, *_agreed(row)), *handing.told(limits, conceded), *_care(copy),
        *([b.Heading("Conditions"), b.Prose(row.terms)] if row.terms else []),
        b.Heading("Condition and mass"), _both_ways(row) if row.out_on else _by_hand(row),
        *([] if row.kind == Kind.FINISHER else [
            b.Heading("What the receiver acknowledges"), handing.acknowledged(copy, chain, row.described_as),
        ]),
        *_signatures(row, context),
    ]  # fmt: skip
    return build(paper, blocks, data, context.issued_at), data


def _care(copy: Item) -> list[b.Block]:
    """What its composition asks of whoever has it now."""
    said = [care.sentence for care in care_of(copy)]
    return [b.Caution("\n".join(said), "Care")] if said else []


def _agreed(row: Handover) -> tuple[b.Fact, ...]:
    money = {
        name: row_fact(label, row, name) for name, label in (("value_money", "Insured for"), ("price_money", "Price"))
    }
    return (
        b.Fact("Goes to", str(row.party)), b.Fact("Agreed", local_day(row.agreed_on)),
        b.Fact("Due back", local_day(row.due_on)), b.Fact("Serves there as", str(row.serves or "")),
        *(b.Fact(fact.label, f"{fact.value} {row.currency}") for fact in money.values() if fact.value),
        b.Fact("Commission", str(row.commission or "")),
    )  # fmt: skip


def _both_ways(row: Handover) -> b.FigureTable:
    """Out and back side by side."""
    lines = [
        ("Day", local_day(row.out_on), local_day(row.back_on)),
        ("Mass", in_words(row, "mass_out_g"), in_words(row, "mass_back_g")),
        ("Condition", row.condition_out, row.condition_back),
        ("By", str(row.handed_by or ""), str(row.taken_back_by or "")),
        ("Packed and carried", row.packing, ""),
        ("Received by", row.receiver, ""),
        ("Compared with the way out", "", row.get_change_display()),
    ]
    if row.is_final:
        rows = tuple((label, there) for label, there, _ in lines[:6])
        return b.FigureTable((b.Column(""), b.Column("On the way out")), rows)
    return b.FigureTable((b.Column(""), b.Column("On the way out"), b.Column("On the way back")), tuple(lines))


def _by_hand(row: Handover) -> b.BoxTable:
    """Boxes for the pen, while nothing is entered yet."""
    ways = ("On the way out",) if row.is_final else ("On the way out", "On the way back")
    lines = ("Day", "Mass, g", "Condition", "By", "Packed and carried")
    return b.BoxTable((("", "", 32.0),), tuple((way, "", 68.0) for way in ways), tuple((line,) for line in lines))


def _signatures(row: Handover, context: PaperContext) -> list[b.Block]:
    """Each side signs; what comes back is signed for a second time."""
    there = (
        b.Signer(str(row.handed_by or context.issued_by), "Hands over", local_day(row.out_on)),
        b.Signer(row.receiver, f"Receives for {row.party}", local_day(row.acknowledged_on)),
    )
    signed = [b.Heading("Handed over and received"), b.Signatures(there)]
    if not row.is_final:
        home = (b.Signer("", f"Gives back for {row.party}"),
                b.Signer(str(row.taken_back_by or ""), "Takes back", local_day(row.back_on)))  # fmt: skip
        signed += [b.Heading("Given back"), b.Signatures(home)]
    return signed
