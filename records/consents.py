"""The conditions of an owner's consent, each asked at the step that it concerns.

A step says what it is about to do (`Act`); what a consent does not allow is answered with the consent's own sentence,
and is passed by a concession that names the condition, or recorded afterwards.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date

from records import access
from records.clock import day_words
from records.conditions import conditions_of
from records.gates import Check, Subject, gate_check
from records.models import Commission, Consent, Gate, Party, Term
from records.purposes import SALE
from records.roles import CONSERVATOR, REGISTRAR


@dataclass(frozen=True)
class Act:
    """What a step is about to do; what it leaves empty is not asked. `words` says it: “M-2026-09 was taken”."""

    words: str
    commission: Commission | None = None
    is_moulding: bool = False
    uses_mould: bool = False
    techniques: tuple[str, ...] = ()  # of Consent.Technique; several where the step leaves it open
    material: Term | None = None
    temperature_degc: float | None = None
    purposes: tuple[str, ...] = ()  # as the list of purposes calls them
    present: tuple[Party, ...] = ()
    is_scan: bool = False
    mould_fate: str = ""  # of Consent.MouldFate, or another end that no owner asks for
    witness: Party | None = None
    consents: list[Consent] = field(default_factory=list)  # of a copy: those of all that it was made from


Ask = Callable[[Consent, Act, date], str]


def bearing(subject: Subject, act: Act, on: date) -> list[Consent]:
    """The consents whose conditions bind the step: those for its commission, in force if any is; all must allow it."""
    rows = act.consents or [row for row in _rows(subject) if row.valid_from <= on]
    named = [row for row in rows if act.commission and act.commission.pk in row.commission_keys]
    rows = named or rows
    return [row for row in rows if row.in_force_on(on)] or rows


def _rows(subject: Subject) -> list[Consent]:
    return list(subject.thing.consents.with_commissions())


def _condition(name: str, code: str, ask: str) -> Callable[[Ask], Ask]:
    """Register a question of the permission gate; it is asked only of a step that says what it does."""

    def register(question: Ask) -> Ask:
        def check(subject: Subject, on: date) -> Check | None:
            act = subject.act
            if not isinstance(act, Act):
                return None
            asked = ((consent, question(consent, act, on)) for consent in bearing(subject, act, on))
            against = [f"{quoted(consent, code)} {fault}" for consent, fault in asked if fault]
            return Check(name, False, " ".join(against)[:400], ask) if against else None

        gate_check(Gate.PERMISSION, name)(check)
        return question

    return register


def quoted(consent: Consent, code: str) -> str:
    """The consent with the sentence that bites: “Consent of the Trust, 22 January 2026: “No sale.””."""
    words = next((each.words for each in conditions_of(consent) if each.code == code), "")
    said = f": “{words.rstrip('.')}.”" if words else ""
    return f"Consent of {consent.owner}, {day_words(consent.given_on)}{said}"


@_condition("consent: technique", "techniques", REGISTRAR)
def technique(consent: Consent, act: Act, on: date) -> str:
    allowed = set(consent.techniques_allowed)
    if not act.techniques or not allowed or allowed & set(act.techniques):
        return ""
    return f"{act.words}: {' or '.join(str(Consent.Technique(each).label) for each in act.techniques)}."


@_condition("consent: mould material", "materials", CONSERVATOR)
def material(consent: Consent, act: Act, on: date) -> str:
    if act.material is None:
        return ""
    label, allowed = act.material.label, consent.materials_allowed
    barred = label in consent.materials_excluded or (allowed and label not in allowed)
    return f"{act.words} in {label}." if barred else ""


@_condition("consent: temperature", "temperature", CONSERVATOR)
def temperature(consent: Consent, act: Act, on: date) -> str:
    highest = consent.temperature_max_degc
    if highest is None or not act.is_moulding:
        return ""
    if act.temperature_degc is None:
        return f"{act.words}; at what temperature is not written."
    return f"{act.words} at {act.temperature_degc:g} °C." if act.temperature_degc > highest else ""


@_condition("consent: purpose", "purposes", REGISTRAR)
def purpose(consent: Consent, act: Act, on: date) -> str:
    """A sale is asked by itself, below: what a consent says of it stands in one place."""
    barred = [each for each in act.purposes if each != SALE and each not in consent.purposes]
    return f"{act.words}; purpose: {' and '.join(barred)}." if barred and consent.purposes else ""


@_condition("consent: presence", "presence", CONSERVATOR)
def presence(consent: Consent, act: Act, on: date) -> str:
    if not consent.presence_required or not act.is_moulding:
        return ""
    ours = {consent.owner_id, consent.given_by_id}
    if any(party.pk in ours or _is_conservator(party) for party in act.present):
        return ""
    named = ", ".join(str(party) for party in act.present) or "nobody named"
    return f"{act.words}; present: {named}."


def _is_conservator(party: Party) -> bool:
    return party.user is not None and CONSERVATOR in access.roles_of(party.user)


@_condition("consent: sale", "sale", REGISTRAR)
def sale(consent: Consent, act: Act, on: date) -> str:
    return f"{act.words} for sale." if SALE in act.purposes and not consent.sale_allowed else ""


@_condition("consent: scan", "scan", REGISTRAR)
def scan(consent: Consent, act: Act, on: date) -> str:
    return f"{act.words}." if act.is_scan and not consent.scan_allowed else ""


@_condition("consent: end of the moulds", "moulds", REGISTRAR)
def end_of_the_moulds(consent: Consent, act: Act, on: date) -> str:
    """A mould that should be gone is not used any more."""
    by = consent.mould_fate_by
    if not act.uses_mould or consent.mould_fate == Consent.MouldFate.KEEP or by is None or on <= by:
        return ""
    return f"{act.words} on {day_words(on)}."


MOULD_FATE = "consent: what becomes of the mould"


@_condition(MOULD_FATE, "moulds", REGISTRAR)
def what_becomes_of_the_mould(consent: Consent, act: Act, on: date) -> str:
    """Asked when a mould comes to its end: as the owner decided, before a witness, in time."""
    wanted, by = consent.mould_fate, consent.mould_fate_by
    if not act.mould_fate or wanted == Consent.MouldFate.KEEP:
        return ""
    if act.mould_fate != wanted:
        return f"{act.words}."
    if wanted == Consent.MouldFate.DESTROY and act.witness is None:
        return f"{act.words}; witness: nobody named."
    return f"{act.words} on {day_words(on)}." if by and on > by else ""


@_condition("consent: still in force", "valid_to", REGISTRAR)
def still_in_force(consent: Consent, act: Act, on: date) -> str:
    """Asked where a mould is used; for the moulding itself the gate asks for a consent in force anyway."""
    if not act.uses_mould or consent.in_force_on(on):
        return ""
    return f"{act.words} on {day_words(on)}."


# The wording of a label is held against the consent where it is written, approved and printed (records.labelling).
LABEL = "consent: label wording"
gate_check(Gate.IDENTIFY, LABEL)(lambda subject, on: None)
