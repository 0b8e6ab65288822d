"""What a new register starts with: role groups, a vocabulary, intervals of surveys. Filled where nothing stands yet."""

import tomllib
from collections.abc import Iterator
from pathlib import Path

from django.contrib.auth.models import Group
from django.db import transaction

from records.models import Compatibility, SurveyRule, Term
from records.roles import ROLES

STARTING = "the register’s starting list, in its own words"
VOCABULARY = Path(__file__).with_name("vocabulary.toml")
COMPATIBILITY = Path(__file__).with_name("compatibility.toml")
SURVEY_RULES = Path(__file__).with_name("survey_rules.toml")


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
                Term.objects.create(scheme=scheme, **{"source": STARTING} | row)


def ensure_compatibility(**_signal: object) -> None:
    """Fill an empty table once the words stand; one that the museum has begun to edit is never touched."""
    if Compatibility.objects.exists():
        return
    table = tomllib.loads(COMPATIBILITY.read_text(encoding="utf-8"))
    named = {(term.scheme, term.label): term for term in Term.objects.filter(scheme__in=["surface", "mould_material"])}
    with transaction.atomic():
        for surface, material, about in _compatible(table):
            pair = named.get(("surface", surface)), named.get(("mould_material", material))
            if all(pair):
                Compatibility.objects.create(surface=pair[0], material=pair[1], **about)


def _compatible(table: dict) -> Iterator[tuple[str, str, dict[str, str]]]:
    for surface, verdicts in table["surface"].items():
        for name, said in verdicts.items():
            verdict, words = (said, "") if isinstance(said, str) else said
            for material in table["groups"].get(name, [name]):
                source = table["literature" if name in {"silicone", "latex"} else "memory"]
                yield surface, material, {"verdict": verdict, "words": words, "source": source}
        for row in table["everywhere"]:
            about = {"verdict": row["verdict"], "words": row["words"], "source": table["memory"]}
            yield surface, row["material"], about


def ensure_survey_rules(**_signal: object) -> None:
    """Each history has its row; one that the museum has edited stays as it is."""
    known = set(SurveyRule.objects.values_list("history_code", flat=True))
    with transaction.atomic():
        for row in tomllib.loads(SURVEY_RULES.read_text(encoding="utf-8"))["rule"]:
            if row["history_code"] not in known:
                SurveyRule.objects.create(**row)
