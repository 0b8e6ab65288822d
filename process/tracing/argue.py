"""The importer argues: findings with lines, span, choices, and what each choice makes of the charge."""

from collections.abc import Sequence
from dataclasses import replace

from process.tracing import absence, clocks, disorder, oddities
from process.tracing.case import Case, Context, case_of
from process.tracing.cut_off import last_line
from process.tracing.cuts import Cut
from process.tracing.evaluate import count, over_gaps
from process.tracing.findings import Choice, Finding, decided
from process.tracing.samples import Samples


def argue(
    samples: Samples,
    context: Context,
    decisions: dict[str, str] | None = None,
    *,
    elapsed: bool = False,
    cuts: Sequence[Cut] = (),
) -> tuple[Case, list[Finding]]:
    """What the trace says against itself; gaps are looked for as the other decisions leave them."""
    case, decisions = case_of(samples), decisions or {}
    disorder.refuse_backwards(case, elapsed=elapsed)
    clock = clocks.clock(case, context)
    shift = sum(each.number for each in clock if decided(each, decisions) == "shift")
    findings = [
        *disorder.order(case), *disorder.doubles(case), *disorder.blanks(case), *last_line(case), *clock,
        *clocks.outside(case, context, shift), *oddities.spikes(case, context), *oddities.reversed_sign(case),
        *absence.stretches(case, _shifted(context, shift)),
    ]  # fmt: skip
    counted = count(case, findings, decisions, cuts)
    if counted is not None:
        findings += absence.gaps(_on_the_clock(case, shift), counted.gaps)
    return case, [_with_effects(case, findings, each, decisions, cuts) for each in findings]


def _shifted(context: Context, shift: float) -> Context:
    """The run as the logger's own clock would see it."""
    if not shift:
        return context
    return replace(
        context,
        starts_s=None if context.starts_s is None else context.starts_s - shift,
        stops_s=None if context.stops_s is None else context.stops_s - shift,
        switchings=tuple(replace(each, at_s=each.at_s - shift) for each in context.switchings),
    )


def _on_the_clock(case: Case, shift: float) -> Case:
    return replace(case, times_s=case.times_s + shift) if shift else case


def _with_effects(
    case: Case, findings: list[Finding], finding: Finding, decisions: dict[str, str], cuts: Sequence[Cut]
) -> Finding:
    """What the charge would be by each choice, all else as it stands."""
    if len(finding.choices) < 2 or finding.kind == "restart":
        return finding
    now = _charge(case, findings, decisions, cuts)

    def charged(choice: Choice) -> Choice:
        then = _charge(case, findings, decisions | {finding.key: choice.key}, cuts)
        return replace(choice, charge_ah=round(then, 6), effect_ah=round(then - now, 6))

    return replace(finding, choices=tuple(map(charged, finding.choices)))


def _charge(case: Case, findings: list[Finding], decisions: dict[str, str], cuts: Sequence[Cut]) -> float:
    counted = count(case, findings, decisions, cuts)
    if counted is None:
        return 0.0
    return counted.known_ah + over_gaps(counted.gaps, findings, decisions)[0]
