"""The papers of a commission: what was asked for, what its owners allow, what the workshop is to make."""

from collections.abc import Iterable
from typing import Any

from django.utils.text import capfirst

from records.commission_file import CommissionFile, file_rows, read_file
from records.conditions import conditions_of
from records.extensions import PaperContext
from records.models import Commission, Consent, Specification, Tracked
from records.pdf import blocks as b
from records.pdf.document import build
from records.reports.attached import record
from records.reports.figures import row_fact
from records.reports.parts import head, local_day, sentences

CAUTION = "Nothing touches the original before the gates of permission, risk and condition are passed."
Made = tuple[bytes, dict[str, Any]]


def make_request(commission: Commission, context: PaperContext) -> Made:
    """Who wants what, and where each gate stands."""
    file = read_file(file_rows().get(pk=commission.pk))
    blocks = [_asked(file.commission), b.Heading("Originals"), _originals(file), b.Heading("The gates"), _gates(file),
              _signed(context, str(commission.requester), "For the requester")]  # fmt: skip
    rows = {"commission": [commission], "originals": file.originals}
    return _paper("Request sheet", "A copy is asked for", file, blocks, rows, context)


def make_consent(commission: Commission, context: PaperContext) -> Made:
    """Each consent with its conditions, and where each of them bites."""
    file = read_file(file_rows().get(pk=commission.pk))
    blocks = [block for consent in file.consents for block in _consent(consent)]
    named = ", ".join(dict.fromkeys(str(consent.given_by) for consent in file.consents))
    blocks.append(_signed(context, named, "For the owner"))
    rows = {"commission": [commission], "consents": file.consents}
    return _paper("Consent", "What the owner allows", file, blocks, rows, context)


def make_order(commission: Commission, context: PaperContext) -> Made:
    """What the copies must become, with the conditions that bind the bench."""
    file = read_file(file_rows().get(pk=commission.pk))
    wanted = list(commission.specifications.select_related("item", "signed_by"))
    risks = [risk for item in file.originals for risk in item.risk_assessments.all() if risk.is_signed]
    said = [f"{risk.number}, {risk.get_decision_display()}: {risk.conditions or risk.reason}" for risk in risks]
    blocks = [
        _asked(file.commission), *(block for row in wanted for block in _specified(row)),
        b.Heading("Risk, as decided"), *(b.Prose(words) for words in said or ["No signed assessment yet."]),
        b.Heading("Conditions of the owner"), *(_conditions(consent) for consent in file.consents),
        b.Caution(CAUTION), _signed(context, "", "Bench"),
    ]  # fmt: skip
    rows = {"commission": [commission], "specifications": wanted, "risk assessments": risks, "consents": file.consents}
    return _paper("Work order", "What is to be made", file, blocks, rows, context)


def _paper(
    kind: str, title: str, file: CommissionFile, blocks: list[b.Block], rows: dict[str, Iterable[Tracked]],
    context: PaperContext,
) -> Made:  # fmt: skip
    asked = file.commission
    count = f"{asked.quantity_count} cop{'y' if asked.quantity_count == 1 else 'ies'}"
    named = ", ".join(item.number for item in file.originals)
    summary = f"{asked.number}: {count} of {named}, asked for by {asked.requester} for {asked.purpose}."
    data = record(kind, asked.number, context, rows)
    return build(head(kind, asked.number, title, summary, context), blocks, data, context.issued_at), data


def _asked(asked: Commission) -> b.Block:
    facts = (
        b.Fact("Asked for by", str(asked.requester)), b.Fact("On", local_day(asked.requested_on)),
        b.Fact("Purpose", sentences(capfirst(asked.purpose), asked.purpose_words)),
        b.Fact("Copies wanted", str(asked.quantity_count)), b.Fact("Needed by", local_day(asked.needed_by)),
        b.Fact("Will live", asked.place_of_use), b.Fact("Must be like", asked.likeness),
    )  # fmt: skip
    return b.FactList(tuple(fact for fact in facts if fact.value))


def _originals(file: CommissionFile) -> b.Block:
    columns = (b.Column("Number"), b.Column("What it is"), b.Column("Kind"), b.Column("Materials", empty=""))
    rows = tuple((item.number, item.title, item.get_kind_display(), item.materials) for item in file.originals)
    return b.FigureTable(columns, rows, empty="To be identified.")


def _gates(file: CommissionFile) -> b.Block:
    columns = (b.Column("Gate"), b.Column("Of"), b.Column("Stands"), b.Column("Evidence, or what is missing"))
    words = {"done": "passed", "look": "see there", "blocked": "not passed", "open": "ahead"}
    rows = tuple(
        (f"{group.gate} {group.label}", line.item.number, words[line.state], " ".join(c.sentence for c in line.checks))
        for group in file.groups for line in group.lines
    )  # fmt: skip
    return b.FigureTable(columns, rows, empty="None is asked yet.")


def _consent(consent: Consent) -> Iterable[b.Block]:
    yield b.Heading(f"{consent.owner}, {local_day(consent.given_on)}")
    authority = f" ({consent.authority})" if consent.authority else ""
    until = f" to {local_day(consent.valid_to)}" if consent.valid_to else ""
    items = ", ".join(item.number for item in consent.items.all())
    yield b.Prose(f"For {items}. Signed by {consent.given_by}{authority}; from {local_day(consent.valid_from)}{until}.")
    yield _conditions(consent)
    if consent.rights:
        yield b.Prose(f"Rights and law: {consent.rights}")


def _conditions(consent: Consent) -> b.Block:
    columns = (b.Column("Condition"), b.Column("Asked at", empty=""))
    rows = tuple((each.words, each.bites or "goes with every copy") for each in conditions_of(consent))
    return b.FigureTable(columns, rows, empty="No conditions were set.")


def _specified(row: Specification) -> Iterable[b.Block]:
    facts = (
        b.Fact("Technique", row.get_technique_display()), b.Fact("Metal", row.metal),
        row_fact("Mean thickness", row, "thickness_mean_mm"),
        row_fact("Least thickness anywhere", row, "thickness_min_mm"),
        b.Fact("Finish", row.finish), b.Fact("Filling", row.fill), b.Fact("Marks", row.mark_words),
        b.Fact("Tests for acceptance", row.tests), b.Fact("Signed by", str(row.signed_by or "nobody yet")),
    )  # fmt: skip
    yield b.Heading(f"After {row.item.number}")
    yield b.FactList(tuple(fact for fact in facts if fact.value))


def _signed(context: PaperContext, name: str, role: str) -> b.Block:
    mine = b.Signer(context.issued_by, context.role.capitalize(), local_day(context.issued_at))
    return b.Signatures((mine, b.Signer(name, role)))
