"""What laws on money ask of a piece that looks like a coin: words, size, metal, age and currency of its original."""

import re

from records.marking.answer import NOT_RECORDED, Answer
from records.marking.checks import says_copy
from records.marking.facts import MarkFacts, PieceFacts
from records.marking.rules import Rule

_EURO = re.compile(r"\beuro(?:s|\s?cents?)?\b|€", re.IGNORECASE)
_PRECIOUS = ("gold", "silver", "platinum")


def euro_words(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """Neither “euro” nor “euro cent” nor its sign; the likeness of a design is for the eye."""
    required = "neither “euro”, “euro cent” nor €, and no design like a euro coin (compare by eye)"
    read = " ".join(filter(None, [piece.inscription, mark.text]))
    if found := _EURO.search(read):
        return Answer(False, required, f"“{found.group()}”")
    return Answer(
        True if piece.inscription else None,
        required,
        "not in its words" if piece.inscription else "inscription not recorded",
    )


def euro_band(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """Inside when diameter and the share of the edge in it both lie in the band."""
    low, high, share_low, share_high = (rule.limits[name] for name in ("low_mm", "high_mm", "low_pct", "high_pct"))
    required = f"not both {low:.2f}–{high:.2f} mm across and an edge of {share_low:.2f}–{share_high:.2f} % of that"
    if piece.longest_mm is None:
        return Answer(None, required, f"diameter {NOT_RECORDED}")
    if not low <= piece.longest_mm <= high:
        return Answer(True, required, f"{piece.longest_mm:.2f} mm across")
    if piece.edge_mm is None:
        return Answer(None, required, f"{piece.longest_mm:.2f} mm across, height of the edge {NOT_RECORDED}")
    share_pct = 100 * piece.edge_mm / piece.longest_mm
    inside = share_low - 1e-9 <= share_pct <= share_high + 1e-9
    return Answer(not inside, required, f"{piece.longest_mm:.2f} mm across, edge {share_pct:.2f} %")


def euro_near(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """Outside every pair of diameter and edge of the finer table."""
    required = "outside each pair of diameter and edge of the table"
    if piece.longest_mm is None or piece.edge_mm is None:
        return Answer(None, required, f"diameter or height of the edge {NOT_RECORDED}")
    found = f"{piece.longest_mm:.2f} mm across, edge {piece.edge_mm:.2f} mm"
    for low, high, edge_low, edge_high in rule.rows:
        if low <= piece.longest_mm <= high and edge_low <= piece.edge_mm <= edge_high:
            return Answer(False, required, f"{found}: inside {low}–{high} / {edge_low}–{edge_high} mm")
    return Answer(True, required, found)


def euro_metal(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """Outside the conductivities that belong to the diameter; a second range counts only for its magnetic moments."""
    required = "an electrical conductivity outside the ranges for its diameter"
    if piece.longest_mm is None or piece.conductivity_pct is None:
        return Answer(None, required, f"diameter or conductivity {NOT_RECORDED}")
    found = f"{piece.conductivity_pct:.1f} % IACS at {piece.longest_mm:.2f} mm"
    across_mm = round(piece.longest_mm, 2)  # the table has hundredths, without room between its rows
    for low, high, least, most, by_moment in rule.rows:
        if low <= across_mm <= high and least <= piece.conductivity_pct <= most:
            if not by_moment:
                return Answer(False, required, found)
            if piece.moment_uvs_cm is None:
                return Answer(None, required, f"{found}, magnetic moment {NOT_RECORDED}")
            if rule.limits["low_uvs_cm"] <= piece.moment_uvs_cm <= rule.limits["high_uvs_cm"]:
                return Answer(False, required, f"{found}, {piece.moment_uvs_cm:.1f} µVs·cm")
    return Answer(True, required, found)


def euro_exception(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """One of: fineness, a hole or few corners, or both tables missed (see eu-2182.near and eu-2182.metal)."""
    required = "gold ≥ 375 ‰, silver ≥ 500 ‰ or platinum ≥ 850 ‰; a central hole over 6 mm; or up to six corners"
    least = rule.limits.get(piece.metal)
    if least is not None and piece.fineness_permille is not None and piece.fineness_permille >= least:
        return Answer(True, required, f"{piece.metal}, {piece.fineness_permille:.0f} ‰")
    if piece.hole_mm is not None and piece.hole_mm > rule.limits["hole_mm"]:
        return Answer(True, required, f"a hole of {piece.hole_mm:.1f} mm")
    if piece.corner_count and 3 <= piece.corner_count <= rule.limits["corners"]:
        return Answer(True, required, f"{piece.corner_count} corners")
    if piece.metal in _PRECIOUS and piece.fineness_permille is None:
        return Answer(None, required, f"{piece.metal}, fineness {NOT_RECORDED}")
    found = f"{piece.metal}, no hole or corners recorded" if piece.metal else NOT_RECORDED
    return Answer(False if piece.metal else None, required, found)


def imitation_or_old(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """Designed as an imitation (a word says so), or after a coin made before a year."""
    before = int(rule.limits["before_year"])
    required = f"a visible word that says copy, or an original from before {before}"
    said = says_copy(rule, mark, piece)
    if piece.original_year is not None and piece.original_year < before:
        return Answer(True, required, f"original of {piece.original_year}")
    if said.passes:
        return Answer(True, required, said.found)
    year = f"original of {piece.original_year}" if piece.original_year else f"year {NOT_RECORDED}"
    unknown = said.passes is None or piece.original_year is None
    return Answer(None if unknown else False, required, f"{said.found}, {year}")


def not_current(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """A copy of money that is still money, even of one side, can be a counterfeit whatever is stamped on it."""
    side = "one-sided piece, " if piece.one_sided else ""
    found = {None: f"whether it is current is {NOT_RECORDED}", True: "current money", False: "no longer money"}
    passes = None if piece.is_current is None else not piece.is_current
    return Answer(passes, "an original that is not used as money now", f"{side}{found[piece.is_current]}")


def resembles_coin(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """An article that resembles a genuine coin: for an old coin the recorded figures cannot tell."""
    required = "no likeness to a genuine coin"
    if piece.object_class != "coin":
        return Answer(True if piece.object_class else None, required, piece.object_class or f"class {NOT_RECORDED}")
    found = "a coin that is money now" if piece.is_current else "a coin; whether an old one counts is for the authority"
    return Answer(False if piece.is_current else None, required, found)
