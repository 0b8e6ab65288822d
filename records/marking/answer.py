"""What a question about a mark or a piece answers: passes or None where unknown, required, found."""

from collections.abc import Callable
from typing import NamedTuple

from records.marking.facts import MarkFacts, PieceFacts
from records.marking.rules import Rule

NOT_RECORDED = "not recorded"


class Answer(NamedTuple):
    passes: bool | None
    required: str
    found: str
    by_share: bool = False


Check = Callable[[Rule, MarkFacts, PieceFacts], Answer]
