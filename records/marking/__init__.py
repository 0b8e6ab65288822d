"""Is the mark on a copy good enough? Rules are data with their citation; answers are pass, fail or unknown.

Pure: facts in, verdicts out. Nothing here says that a mark is legal.
"""

from records.marking.before import Trial, advise, punch_risk, trials, ways
from records.marking.facts import FACES, METHODS, TECHNIQUES, MarkFacts, PieceFacts
from records.marking.judge import ADVICE, Verdict, best_mark, judge, sufficient
from records.marking.questions import ABOUT_THE_PIECE, OFFERED
from records.marking.rules import Rule, load_rules, read_rule

__all__ = [
    "ABOUT_THE_PIECE", "ADVICE", "FACES", "METHODS", "OFFERED", "TECHNIQUES", "MarkFacts", "PieceFacts", "Rule",
    "Trial", "Verdict", "advise", "best_mark", "judge", "load_rules", "punch_risk", "read_rule", "sufficient", "trials",
    "ways",
]  # fmt: skip
