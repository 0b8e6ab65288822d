"""What a new register starts with: the role groups and a vocabulary. Filled only where nothing stands yet."""

import tomllib
from pathlib import Path

from django.contrib.auth.models import Group
from django.db import transaction

from records.models import Term
from records.roles import ROLES

VOCABULARY = Path(__file__).with_name("vocabulary.toml")


def ensure_roles(**_signal: object) -> None:
    for role in ROLES:
        Group.objects.get_or_create(name=role)


def ensure_vocabulary(**_signal: object) -> None:
    """Fill each kind of words that the register never had; one that the museum has edited is never touched."""
    terms = tomllib.loads(VOCABULARY.read_text(encoding="utf-8"))
    known = set(Term.history.values_list("scheme", flat=True).distinct())
    with transaction.atomic():
        for scheme in set(terms) - known:
            for row in terms[scheme]:
                Term.objects.create(scheme=scheme, **row)
