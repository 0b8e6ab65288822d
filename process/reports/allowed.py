"""What allowed the work: each condition of a consent and what the record shows, risk, condition before and after."""

from collections.abc import Callable

from process.models import Mould
from process.reports.making import Making
from records.conditions import Condition, conditions_of
from records.models import ConditionReport, Consent
from records.pdf import blocks as b
from records.pdf.tables import Row
from records.reports.figures import row_fact
from records.reports.parts import local_day
from records.wording import phrases

Occasion, Change = ConditionReport.Occasion, ConditionReport.Change


def permissions(m: Making) -> list[b.Block]:
    blocks: list[b.Block] = [b.Heading("Permission")]
    if not m.consents:
        blocks.append(b.Prose("No consent of an owner is on record for this work."))
    for consent in m.consents:
        items = ", ".join(item.number for item in consent.items.all())
        words = (
            f"{consent.owner} consented on {local_day(consent.given_on)}, signed by {consent.given_by}, for {items}."
        )
        columns = (b.Column("Condition"), b.Column("What the record shows"))
        rows = tuple((each.words, _shown(each, consent, m)) for each in conditions_of(consent))
        blocks += [b.Prose(words, leads=True), b.FigureTable(columns, rows, empty="No conditions were set.")]
    for risk in m.risks:
        conditions = f" Conditions: {risk.conditions}" if risk.conditions else ""
        blocks.append(b.Prose(
            f"Risk of moulding {risk.item.number}, {risk.number}, {local_day(risk.assessed_on)}, "
                f"signed by {risk.signed_by}: "
            f"{risk.get_decision_display()}. {risk.reason}{conditions}"
        ))  # fmt: skip
    return blocks


def _shown(condition: Condition, consent: Consent, m: Making) -> str:
    """The evidence for one condition; where the register has none, it says so."""
    moulds = [mould for mould in m.moulds if mould.model in consent.items.all()] or m.moulds
    evidence = EVIDENCE.get(condition.code)
    return evidence(consent, m, moulds) if evidence else "stands for the whole life of the copy"


def _in_force(consent: Consent, m: Making, moulds: list[Mould]) -> str:
    within = all(consent.in_force_on(mould.made_on) for mould in moulds)
    return "moulds made while it was in force" if within and moulds else "a mould was made outside these dates"


def _technique(consent: Consent, m: Making, moulds: list[Mould]) -> str:
    barriers = "; ".join(f"{mould.item.number}: {mould.barrier}" for mould in moulds if mould.barrier)
    said = [
        m.making_up.get_technique_display(),
        _materials(consent, m, moulds),
        f"barrier of {barriers}" if barriers else "",
    ]
    return "; ".join(filter(None, said))


def _materials(consent: Consent, m: Making, moulds: list[Mould]) -> str:
    return f"mould of {', '.join(sorted({mould.material.label for mould in moulds}))}" if moulds else ""


def _purposes(consent: Consent, m: Making, moulds: list[Mould]) -> str:
    commission = m.making_up.commission
    held = m.copy.get_status_display()
    return f"made for {commission.purpose}, held {held}" if commission else f"made for no commission, held {held}"


def _present(consent: Consent, m: Making, moulds: list[Mould]) -> str:
    """Who made the moulds, and who else stood by."""
    made = dict.fromkeys(f"{mould.made_by}, {local_day(mould.made_on)}" for mould in moulds if mould.made_by)
    also = dict.fromkeys(str(mould.present) for mould in moulds if mould.present)
    by = f"moulds made by {'; '.join(made)}" if made else "who made the moulds is not recorded"
    return f"{by}; also present: {', '.join(also)}" if also else by


def _warmest(consent: Consent, m: Making, moulds: list[Mould]) -> str:
    warm = [mould.working_temperature_degc for mould in moulds if mould.working_temperature_degc is not None]
    return f"highest recorded at contact: {max(warm):g} °C" if warm else "no temperature recorded at contact"


def _pulls_used(consent: Consent, m: Making, moulds: list[Mould]) -> str:
    return "; ".join(f"{mould.item.number}: {_pulls(mould)} used" for mould in moulds)


