"""Before the mark exists: which mark will do, and which would break the shell."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from records.marking.facts import METHODS, MarkFacts, PieceFacts
from records.marking.judge import judge
from records.marking.rules import Rule, load_rules

# Common practice: a blow deeper than half of an unbacked wall tears it; 0.3 mm breaks a 0.4 mm shell.
_WALL_SHARE = 0.5
# Common practice for capitals without serifs: a letter with its space is about 0.8 of its height wide.
LETTER_SHARE = 0.8
# A line of letters longer than this share of the piece does not stand on it.
ROOM_SHARE = 0.8
HEIGHTS_MM = (1.0, 1.5, 2.0, 2.5, 3.0, 4.0)
SIZED = ("height", "width")


@dataclass(frozen=True)
class Advice:
    code: str
    severity: Literal["refuse", "warn", "note"]
    sentence: str


@dataclass(frozen=True)
class Trial:
    """Letters of one height, tried on the piece: how much room they ask, and what the rules would say."""

    height_mm: float
    copy_width_mm: float
    text_width_mm: float
    fits: bool | None
    outcome: str
    failing: tuple[Rule, ...]


def punch_risk(depth_mm: float, wall_mm: float, backed: bool) -> Advice | None:
    """A warning where a punch of this depth would break the wall; None where it may be struck."""
    if depth_mm <= 0 or wall_mm <= 0:
        raise ValueError("Depth of the punch and thickness of the wall must be more than 0 mm. Measure them again.")
    if backed or depth_mm <= wall_mm * _WALL_SHARE:
        return None
    return Advice(
        "punch.breaks",
        "refuse",
        f"A punch {depth_mm:.2f} mm deep breaks an unbacked wall of {wall_mm:.2f} mm. "
        "Let the letters into the mould, so that the deposit carries them, or mark after backing.",
    )


def _least_mm(rule_id: str, piece: PieceFacts) -> float:
    rule = next(rule for rule in load_rules() if rule.id == rule_id)
    share_mm = piece.share_mm(rule.or_share_of, rule.share)
    return rule.at_least_mm if share_mm is None else min(rule.at_least_mm, share_mm)


def advise(piece: PieceFacts, wall_mm: float | None = None, backed: bool = False) -> list[Advice]:
    """What to plan before the mould is made: the smallest letters that will pass, and how to get them."""
    height, width, depth = (_least_mm(f"us-copy.{size}", piece) for size in ("height", "width", "depth"))
    found = [
        Advice(
            "letters",
            "note",
            f"COPY on the obverse or reverse, letters at least {height:.2f} mm high, the word "
            f"{width:.2f} mm wide, {depth:.2f} mm deep, passes the recorded figures for this size.",
        )
    ]
    risk = punch_risk(depth, wall_mm, backed) if wall_mm else None
    return [*found, risk] if risk else found


def trials(text: str, piece: PieceFacts, rules: Iterable[Rule]) -> list[Trial]:
    """The mark in letters of usual heights: which would pass the sizes that the rules ask, and stand on the piece."""
    asked = [rule for rule in rules if rule.check in SIZED]
    return [_trial(text, height_mm, piece, asked) for height_mm in HEIGHTS_MM]


def _trial(text: str, height_mm: float, piece: PieceFacts, rules: list[Rule]) -> Trial:
    copy_mm, text_mm = (len(words) * LETTER_SHARE * height_mm for words in ("COPY", text))
    verdicts = judge(MarkFacts(text, height_mm=height_mm, width_mm=copy_mm), piece, rules)
    failing = {verdict.rule.id: verdict.rule for verdict in verdicts if verdict.outcome == "fail"}
    fits = None if piece.longest_mm is None else text_mm <= piece.longest_mm * ROOM_SHARE
    unsure = any(verdict.outcome == "unknown" for verdict in verdicts) or fits is None
    outcome = "fail" if failing or fits is False else "unknown" if unsure else "pass"
    return Trial(height_mm, copy_mm, text_mm, fits, outcome, tuple(failing.values()))


def ways(
    depth_mm: float, wall_mm: float | None, backed: bool
) -> list[tuple[str, Literal["pass", "fail", "unknown"], str]]:
    """Each way of making a mark of this depth: its words, whether it will do, and why."""
    answers: list[tuple[str, Literal["pass", "fail", "unknown"], str]] = []
    for code, (words, permanent) in METHODS.items():
        if not permanent:
            answers.append((words, "fail", "Only a temporary mark; a permanent one has to follow."))
        elif code in ("mould_borne", "plate"):
            answers.append((words, "pass", "The wall keeps its thickness."))
        elif wall_mm is None:
            answers.append((words, "unknown", "Say how thick the wall is, and whether it is backed."))
        else:
            risk = punch_risk(depth_mm, wall_mm, backed)
            cuts = "Cut" if code != "punch" else "Struck"
            fine = f"{cuts} {depth_mm:.2f} mm deep into {'a backed wall' if backed else 'this wall'}, it will do."
            answers.append((words, "fail" if risk else "pass", _of(code, risk) if risk else fine))
    return answers


def _of(code: str, risk: Advice) -> str:
    if code == "punch":
        return risk.sentence
    return "Cut deeper than half of an unbacked wall, it tears there later. Use the mould, or back it first."
