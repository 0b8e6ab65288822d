"""Consent and concession: what they set going."""

from datetime import date, timedelta
from typing import Any

from django.core.exceptions import ValidationError
from django.db import transaction

from records import clock, gates
from records.models import Concession, Consent, Duty, Item, Party
from records.numbers import SERIES, with_next_number
from records.roles import REGISTRAR

MOULD_FATE_WORDS = {
    Consent.MouldFate.DESTROY: "Destroy the moulds of {items} before a witness",
    Consent.MouldFate.RETURN: "Return the moulds of {items} to {owner}",
}


def record_duties_of(*, consent: Consent) -> list[Duty]:
    """Dated duties that follow from a consent's conditions; called again, it corrects the open ones."""
    items = ", ".join(consent.items.values_list("number", flat=True))
    wanted = {}
    if consent.mould_fate_by and consent.mould_fate in MOULD_FATE_WORDS:
        words = MOULD_FATE_WORDS[consent.mould_fate].format(items=items, owner=consent.owner)
        wanted[words] = consent.mould_fate_by
    if consent.valid_to:
        wanted[f"The consent for {items} ends: finish or renew it"] = consent.valid_to
    with transaction.atomic():
        consent.duties.open().exclude(sentence__in=wanted).delete()
        return [_duty(consent, words, due_on) for words, due_on in wanted.items()]


def _duty(consent: Consent, words: str, due_on) -> Duty:
    duty, _ = Duty.objects.update_or_create(
        consent=consent, sentence=words[:300], done_on=None, defaults={"due_on": due_on, "role": REGISTRAR}
    )
    return duty


def give_concession(
    *, gate: str, check_names: list[str], items: list[Item], given_by: Party, role: str, reason: str,
    number: str = "", given_on: date | None = None, **more: Any,
) -> Concession:  # fmt: skip
    """Let named things pass named checks of a gate; the limits follow them and what is made of them."""
    if unknown := set(check_names) - set(gates.names_of(gate)):
        raise ValidationError(f"No check of the {gates.label_of(gate)} gate is called {', '.join(sorted(unknown))}.")
    if not check_names:
        raise ValidationError("Name at least one check: a concession never opens a gate as a whole.")

    def give(number: str) -> Concession:
        concession = Concession.objects.create(
            number=number, gate=gate, check_names=check_names, given_on=given_on or clock.today(), given_by=given_by,
            given_role=role, reason=reason, **more,
        )  # fmt: skip
        concession.items.set(items)
        return concession

    with transaction.atomic():
        return give(number) if number else with_next_number(Concession, SERIES["concession"], give)


def fulfil(*, duty: Duty, party: Party, words: str, on=None) -> None:
    """Write down that a duty was done, by whom and how."""
    with transaction.atomic():
        held = Duty.objects.select_for_update().get(pk=duty.pk)  # as it is now: others may have moved its day
        if held.done_on:
            raise ValidationError(f"Done already, on {clock.day_words(held.done_on)}, by {held.done_by}.")
        held.done_on, held.done_by, held.done_words = on or clock.today(), party, words
        held.save()


# A duty is shown as pressing from this long before it is due.
NOTICE = timedelta(days=20)
