"""What process tells a family's page: how often a mould was used, what became of it, and what is due."""

from collections.abc import Iterable

from django.db.models import Count, Min

from process.models import Mould
from process.summaries.editions import editions_of
from process.summaries.family_drift import sizes_along
from records.clock import day_words
from records.extensions import FamilyNote, family_notes, size_sources
from records.models import Consent, Item


def mould_notes(things: Iterable[Item]) -> dict[int, FamilyNote]:
    """One note for each mould; the lower of what it bears and what the consents allow rules."""
    keys = [thing.pk for thing in things if thing.kind == Item.Kind.MOULD]
    rows = Mould.objects.filter(pk__in=keys).annotate(
        used_count=Count("pulls", distinct=True), consent_count=Min("model__consents__pulls_max_count")
    )
    moulds = list(rows)
    due = _due_by_model({mould.model_id for mould in moulds})
    return {mould.pk: _note(mould, due) for mould in moulds}


def _note(mould: Mould, due: dict[int, str]) -> FamilyNote:
    allowed = min(count for count in (mould.pulls_allowed_count, mould.consent_count) if count is not None)
    fate = mould.get_fate_display() + (f" {day_words(mould.fate_on)}" if mould.fate_on else "")
    side = f"{mould.get_side_display()}: " if mould.side else ""
    is_here = mould.fate == Mould.Fate.IN_STORE
    uses = f"{side}{mould.used_count} of {allowed} {'pull' if allowed == 1 else 'pulls'}"
    return FamilyNote(uses, fate, due.get(mould.model_id, "") if is_here else "", mould.fate in GONE)


GONE = {Mould.Fate.DESTROYED, Mould.Fate.LOST}


def _due_by_model(models: set[int]) -> dict[int, str]:
    """“to be destroyed by 30 Apr 2026”, from the consents for each model."""
    rows = Consent.objects.filter(items__in=models).exclude(mould_fate=Consent.MouldFate.KEEP).distinct()
    return {
        item.pk: _due_words(consent)
        for consent in rows.prefetch_related("items")
        for item in consent.items.all()
        if item.pk in models
    }


def _due_words(consent: Consent) -> str:
    by = f" by {day_words(consent.mould_fate_by)}" if consent.mould_fate_by else ""
    return f"{consent.get_mould_fate_display()}{by}"


def copy_notes(things: Iterable[Item]) -> dict[int, FamilyNote]:
    """“copy 1 of 3 authorised, 2 made” for each copy made here, counted by the piece that it repeats."""
    keys = [thing.pk for thing in things if thing.kind == Item.Kind.COPY]
    return {key: FamilyNote(edition.words) for key, edition in editions_of(keys).items()} if keys else {}


family_notes += [mould_notes, copy_notes]
size_sources.append(sizes_along)
