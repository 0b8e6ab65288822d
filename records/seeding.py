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
    """Fill an empty vocabulary; one that the museum has begun to edit is never touched."""
    if Term.objects.exists():
        return
    terms = tomllib.loads(VOCABULARY.read_text(encoding="utf-8"))
    with transaction.atomic():
        for scheme, rows in terms.items():
            for row in rows:
                Term.objects.create(scheme=scheme, **row)
