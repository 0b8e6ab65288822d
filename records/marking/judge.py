"""Holding a mark against the rules."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from records.marking.answer import Answer
from records.marking.facts import MarkFacts, PieceFacts
from records.marking.questions import CHECKS
from records.marking.rules import Rule, load_rules

ADVICE = "This is a check against recorded figures, not legal advice; ask the competent authority."
OUTCOMES = {True: "pass", False: "fail", None: "unknown"}


@dataclass(frozen=True)
class Verdict:
    """What one rule says about one mark."""

    rule: Rule
    outcome: str
    required: str
    found: str
    sentence: str

    @property
    def passes(self) -> bool:
        return self.outcome == "pass"


def _applies(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> bool:
    """A rule about coins is silent on a mask, one about incuse letters on raised ones."""
    right_class = not rule.classes or not piece.object_class or piece.object_class in rule.classes
    right_technique = not rule.technique or not mark.technique or mark.technique == rule.technique
    right_metal = not rule.metals or not piece.metal or piece.metal in rule.metals
    return right_class and right_technique and right_metal


def _sentence(rule: Rule, outcome: str, answer: Answer) -> str:
    opening = {
        "pass": f"Passes: {answer.found}; required is {answer.required}.",
        "fail": f"Fails: {answer.found}; required is {answer.required}.",
        "unknown": f"Not to be judged yet: {answer.found}; required is {answer.required}. Record it.",
    }[outcome]
    if rule.evidence == "from memory":
        return f"{opening} The rule is quoted from memory; read its text."
    if answer.by_share and rule.share_evidence == "from memory":
        return f"{opening} The proportion is quoted from memory; read the rule’s text."
    return opening


def _verdict(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Verdict:
    answer = CHECKS[rule.check](rule, mark, piece)
    outcome = OUTCOMES[answer.passes]
    return Verdict(rule, outcome, answer.required, answer.found, _sentence(rule, outcome, answer))


def judge(mark: MarkFacts, piece: PieceFacts, rules: Iterable[Rule] | None = None) -> list[Verdict]:
    """One verdict for each rule that speaks about such a piece and such a mark.

    >>> mark = MarkFacts("OVM 2026 COPY", "reverse", "rim", "mould_borne", photographed=True)
    >>> sufficient(judge(mark, PieceFacts("medal", longest_mm=58.34)))
    True
    """
    chosen = load_rules() if rules is None else rules
    found = [_verdict(rule, mark, piece) for rule in chosen if _applies(rule, mark, piece)]
    passed = {verdict.rule.id for verdict in found if verdict.passes}
    return [_excused(verdict, passed) for verdict in found]


def _excused(verdict: Verdict, passed: set[str]) -> Verdict:
    """An exception of the same law is met: what it excuses stands in nobody's way."""
    met = next((ids for ids in verdict.rule.excused_by if passed.issuperset(ids)), None)
    if verdict.passes or met is None:
        return verdict
    words = f"Excused by {' and '.join(met)}: {verdict.found}; without the exception {verdict.required}."
    return replace(verdict, outcome="pass", sentence=words)


def sufficient(verdicts: Iterable[Verdict]) -> bool:
    """May the copy be accepted and labelled? Every gate rule passes; no rule asked means no."""
    gate = [verdict for verdict in verdicts if verdict.rule.gate]
    return bool(gate) and all(verdict.passes for verdict in gate)


def best_mark(marks: Iterable[MarkFacts], piece: PieceFacts) -> tuple[MarkFacts, list[Verdict]] | None:
    """The mark that carries the piece: one that opens the gate before one that only passes more rules."""
    judged = [(mark, judge(mark, piece)) for mark in marks]
    return max(judged, key=lambda pair: (sufficient(pair[1]), sum(v.passes for v in pair[1])), default=None)
