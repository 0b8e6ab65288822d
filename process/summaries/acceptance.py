"""A copy held against its specification, point by point: required, found, and whether it is met."""

from collections.abc import Iterable
from dataclasses import dataclass

from process.models import Inspection, MakingUp, Shell
from process.summaries.words import metal_word
from records.models import Measurement, Specification
from records.units import show

PASS, FAIL, NOT_MEASURED, OPEN = "pass", "fail", "not_measured", "open"
WORDS = {PASS: "met", FAIL: "not met", NOT_MEASURED: "not measured", OPEN: "to be answered"}
STATES = {PASS: "done", FAIL: "blocked", NOT_MEASURED: "look", OPEN: "open"}
# What only eyes can answer: column of the specification, and how the point is called.
SEEN = {"finish": "Finish", "fill": "Filling", "mark_words": "Marks", "tests": "Tests"}
TECHNIQUES = {
    MakingUp.Technique.JOINED: "hollow", MakingUp.Technique.UNIFACE: "hollow", MakingUp.Technique.CORE: "core",
    MakingUp.Technique.MATRIX: "matrix",
}  # fmt: skip
ACROSS = (Measurement.What.DIAMETER, Measurement.What.BREADTH)


@dataclass(frozen=True)
class Point:
    code: str
    label: str
    required: str
    found: str
    verdict: str
    reason: str = ""

    @property
    def word(self) -> str:
        return WORDS[self.verdict]

    @property
    def state(self) -> str:
        return STATES[self.verdict]


def specification_for(inspection: Inspection) -> Specification | None:
    """The last one of the commission for what the copy was taken from."""
    return _specified(inspection.copy.making_up, _shells(inspection.copy.making_up))


def _specified(making: MakingUp, shells: list[Shell]) -> Specification | None:
    if making.commission_id is None:
        return None
    rows = Specification.objects.filter(commission=making.commission_id).select_related("item", "commission")
    return rows.filter(item__in={shell.model_pk for shell in shells}).order_by("pk").last()


def points_of(inspection: Inspection) -> list[Point]:
    """None where nothing was specified."""
    return held_against(inspection)[1]


def held_against(inspection: Inspection) -> tuple[Specification | None, list[Point]]:
    """The specification of a copy and each of its points; the shells are read once for both."""
    making = inspection.copy.making_up
    shells = _shells(making)
    wanted = _specified(making, shells)
    if wanted is None:
        return None, []
    found = [
        _technique(wanted, making), _metal(wanted, shells), _mean(wanted), _least(wanted, inspection),
        *_number_of_points(wanted, shells), *_bends(wanted, shells), *_size(wanted, inspection),
    ]  # fmt: skip
    seen = [_seen(code, label, wanted, inspection) for code, label in SEEN.items() if getattr(wanted, code)]
    return wanted, found + seen


def faults(inspection: Inspection) -> list[str]:
    """Why it may not be accepted so."""
    points = points_of(inspection)
    unanswered = [point.label for point in points if point.verdict == OPEN]
    if unanswered:
        return [f"Hold it against the specification first: {', '.join(unanswered)} to be answered."]
    missed = [point for point in points if point.verdict == FAIL]
    if missed and inspection.decision == Inspection.Decision.ACCEPT:
        named = "; ".join(f"{point.label}: {point.required} required, {point.found} found" for point in missed)
        return [f"The specification is not met ({named}): accept with a concession, rework or reject."]
    return []


def _shells(making: MakingUp) -> list[Shell]:
    rows = Shell.objects.filter(making_up=making).select_related(
        "item", "cathode__run", "cathode__mould", "cathode__core__pull__mould"
    )
    shells = list(rows.prefetch_related("thickness_points", "coupon_tests"))
    for shell in shells:
        mould = shell.cathode.mould or (shell.cathode.core and shell.cathode.core.pull.mould)
        shell.model_pk = mould.model_id if mould else None
    return shells


