"""The vocabulary out of the register and into it: what a file would change, and changing it."""

from collections.abc import Iterable
from dataclasses import dataclass
from hashlib import sha256
from typing import TYPE_CHECKING

from django.core.exceptions import ValidationError
from django.db import transaction

from records.models import Term

if TYPE_CHECKING:  # rdflib is read when somebody exports or imports, not at the start
    from records.skos.words import Word

FIELDS = ("definition", "default_stability", "pattern", "caution", "source", "identifiers", "is_retired")


@dataclass(frozen=True)
class Difference:
    """A word of a file that the register does not have as it stands there; `before` is empty for a new one."""

    term: Term
    changed: tuple[tuple[str, str, str], ...]  # (what, as it is, as it would be)

    @property
    def is_new(self) -> bool:
        return self.term.pk is None

    def __str__(self) -> str:
        return f"{self.term.label} ({self.term.group})" if self.term.group else self.term.label


def words_of(terms: Iterable[Term]) -> "list[Word]":
    from records.skos.words import Word

    return [
        Word(
            term.scheme, term.group, term.label, term.definition, term.default_stability, term.pattern, term.caution,
            term.source, tuple(sorted(term.addresses)), term.is_retired,
        )
        for term in terms
    ]  # fmt: skip


def differences(words: "Iterable[Word]") -> list[Difference]:
    """What the file says otherwise; a word that it does not name stays as it is. Raises skos.NotTaken with the line."""
    from records.skos.words import NotTaken

    known = {(term.scheme, term.group, term.label): term for term in Term.objects.all()}
    found = []
    for word in words:
        term = known.get(word.key) or Term(scheme=word.scheme, group=word.group, label=word.label)
        before = {name: getattr(term, name) for name in FIELDS}
        _lay(word, term)
        try:
            term.clean_fields()
        except ValidationError as error:
            name, sentences = next(iter(error.message_dict.items()))
            what = Term._meta.get_field(name).verbose_name
            raise NotTaken(f"“{word}”, {what}: {' '.join(sentences)}", word.line) from error
        changed = tuple(
            (str(Term._meta.get_field(n).verbose_name), _shown(before[n]), _shown(getattr(term, n)))
            for n in FIELDS if before[n] != getattr(term, n)
        )  # fmt: skip
        if changed or term.pk is None:
            found.append(Difference(term, changed))
    return found


def _lay(word: "Word", term: Term) -> None:
    """The columns as the file has them; a list of addresses in another order is the same list."""
    for name in FIELDS:
        if name != "identifiers":
            setattr(term, name, getattr(word, name))
        elif sorted(term.addresses) != list(word.identifiers):
            term.identifiers = "\n".join(word.identifiers)


def _shown(value: object) -> str:
    return {True: "yes", False: "no"}.get(value, str(value)) if isinstance(value, bool) else str(value)


def mark_of(found: Iterable[Difference]) -> str:
    """What a person has seen: another one as soon as file or register say something else."""
    told = "\n".join(f"{each.term.pk}|{each.term.scheme}|{each}|{each.changed}" for each in found)
    return sha256(told.encode()).hexdigest()[:16]


def take_in(*, words: "Iterable[Word]", seen: str) -> list[Difference]:
    """Write what the person has seen; if anything moved meanwhile nothing is written."""
    with transaction.atomic():
        found = differences(words)
        if mark_of(found) != seen:
            raise ValidationError("The words were changed meanwhile: look at the differences again.")
        for each in found:
            each.term.save()
    return found