def _copies_made(consent: Consent, m: Making, moulds: list[Mould]) -> str:
    made = {shell.making_up.copy.number for mould in moulds for shell in _made_up(mould)}
    return f"{len(made)} made: {', '.join(sorted(made))}"


def _fates(consent: Consent, m: Making, moulds: list[Mould]) -> str:
    return "; ".join(_fate(mould) for mould in moulds)


def _worded(consent: Consent, m: Making, moulds: list[Mould]) -> str:
    label = getattr(m.copy, "label", None)
    signed = label and label.is_signed
    return f"wording approved, {local_day(label.signed_at)}" if signed else "wording not approved yet"


# What the register shows for a condition; the others bind the copy for ever.
EVIDENCE: dict[str, Callable[[Consent, Making, list[Mould]], str]] = {
    "valid_to": _in_force,
    "techniques": _technique,
    "materials": _materials,
    "purposes": _purposes,
    "presence": _present,
    "temperature": _warmest,
    "pulls": _pulls_used,
    "copies": _copies_made,
    "moulds": _fates,
    "label": _worded,
    "credit": _worded,
}


def _pulls(mould: Mould) -> str:
    count = len(mould.pulls.all())
    return f"{count} pull{'' if count == 1 else 's'}"


def _made_up(mould: Mould) -> list:
    shells = (getattr(cathode, "shell", None) for cathode in mould.cathodes.select_related("shell__making_up__copy"))
    return [shell for shell in shells if shell and shell.making_up_id]


def _fate(mould: Mould) -> str:
    day = f" {local_day(mould.fate_on)}" if mould.fate_on else ""
    witness = f", witness {mould.fate_witness}" if mould.fate_witness else ""
    return f"{mould.item.number} {mould.get_fate_display()}{day}{witness}"


def specification(m: Making) -> list[b.Block]:
    """What the copy was to become, so that it can be held against what it is."""
    if not m.specifications:
        return []
    blocks: list[b.Block] = [b.Heading("Specification")]
    for row in m.specifications:
        facts = (
            b.Fact("Model", row.item.number), b.Fact("Technique", row.get_technique_display()),
            b.Fact("Metal", row.metal),
            row_fact("Mean thickness", row, "thickness_mean_mm"),
            row_fact("Least thickness anywhere", row, "thickness_min_mm"),
            b.Fact("Finish", row.finish), b.Fact("Filling", row.fill), b.Fact("Marks", row.mark_words),
            b.Fact("Tests for acceptance", row.tests), b.Fact("Signed by", str(row.signed_by or "nobody yet")),
        )  # fmt: skip
        blocks.append(b.FactList(tuple(fact for fact in facts if fact.value)))
    return blocks


def original(m: Making) -> list[b.Block]:
    """The statement that the two condition records exist for, once for each model."""
    blocks: list[b.Block] = [b.Heading(f"The {m.model_word} before and after moulding")]
    columns = (
        b.Column("Report"),
        b.Column("Of"),
        b.Column("Examined"),
        b.Column("By"),
        b.Column("Light"),
        b.Column("Statement"),
    )
    for model in m.models:
        mine = [report for report in m.reports if report.item_id == model.pk]
        blocks.append(b.Prose(_statement(model.number, mine), leads=True))
    return [
        *blocks,
        b.FigureTable(
            columns, tuple(map(_row, m.reports)), empty="No condition report before or after moulding is on file."
        ),
    ]


def _statement(number: str, reports: list[ConditionReport]) -> str:
    after = next((r for r in reversed(reports) if r.occasion == Occasion.AFTER and r.is_signed and r.change), None)
    if after is None:
        return f"{number}: no signed report after moulding states whether it changed; nothing is claimed here."
    changes = [after.change_words.rstrip(".") or "not described"] if after.change == Change.CHANGED else []
    return f"{number}: {phrases.original_after_moulding(after.examined_on, changes)}"


def _row(report: ConditionReport) -> Row:
    said = report.get_change_display() or report.get_occasion_display()
    signed = "" if report.is_signed else " (not signed)"
    return (
        report.number,
        report.item.number,
        local_day(report.examined_on),
        str(report.examiner),
        report.light,
        f"{said}{signed}",
    )
