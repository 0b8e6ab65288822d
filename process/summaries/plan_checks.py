"""What the register says of a plan before it starts: one sentence each, with its state."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta

from django.utils import timezone

from process.chemistry.anodes import ANODE_MASS_FACTOR
from process.models import PowerUnit, Range, Run
from process.ranges import judge_by, range_of
from process.summaries.figures import apart
from process.summaries.plan_details import PlanDetails, highest_current, smallest_current
from process.summaries.planning import PlanSummary
from process.summaries.ramp import PlannedStage
from records import clock
from records.figures import Figure
from records.units import other_unit, show

MOST_LOAD_A_L = 1.0  # common practice, from memory
MOST_STEP_PCT = 5.0  # common practice, from memory
LEAST_ANODE_RATIO = 1.0  # one to two times the cathode; common practice, from memory
MOST_APART = 2.0  # expected and estimated voltage, times; rule of this register
METER_CHECK = timedelta(days=366)


@dataclass(frozen=True)
class PlanCheck:
    """`state` is blocked, look, done or open."""

    state: str
    sentence: str


def checks_of(run: Run, plan: PlanSummary, details: PlanDetails) -> tuple[PlanCheck, ...]:
    """Every check, the most serious first."""
    found = [
        *_ramp(run, plan), *_power(run, plan, details), *_load(details), *_anodes(run, plan, details),
        *_thinnest(details), *_clock(plan, run),
    ]  # fmt: skip
    order = ("blocked", "look", "open", "done")
    return tuple(sorted(found, key=lambda check: order.index(check.state)))


def _ramp(run: Run, plan: PlanSummary) -> Iterator[PlanCheck]:
    if not plan.stages:
        yield PlanCheck("blocked", f"{plan.time.note or plan.charge.note or 'The plan cannot be computed.'}")
        return
    row = range_of("current_density_a_dm2", run.agitation)
    unusual = [words for stage in plan.stages if (words := _density_words(row, stage))]
    yield from (PlanCheck(state, sentence) for state, sentence in dict.fromkeys(unusual))
    if not unusual:
        last = plan.stages[-1].density.value
        both = f"{show(last, '_a_dm2')} ({other_unit(last, '_a_dm2')})"
        yield PlanCheck("done", f"Every step lies in the usual range; {both} at the end.")


def _density_words(row: Range | None, stage: PlannedStage) -> tuple[str, str] | None:
    value = stage.density.value
    if value is None:
        return None
    number = float(f"{value:.3g}")
    opinion = judge_by(row, "current_density_a_dm2", value, number=number, unit="A/dm²")
    if opinion.is_usual:
        return None
    state = "blocked" if opinion.verdict == "impossible" else "look"
    amperes = show(stage.current.value, "_a")
    return state, f"{stage.words.capitalize()}: {opinion.sentence} On this area it comes to {amperes}."


def _power(run: Run, plan: PlanSummary, details: PlanDetails) -> Iterator[PlanCheck]:
    unit = run.power_unit
    if unit is None:
        yield PlanCheck("open", "No power unit is chosen, so its range and its smallest step are not checked.")
        return
    yield _range(unit, plan, run)
    yield from _voltage(unit, run, details)
    if details.resolution and details.resolution.value is not None:
        yield _step(unit, plan, details.resolution)
    if unit.after_failure == PowerUnit.AfterFailure.RESUMES:
        yield PlanCheck(
            "look",
            f"{unit.number} resumes by itself after a power failure: a layer may begin unseen on a dead surface.",
        )
    if unit.meter_checked_on is None or clock.today() - unit.meter_checked_on > METER_CHECK:
        yield PlanCheck("look", f"The meter of {unit.number} was not checked within a year: the charge hangs on it.")


def _range(unit: PowerUnit, plan: PlanSummary, run: Run) -> PlanCheck:
    highest = highest_current(plan)
    amperes = apart(highest.m_as("A"))[0] if highest is not None else 0.0
    if amperes > unit.rated_a:
        return PlanCheck(
            "blocked", f"{show(amperes, '_a')} is more than {unit.number} gives ({show(unit.rated_a, '_a')})."
        )
    if run.planned_voltage_v and run.planned_voltage_v > unit.rated_v:
        volts = show(run.planned_voltage_v, "_v")
        return PlanCheck("blocked", f"{volts} is more than {unit.number} gives ({show(unit.rated_v, '_v')}).")
    return PlanCheck(
        "done", f"{unit.number} gives up to {show(unit.rated_a, '_a')}; {show(amperes, '_a')} is the most asked for."
    )


def _voltage(unit: PowerUnit, run: Run, details: PlanDetails) -> Iterator[PlanCheck]:
    """What the bath will take, against what the unit gives and what the plan expects."""
    found = details.voltage.estimate if details.voltage else None
    if found is None or found.value is None:
        yield PlanCheck("open", "The voltage is not estimated: give the distance from the anode to the piece.")
        return
    volts, rated = show(found.value, "_v", plus_minus=found.plus_minus), show(unit.rated_v, "_v")
    if found.value > unit.rated_v:
        yield PlanCheck(
            "look", f"At the most about {volts} is wanted; {unit.number} gives {rated}. Hang them nearer, or use less."
        )
    else:
        yield PlanCheck("done", f"At the most about {volts} is wanted (estimated); {unit.number} gives up to {rated}.")
    expected = run.planned_voltage_v
    if expected and not 1 / MOST_APART <= found.value / expected <= MOST_APART:
        yield PlanCheck("look", f"{show(expected, '_v')} is expected, {volts} estimated: look at distance and density.")


def _step(unit: PowerUnit, plan: PlanSummary, share: Figure) -> PlanCheck:
    smallest = smallest_current(plan)
    amperes = show(apart(smallest.m_as("A"))[0], "_a")
    percent = show(share.value, "_pct", digits=0)
    step = f"{unit.number} sets steps of {show(unit.resolution_a, '_a', digits=3)}, {percent} of {amperes}"
    if share.value > MOST_STEP_PCT:
        return PlanCheck("look", f"{step}: it cannot hold {amperes} (5 % is the most). Choose a finer unit.")
    return PlanCheck("done", f"{step}.")


def _load(details: PlanDetails) -> Iterator[PlanCheck]:
    load = details.load
    if load is None or load.value is None:
        return
    words = f"The bath carries {show(load.value, '_a_l', digits=3)} at the most"
    if load.value > MOST_LOAD_A_L:
        yield PlanCheck(
            "look", f"{words}, more than about 1 A/L: it warms and its copper falls. Use a larger bath or less current."
        )
    else:
        yield PlanCheck("done", f"{words}; about 1 A/L is the limit.")


def _anodes(run: Run, plan: PlanSummary, details: PlanDetails) -> Iterator[PlanCheck]:
    need = details.anode_need.value if details.anode_need else None
    if run.anode_mass_g is None or run.anode_area_dm2 is None:
        yield PlanCheck("open", "Mass and area of the anodes are not stated, so they are not checked.")
    if need is not None and run.anode_mass_g is not None:
        enough = run.anode_mass_g >= need
        rule = f"{ANODE_MASS_FACTOR:g} times the deposit is {need:.0f} g"
        words = f"The anodes weigh {run.anode_mass_g:.0f} g; {rule}."
        yield PlanCheck("done" if enough else "look", words if enough else f"{words} Hang more, or they wear through.")
    ratio = details.anode_ratio
    if ratio is not None and ratio.value is not None:
        small = ratio.value < LEAST_ANODE_RATIO
        words = f"Their area is {show(ratio.value, '_ratio')} that of the cathodes; 1 to 2 is the least."
        yield PlanCheck("look" if small else "done", f"{words} They may passivate." if small else words)


def _thinnest(details: PlanDetails) -> Iterator[PlanCheck]:
    even = details.evenness
    if even.wanted_mm is None:
        yield PlanCheck("open", "No least thickness is asked for: a mean says nothing of the thinnest place.")
    elif even.minimum.value is None:
        yield PlanCheck("open", f"The thinnest place is not computed. {even.minimum.note}")
    else:
        yield _against(even.minimum, even.wanted_mm, even.wanted_from, even.mean_needed)


def _against(minimum: Figure, wanted: float, where: str, needed: Figure | None) -> PlanCheck:
    found = show(minimum.value, "_mm", plus_minus=minimum.plus_minus)
    words = f"The thinnest place comes to {found} ({minimum.kind}); {show(wanted, '_mm')} is {where}."
    if minimum.value < wanted:
        mean = f" Plan a mean of {show(needed.value, '_mm')}, or turn the piece." if needed and needed.value else ""
        return PlanCheck("look", words + mean)
    if minimum.plus_minus and minimum.value - minimum.plus_minus < wanted:
        return PlanCheck("look", f"{words} Within its ± it may fall below.")
    return PlanCheck("done", words)


def _clock(plan: PlanSummary, run: Run) -> Iterator[PlanCheck]:
    """A clock change between start and finish: elapsed time is not what the clock on the wall counts."""
    if plan.finish_at is None or run.planned_start_at is None:
        return
    start, end = timezone.localtime(run.planned_start_at), timezone.localtime(plan.finish_at)
    moved = end.utcoffset() - start.utcoffset()
    if moved:
        hours = abs(moved) / timedelta(hours=1)
        way = "forward" if moved > timedelta(0) else "back"
        passes = f"{show(plan.time.value, '_h')} pass, though the clock on the wall counts differently"
        sentence = f"The clocks go {way} by {hours:g} h in this run: {passes}. The finish stands with its offset."
        yield PlanCheck("look", sentence)
