"""The charge that a trace proves, by the decisions of a person; the same file and decisions give the same figures."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from process.chemistry.traces import GAP_INTERVALS, Gap, gaps_among, trace_charge
from process.tracing.absence import gap_key
from process.tracing.case import Case, Context
from process.tracing.cuts import Cut, outside_of
from process.tracing.findings import Finding, decided
from process.tracing.samples import Floats
from process.tracing.stretches import Stretch, zero_stretches


@dataclass(frozen=True)
class Counted:
    """The samples that count after the decisions, in time order."""

    times_s: Floats
    currents_a: Floats
    known_ah: float
    gaps: tuple[Gap, ...]
    joints: tuple[int, ...] = ()  # last samples before a stretch in which another trace rules


@dataclass(frozen=True)
class Evaluation:
    """`known_ah` is integrated; `bridged_ah` is added over gaps that a person bridged; `open_ah` may come on top."""

    known_ah: float
    bridged_ah: float
    open_ah: float
    absolute_ah: float
    switching_ah: float
    starts_s: float
    ends_s: float
    interval_s: float
    energised_s: float
    sample_count: int
    left_out_count: int
    gaps: tuple[Gap, ...]
    stretches: tuple[Stretch, ...]
    times_s: Floats
    currents_a: Floats

    @property
    def charge_ah(self) -> float:
        """The trace's figure: what is known and what was bridged."""
        return self.known_ah + self.bridged_ah

    @property
    def most_ah(self) -> float:
        return self.charge_ah + self.open_ah


def count(case: Case, findings: list[Finding], decisions: dict[str, str], cuts: Sequence[Cut] = ()) -> Counted | None:
    """Apply every decision but those on gaps; None where nothing is left to integrate.

    The same decisions are added up once: each finding asks what its choices would make of the charge.
    """
    # A restart is a word about who switched, and changes no sample.
    asked = tuple((each.key, decided(each, decisions)) for each in findings if each.kind not in {"gap", "restart"})
    key = asked, tuple(tuple(cut) for cut in cuts)
    if key not in case.counted:
        case.counted[key] = _counted(case, findings, decisions, cuts)
    return case.counted[key]


def _counted(case: Case, findings: list[Finding], decisions: dict[str, str], cuts: Sequence[Cut]) -> Counted | None:
    times, currents, keep = case.times_s, case.currents_a, None
    for finding in findings:
        choice = decided(finding, decisions)
        if finding.kind == "clock" and choice == "shift":
            times = times + finding.number
        elif choice in {"absolute", "mend"}:
            currents = currents.copy() if currents is case.currents_a else currents
            part = currents[finding.indices]
            currents[finding.indices] = np.abs(part) if choice == "absolute" else part / finding.number
        elif (left_out := _left_out(case, finding, choice)) is not None:
            keep = np.ones(times.shape, dtype=bool) if keep is None else keep
            keep[left_out] = False
    if keep is not None:
        times, currents = times[keep], currents[keep]
    pieces = outside_of(times, currents, cuts, case.interval_s) if cuts else [(times, currents)]
    if not pieces or pieces[0][0].size < 2:
        return None
    charges = [trace_charge(*piece, case.interval_s) for piece in pieces]
    if cuts:
        times, currents = (np.concatenate(part) for part in zip(*pieces, strict=True))
    known = sum(float(charge.known.magnitude) for charge in charges)
    joints = tuple(int(last) - 1 for last in np.cumsum([piece[0].size for piece in pieces])[:-1])
    return Counted(times, currents, known, tuple(gap for charge in charges for gap in charge.gaps), joints)


def _left_out(case: Case, finding: Finding, choice: str) -> NDArray[np.intp] | None:
    """Places of the samples that go; None where none goes."""
    if choice in {"exclude", "drop"} and finding.indices.size:
        return finding.indices
    if finding.kind != "conflict" or choice not in {"first", "last"}:
        return None
    # Of all lines of one instant, however many, one stays.
    alike = np.flatnonzero(case.times_s[1:] == case.times_s[:-1])
    alike = alike[np.isin(case.times_s[alike], case.times_s[finding.indices])]
    return alike + 1 if choice == "first" else alike


