"""The conditions of a consent as data with their sentence: they travel with what is made."""

from dataclasses import dataclass

from records.clock import day_words
from records.models import Consent


@dataclass(frozen=True)
class Condition:
    """`code` says which column it comes from, so that a paper can set the evidence beside it."""

    code: str
    words: str

    def __str__(self) -> str:
        return self.words


def conditions_of(consent: Consent) -> list[Condition]:
    """Each condition that was set, one short sentence each."""
    said = {
        "valid_to": f"In force to {day_words(consent.valid_to)}." if consent.valid_to else "",
        "techniques": f"Techniques: {consent.techniques}." if consent.techniques else "",
        "materials_barred": f"Not allowed: {consent.materials_barred}." if consent.materials_barred else "",
        "temperature": _temperature(consent),
        "pulls": _at_most(consent.pulls_max_count, "pull", "pulls", " of each mould"),
        "copies": _at_most(consent.copies_max_count, "copy", "copies"),
        "sale": "" if consent.sale_allowed else "No sale.",
        "scan": "" if consent.scan_allowed else "No scan.",
        "presence": "Owner or conservator present at moulding." if consent.presence_required else "",
        "moulds": _mould_fate(consent),
        "label": f"Label: {consent.label_wording}" if consent.label_wording else "",
        "credit": f"Credit: {consent.credit}" if consent.credit else "",
        "own_words": consent.conditions,
    }
    return [Condition(code, words) for code, words in said.items() if words]


def _temperature(consent: Consent) -> str:
    highest = consent.temperature_max_degc
    return "" if highest is None else f"Nothing above {highest:g} °C."


def _at_most(count: int | None, one: str, many: str, of: str = "") -> str:
    return "" if count is None else f"At most {count} {one if count == 1 else many}{of}."


def _mould_fate(consent: Consent) -> str:
    if consent.mould_fate == consent.MouldFate.KEEP:
        return ""
    by = f" by {day_words(consent.mould_fate_by)}" if consent.mould_fate_by else ""
    return f"Moulds {consent.get_mould_fate_display()}{by}."
