"""Findings for tests, made and typed, with the words that the register brings along."""

from records.models import ConditionReport, Finding, Term


def term(label: str) -> Term:
    """A word of the vocabulary that the register brings with it."""
    return Term.objects.get(scheme="finding", group="any object", label=label)


def make_finding(report: ConditionReport, label: str = "dent", **fields) -> Finding:
    defaults = {"location": "edge, 4 h", "severity": 1, "stability": "stable", "position_count": 1}
    return Finding.objects.create(report=report, term=term(label), **defaults | fields)


def typed_finding(**changes) -> dict:
    typed = {"term": term("dent").pk, "location": "edge, 4 h", "severity": "3", "stability": "stable", "urgency": "0"}
    return typed | changes