def evaluate(
    case: Case,
    findings: list[Finding],
    decisions: dict[str, str],
    context: Context | None = None,
    cuts: Sequence[Cut] = (),
) -> Evaluation:
    """The whole figure; a trace without two samples left proves nothing."""
    counted = count(case, findings, decisions, cuts)
    if counted is None:
        return _nothing(case)
    bridged, still_open = over_gaps(counted.gaps, findings, decisions)
    times, currents = counted.times_s, counted.currents_a
    reverses = bool(currents.min() < 0)
    sizes, absolute = np.abs(currents) if reverses else currents, counted.known_ah
    if reverses:
        pieces = outside_of(times, sizes, cuts, case.interval_s) if cuts else [(times, sizes)]
        absolute = sum(float(trace_charge(t, a, case.interval_s).known.magnitude) for t, a in pieces)
    spans = np.diff(times)
    closed = _closed(spans, counted.joints, case.interval_s)
    on = (sizes > case.zero_a)[:-1] & closed
    stretches = zero_stretches(
        times, currents, case.zero_a, context.switchings if context else (),
        lambda: _spans_ah(counted, closed, chosen_of(counted.gaps, findings, decisions)),
    )  # fmt: skip
    return Evaluation(
        counted.known_ah, bridged, still_open, absolute, _switching(case, spans, sizes, closed), float(times[0]),
        float(times[-1]), case.interval_s, float((spans if on.all() else spans[on]).sum()), int(times.size),
        int(case.times_s.size - times.size), counted.gaps, stretches, times, currents,
    )  # fmt: skip


def _closed(spans: Floats, joints: tuple[int, ...], interval_s: float) -> NDArray[np.bool_]:
    """Which spans between two samples are integrated: neither gaps nor what another trace counts."""
    closed = np.ones(spans.shape, dtype=bool)
    closed[gaps_among(spans, GAP_INTERVALS * interval_s)] = False
    closed[list(joints)] = False
    return closed


def _spans_ah(counted: Counted, closed: NDArray[np.bool_], chosen: list[str]) -> Floats:
    """Charge of each span as it was decided, so that its sum is the trace's figure."""
    times, currents = counted.times_s, counted.currents_a
    spans_ah = np.where(closed, (currents[:-1] + currents[1:]) / 2 * np.diff(times) / 3600, 0.0)
    for gap, choice in zip(counted.gaps, chosen, strict=True):
        if choice == "bridge":
            spans_ah[np.searchsorted(times, gap.from_s, side="right") - 1] = gap.bridged_ah
    return spans_ah


def over_gaps(gaps: tuple[Gap, ...], findings: list[Finding], decisions: dict[str, str]) -> tuple[float, float]:
    """(bridged, at most still open) over all gaps."""
    chosen = list(zip(gaps, chosen_of(gaps, findings, decisions), strict=True))
    bridged = sum((gap.bridged_ah for gap, choice in chosen if choice == "bridge"), 0.0)
    return bridged, sum((gap.most_ah for gap, choice in chosen if choice in {"", "open"}), 0.0)


def chosen_of(gaps: tuple[Gap, ...], findings: list[Finding], decisions: dict[str, str]) -> list[str]:
    """What was decided of each gap; empty while nothing is."""
    known = {finding.key: finding for finding in findings if finding.kind == "gap"}
    asked = [known.get(gap_key(gap)) or known.get("gaps") for gap in gaps]
    return [decided(finding, decisions) if finding else "" for finding in asked]


def _switching(case: Case, spans: Floats, sizes: Floats, closed: NDArray[np.bool_]) -> float:
    """± of switching moments, one standard uncertainty.

    A step of the current lies anywhere between its two samples alike: half of step times span over √3, and the
    steps add up by their squares (JCGM 100:2008, 4.3.7 and 5.1.2).
    """
    steps = np.diff(sizes)
    np.abs(steps, out=steps)
    if not steps.size or steps.max() <= case.typical_a / 10:
        return 0.0
    big = (steps > case.typical_a / 10) & closed
    return math.sqrt(float(((steps[big] * spans[big]) ** 2).sum()) / 12) / 3600


def _nothing(case: Case) -> Evaluation:
    empty = np.empty(0)
    at = float(case.times_s[0])
    return Evaluation(
        0.0, 0.0, 0.0, 0.0, 0.0, at, at, case.interval_s, 0.0, 0, int(case.times_s.size), (), (), empty, empty
    )
