"""Where the drying of a skinned core stands, in a word, a shape and a sentence."""

from datetime import datetime
from typing import Any

from django.utils import timezone

from process.chemistry.judgement import Weighing
from records import clock
from records.figures import Figure
from records.units import show

# Code: shape and word. “over” is over 100 % and not constant, “residue” constant over 100 %.
STANDINGS = {
    "unweighed": ("open", "not weighed"),
    "over": ("blocked", "do not close"),
    "drying": ("look", "still drying, do not close"),
    "constant": ("done", "constant mass"),
    "residue": ("look", "constant, over 100 %"),
    "early": ("blocked", "closed too early"),
}

OPEN = "The skinned core has not been weighed yet: surface-dry first, then again until its mass is constant."
UNWEIGHED = (
    "Closed without a weighing: nobody knows what stayed inside. Survey it sooner; watch for green spots and acid."
)
OVER = "{stands}: it has absorbed electrolyte. Keep drying and do not close it. {rule}{again}."
DRYING = "{stands}; its mass is not shown to be constant. {rule} before it is closed{again}."
EARLY = (
    "Closed at {stands}, before its mass was constant: solution may have stayed inside. "
    "Survey it sooner; watch for green spots and acid."
)
RULE = "Two weighings at least 7 days apart must agree within 0.02 % ({near})"
CONSTANT = "{stands}; it agrees within {near} with {earlier} of {days} days before"
RESIDUE = ". The mass is constant and still over 100 %: salt may stay inside. Survey at three months, watch the pH."


def sentence_of(code: str, last: Any, since: Weighing | None, again: datetime | None, within: Figure | None) -> str:
    """`last` is the last weighing with what follows from it, `since` the earlier one that agrees with it."""
    if last is None:
        return UNWEIGHED if code == "early" else OPEN
    near = show(within.value, "_g") if within and within.value is not None else "0.02 %"
    stands, rule = _stands(last), RULE.format(near=near)
    if code == "over":
        return OVER.format(stands=stands, rule=rule, again=_at_the_earliest(again))
    if code == "drying":
        return DRYING.format(stands=stands, rule=rule, again=_at_the_earliest(again))
    if code == "early" or since is None:
        return EARLY.format(stands=stands)
    days = (last.weighing.at - since.instant).days
    earlier = show(since.mass.m_as("g"), "_g", digits=1)
    settled = CONSTANT.format(stands=stands, near=near, earlier=earlier, days=days)
    return settled + (RESIDUE if code == "residue" else ": the mass is constant, and it may be closed.")


def _stands(last: Any) -> str:
    """“1507.2 g on 16 April 2026, 100.5 % of the calculated metal”."""
    stands = f"{show(last.weighing.mass_g, '_g', digits=1)} on {clock.day_words(last.weighing.at)}"
    found = last.efficiency
    return f"{stands}, {show(found.value, '_pct')} of the calculated metal" if found and found.value else stands


def _at_the_earliest(again: datetime | None) -> str:
    if again is None:
        return ""
    day = timezone.localdate(again)
    return f"; weigh again on {clock.day_words(day)} or later" if day > clock.today() else "; weigh again now"
