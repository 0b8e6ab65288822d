"""Before the mark exists: which mark will do, and which would break the shell."""

from dataclasses import dataclass
from typing import Literal

from records.marking.facts import PieceFacts
from records.marking.rules import load_rules

# Common practice: a blow deeper than half of an unbacked wall tears it; 0.3 mm breaks a 0.4 mm shell.
_WALL_SHARE = 0.5


@dataclass(frozen=True)
class Advice:
    code: str
    severity: Literal["refuse", "warn", "note"]
    sentence: str


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
