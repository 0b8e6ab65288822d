"""What a borrower or new owner signs: that the piece is a copy, how it is described, and how it may be used."""

from typing import Any

from records.extensions import PaperContext
from records.identity import identity_of
from records.limits import concessions_of, limits_along
from records.lineage import descent_of
from records.models import Handover, Item
from records.pdf import blocks as b
from records.pdf.document import build
from records.reports import handing
from records.reports.attached import record
from records.reports.parts import head, local_day
from records.sentences import named

KIND = "Acknowledgement of a copy"


def make(copy: Item, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    chain, limits = descent_of(copy), limits_along(copy)
    known, conceded = identity_of(copy, chain), list(concessions_of(copy))
    given = receiving(copy)
    rows = handing.rows_of(copy, conceded) | ({"handover": [given]} if given else {})
    data = record(KIND, copy.number, context, rows, limits=limits)
    summary = f"{known.sentence}, is handed over as a copy and stays one wherever it goes."
    paper = head(KIND, copy.number, "Received: a copy, not an original work", summary, context, named(copy))
    blocks = [
        handing.cover(copy, known, *_facts(given)), *handing.told(limits, conceded),
        b.Heading("What the receiver acknowledges"), handing.acknowledged(copy, chain),
        b.Signatures((
            b.Signer(context.issued_by, context.role.capitalize(), local_day(context.issued_at)), _receiver(given),
        )),
    ]  # fmt: skip
    return build(paper, blocks, data, context.issued_at), data


def receiving(copy: Item) -> Handover | None:
    """The last handover to somebody who shows, keeps or sells it; a finisher only works on it."""
    rows = copy.handovers.filter(called_off_on=None).exclude(kind=Handover.Kind.FINISHER)
    return rows.select_related("party").first()


def _facts(given: Handover | None) -> tuple[b.Fact, ...]:
    if given is None:
        return ()
    return (
        b.Fact("Receiver", str(given.party)), b.Fact("By way of", f"{given.get_kind_display()}, {given.number}"),
        b.Fact("For", given.purpose), b.Fact("Handed over", local_day(given.out_on)),
        b.Fact("Acknowledged", local_day(given.acknowledged_on)),
    )  # fmt: skip


def _receiver(given: Handover | None) -> b.Signer:
    if given is None:
        return b.Signer("", "Receiver, institution")
    return b.Signer(given.receiver, f"Receiver, {given.party}", local_day(given.acknowledged_on))
