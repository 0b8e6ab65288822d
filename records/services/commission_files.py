"""A file is closed by the registrar when nothing is open any more, and opened again with a reason."""

from django.core.exceptions import ValidationError
from django.db import transaction

from records import clock
from records.commission_file import duties_of, file_rows, open_matters, read_file
from records.models import Commission, FileStep, Party

from .permissions import fulfil


def close_file(*, commission: Commission, outcome: str, words: str, person: Party, role: str) -> FileStep:
    """Refused, with the list, while something is open."""
    if outcome != FileStep.Outcome.FULFILLED and not words.strip():
        raise ValidationError({"words": "Say who withdrew or refused it, and why: the file is read again in years."})
    with transaction.atomic():
        held = _hold(commission)
        if held.closed_on:
            raise ValidationError(f"Closed already, on {clock.day_words(held.closed_on)}.")
        if matters := open_matters(read_file(held), outcome):
            raise ValidationError([f"{m.sentence}{f' Ask the {m.ask}.' if m.ask else ''}" for m in matters])
        for duty in duties_of(held):
            if not duty.consent.commissions.exclude(pk=held.pk).filter(closed_on=None).exists():
                fulfil(duty=duty, party=person, words=f"{held.number} is closed: the work that it was for has ended")
        return _step(held, FileStep.Kind.CLOSED, outcome=outcome, words=words, person=person, role=role)


def reopen_file(*, commission: Commission, words: str, person: Party, role: str) -> FileStep:
    if not words.strip():
        raise ValidationError({"words": "Say why it is opened again."})
    with transaction.atomic():
        held = _hold(commission)
        if held.closed_on is None:
            raise ValidationError("The file is open.")
        return _step(held, FileStep.Kind.REOPENED, words=words, person=person, role=role)


def _hold(commission: Commission) -> Commission:
    """As it is now: others may have corrected it."""
    return file_rows().select_for_update(of=("self",)).get(pk=commission.pk)


def _step(held: Commission, kind: str, **about: object) -> FileStep:
    today = clock.today()
    held.closed_on = today if kind == FileStep.Kind.CLOSED else None
    held.save()
    return FileStep.objects.create(commission=held, kind=kind, happened_on=today, **about)
