"""What brings a bath back to its targets: dilute first, then salt, then acid, each with its amount and working."""

from dataclasses import dataclass

from pint import Quantity

from process.chemistry.additions import acid_volume, mass_to_add, volume_to_replace
from process.models import Constituent
from process.summaries.analyses import AnalysisSummary, Found
from process.summaries.evidence import quantity
from process.summaries.figures import apart, figure
from records.figures import Figure
from records.units import show, ureg

# A bath is weighed out for by the figure that was stated, not by digits that nobody reads.
STATED_DECIMALS = 1


@dataclass(frozen=True)
class Correction:
    """One step at the bath, and the concentration that it should bring."""

    sentence: str
    figures: tuple[Figure, ...]


def stated(found: Quantity) -> Quantity:
    """To a tenth of a gram per litre, as an analysis is stated."""
    value, _ = apart(found.m_as("g/L"))
    return ureg.Quantity(round(value, STATED_DECIMALS), "g/L")


def corrections_of(summary: AnalysisSummary) -> list[Correction]:
    """Empty where both constituents stand at their targets, or have none."""
    volume = quantity(summary.analysis.bath, "volume_l")
    volume = ureg.Quantity(apart(volume.m)[0], "L")
    salt, acid = summary.of(Constituent.COPPER_SULPHATE), summary.of(Constituent.SULPHURIC_ACID)
    now = {found.constituent: stated(found.quantity) for found in (salt, acid) if found}
    steps = []
    if (high := _to_dilute(salt, acid, now)) is not None:
        steps.append(_dilution(high, now, volume))
    if (missing := _missing(salt, now)) is not None:
        steps.append(_salt(now[Constituent.COPPER_SULPHATE], missing, volume))
    if (missing := _missing(acid, now)) is not None:
        steps.append(_acid(now[Constituent.SULPHURIC_ACID], missing, volume))
    return steps


def _target(found: Found) -> Quantity | None:
    limit = found.limit
    return ureg.Quantity(limit.target_g_l, "g/L") if limit and limit.target_g_l else None


def _to_dilute(salt: Found | None, acid: Found | None, now: dict) -> Found | None:
    """Above the look-here bound water must take the place of bath; a little above the target nothing is done."""
    for found in (salt, acid):
        high = found.limit.warn_high_g_l if found and found.limit else None
        if found and high is not None and _target(found) is not None and now[found.constituent].m > high:
            return found
    return None


def _dilution(found: Found, now: dict, volume: Quantity) -> Correction:
    """Changes `now`: whatever is dissolved goes out with the bath."""
    answer = figure("bath to take out and replace by water", "_l", volume_to_replace,
                    found=now[found.constituent], target=_target(found), volume=volume)  # fmt: skip
    share = 1 - (answer.value or 0.0) / volume.m
    for name, before in now.items():
        now[name] = stated(before * share)
    words = f"Take out {show(answer.value, '_l')} and fill up with deionised water: {found.label} comes to the target."
    return Correction(words, (answer,))


def _missing(found: Found | None, now: dict) -> Quantity | None:
    """The target, where the bath stands below it."""
    target = _target(found) if found else None
    return target if target is not None and now[found.constituent].m < target.m else None


def _salt(now: Quantity, target: Quantity, volume: Quantity) -> Correction:
    mass = figure("copper sulphate to add", "_g", mass_to_add, target=target, found=now, volume=volume)
    words = f"Dissolve {mass.value:.0f} g of copper sulphate pentahydrate in bath taken out warm, and pour it back."
    return Correction(f"{words} {show(now.m, '_g_l')} → {show(target.m, '_g_l')}.", (mass,))


def _acid(now: Quantity, target: Quantity, volume: Quantity) -> Correction:
    mass = figure("pure acid to add", "_g", mass_to_add, target=target, found=now, volume=volume)
    drawn = figure("acid of 96 % to add", "_ml", acid_volume, mass=mass.working.quantity)
    words = (
        f"Let {drawn.value:.1f} mL of 96 % sulphuric acid ({mass.value:.0f} g pure) run slowly into the stirred bath."
    )
    return Correction(f"{words} {show(now.m, '_g_l')} → {show(target.m, '_g_l')}.", (mass, drawn))
