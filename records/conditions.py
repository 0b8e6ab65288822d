"""The conditions of a consent as data with their sentence: they travel with what is made."""

from collections.abc import Iterable
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

    @property
    def bites(self) -> str:
        """The step that it stands before."""
        return BITES.get(self.code, "")


BITES = {
    "valid_to": "the moulding, each run", "techniques": "each run, the core, the making-up",
    "materials": "the moulding", "temperature": "the moulding",
    "purposes": "the moulding, how the copy is held, lent, given, touched",
    "pulls": "each run, each cast", "copies": "the moulding, the making-up",
    "sale": "the moulding, how the copy is held, a sale",
    "scan": "a scan that is sent", "presence": "the moulding", "moulds": "each run after that day, the mould’s end",
    "label": "the label’s approval and print",
}  # fmt: skip


def conditions_of(consent: Consent) -> list[Condition]:
    """Each condition that was set, one short sentence each."""
    said = {
        "valid_to": f"In force to {day_words(consent.valid_to)}." if consent.valid_to else "",
        "techniques": _techniques(consent),
        "materials": _materials(consent),
        "purposes": _listed("Only for: ", consent.purposes),
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


def _techniques(consent: Consent) -> str:
    allowed = [str(consent.Technique(each).label) for each in consent.techniques_allowed]
    return _sentences(f"Techniques: {consent.techniques}" if consent.techniques else "", _listed("Only: ", allowed))


def _materials(consent: Consent) -> str:
    barred = f"Not allowed: {consent.materials_barred}" if consent.materials_barred else ""
    only = _listed("Mould only of ", consent.materials_allowed)
    return _sentences(barred, only, _listed("No mould of ", consent.materials_excluded))


def _listed(before: str, things: Iterable[object]) -> str:
    named = "; ".join(map(str, things))
    return f"{before}{named}." if named else ""


def _sentences(*parts: str) -> str:
    return " ".join(f"{part.rstrip('.')}." for part in parts if part)


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
