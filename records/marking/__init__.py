"""Is the mark on a copy good enough? Rules are data with their citation; answers are pass, fail or unknown.

Pure: facts in, verdicts out. Nothing here says that a mark is legal.
"""

from records.marking.before import advise, punch_risk
from records.marking.facts import FACES, METHODS, TECHNIQUES, MarkFacts, PieceFacts
from records.marking.judge import ADVICE, Verdict, best_mark, judge, sufficient
from records.marking.rules import Rule, load_rules

__all__ = [
    "ADVICE", "FACES", "METHODS", "TECHNIQUES", "MarkFacts", "PieceFacts", "Rule", "Verdict",
    "advise", "best_mark", "judge", "load_rules", "punch_risk", "sufficient",
]  # fmt: skip