def _technique(wanted: Specification, making: MakingUp) -> Point:
    met = TECHNIQUES[MakingUp.Technique(making.technique)] == wanted.technique
    required, found = wanted.get_technique_display(), making.get_technique_display()
    return Point("technique", "Technique", required, found, PASS if met else FAIL)


def _metal(wanted: Specification, shells: Iterable[Shell]) -> Point:
    ions = sorted({shell.cathode.run.ion for shell in shells})
    met = ions == [wanted.metal_ion]
    return Point("metal", "Metal", wanted.metal, ", ".join(map(metal_word, ions)), PASS if met else FAIL)


def _mean(wanted: Specification) -> Point:
    """A mean follows from charge and mass; it is on the copy's page as calculated and stays that."""
    reason = "a mean is calculated from the mass, not measured"
    return Point("mean", "Mean thickness", show(wanted.thickness_mean_mm, "_mm"), "", NOT_MEASURED, reason)


def _least(wanted: Specification, inspection: Inspection) -> Point:
    required, least = f"at least {show(wanted.thickness_min_mm, '_mm')}", inspection.thickness_min_mm
    if least is None:
        return Point("least", "Least thickness", required, "", NOT_MEASURED, inspection.not_measured_reason)
    where = f", {inspection.thickness_place}" if inspection.thickness_place else ""
    verdict = PASS if least >= wanted.thickness_min_mm else FAIL
    return Point("least", "Least thickness", required, f"{show(least, '_mm')}{where}", verdict)


def _number_of_points(wanted: Specification, shells: Iterable[Shell]) -> Iterable[Point]:
    if wanted.points_count is not None:
        count = sum(len(shell.thickness_points.all()) for shell in shells)
        verdict = PASS if count >= wanted.points_count else FAIL
        yield Point("points", "Thickness points", f"at least {wanted.points_count}", str(count), verdict)


def _bends(wanted: Specification, shells: Iterable[Shell]) -> Iterable[Point]:
    if wanted.bends_count is None:
        return
    bends = [test.bends_count for shell in shells for test in shell.coupon_tests.all() if test.bends_count is not None]
    required = f"at least {wanted.bends_count}"
    if not bends:
        yield Point("bends", "Bends of the coupon", required, "", NOT_MEASURED, "no coupon was bent")
    else:
        verdict = PASS if min(bends) >= wanted.bends_count else FAIL
        yield Point("bends", "Bends of the coupon", required, str(min(bends)), verdict)


def _size(wanted: Specification, inspection: Inspection) -> Iterable[Point]:
    low, high = wanted.size_low_pct, wanted.size_high_pct
    if low is None and high is None:
        return
    bounds = [f"{word} {show(pct, '_pct')}" for word, pct in (("from", low), ("to", high)) if pct is not None]
    required = " ".join(bounds)
    rows = Measurement.objects.filter(item=wanted.item, what__in=ACROSS, length_mm__isnull=False)
    model = rows.order_by("measured_on", "pk").last()
    if model is None or inspection.diameter_mm is None:
        whose = f"{wanted.item.number} has no diameter or breadth" if model is None else "the copy was not measured"
        yield Point("size", "Size against the model", required, "", NOT_MEASURED, whose)
        return
    pct = (inspection.diameter_mm / model.length_mm - 1) * 100
    met = (low is None or pct >= low) and (high is None or pct <= high)
    found = f"{show(pct, '_pct', digits=2)} ({show(inspection.diameter_mm, '_mm')})"
    yield Point("size", "Size against the model", required, found, PASS if met else FAIL)


def _seen(code: str, label: str, wanted: Specification, inspection: Inspection) -> Point:
    answer = inspection.answers.get(code) or {}
    verdict, words = answer.get("verdict", OPEN), answer.get("words", "")
    found, reason = ("", words) if verdict == NOT_MEASURED else (words or WORDS[verdict], "")
    return Point(code, label, getattr(wanted, code), "" if verdict == OPEN else found, verdict, reason)
