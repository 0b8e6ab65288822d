"""A core before the bath: what the waterproofing took up, whether it leaks, and what it weighs ready for the bath."""

from dataclasses import dataclass

from pint import Quantity

from process.chemistry.drying import ready_mass, uptake
from process.models import Core
from process.summaries.evidence import quantity
from process.summaries.figures import apart, figure
from records.figures import Figure
from records.units import show

USUAL_UPTAKE_PCT = (10.0, 25.0)  # common practice, from memory
LEAK_LIMIT_PCT = 0.2  # common practice, from memory
NOT_TESTED = f"Weigh it, leave it in water for an hour, weigh it again: more than {LEAK_LIMIT_PCT:g} % drinks the bath."
SAME_G = 0.15  # wires and core are weighed to a tenth of a gram
WEIGHED = {"dry": "measured", "sealed": "measured", "wires": "measured"}
IRON = ("iron", "steel", "eisen", "stahl", "nail")
HARMLESS = ("stainless", "no iron", "without iron")
IRON_CAUTION = (
    "Iron rusts inside plaster, swells and splits the skin: no armature, or stainless steel, copper, glass fibre."
)


@dataclass(frozen=True)
class CoreSummary:
    core: Core
    taken_up: Figure | None
    leak: Figure | None
    ready: tuple[Figure, ...]
    warnings: tuple[str, ...]

    @property
    def leaks(self) -> bool:
        return self.leak is not None and self.leak.value is not None and self.leak.value > LEAK_LIMIT_PCT


def summarise(core: Core) -> CoreSummary:
    taken, leak, ready = taken_up(core), leak_of(core), ready_of(core)
    said = [
        IRON_CAUTION if has_iron(core.armature) else "",
        unusual_uptake(taken),
        leak_words(leak),
        difference_words(core),
    ]
    return CoreSummary(core, taken, leak, ready, tuple(words for words in said if words))


def taken_up(core: Core) -> Figure | None:
    """Wax or resin taken up, in percent of the dry mass."""
    dry, sealed = quantity(core, "dry_mass_g"), quantity(core, "sealed_mass_g")
    if dry is None or sealed is None:
        return None
    return figure("Taken up in waterproofing", "_pct", uptake, evidence=WEIGHED, dry=dry, sealed=sealed)


def leak_of(core: Core) -> Figure | None:
    """Water taken up in the leak test, in percent; by two weighings, or by the gain where only that was written."""
    before, after = quantity(core, "leak_before_g"), quantity(core, "leak_after_g")
    before = before if before is not None else quantity(core, "sealed_mass_g")
    if after is None and before is not None and core.leak_gain_g is not None:
        after = before + quantity(core, "leak_gain_g")
    if before is None or after is None:
        return None
    found = figure("Leak test", "_pct", uptake, evidence=WEIGHED, dry=before, sealed=after)
    if found.value is None:
        return found
    gained = show(apart((after - before).m)[0], "_g", digits=1)
    note = f"{gained} in {show(core.leak_soak_h or 1, '_h')} under water; limit {LEAK_LIMIT_PCT:g} %."
    return Figure(found.label, found.value, "_pct", "calculated", found.plus_minus, note, None, found.working)


def leak_words(leak: Figure | None) -> str:
    if leak is None or leak.value is None or leak.value <= LEAK_LIMIT_PCT:
        return ""
    return (
        f"It takes up {show(leak.value, '_pct', digits=2)} of water in the leak test, more than {LEAK_LIMIT_PCT:g} %: "
        "waterproof it again before the bath."
    )


def leak_sentence(leak: Figure | None) -> str:
    """What its leak test says, or that there is none."""
    if leak is None or leak.value is None:
        return f"No leak test is on record. {NOT_TESTED}"
    return leak_words(leak) or f"It took up {show(leak.value, '_pct', digits=2)} of water in the leak test."


def computed_ready(core: Core) -> Quantity | None:
    """Waterproofed core and wires; None while one of them was not weighed."""
    sealed, wires = quantity(core, "sealed_mass_g"), quantity(core, "wires_g")
    return ready_mass(sealed, wires) if sealed is not None and wires is not None else None


def ready_of(core: Core) -> tuple[Figure, ...]:
    """Weighed and computed stand side by side and are never taken for each other."""
    found = []
    if core.ready_mass_g is not None:
        found.append(Figure("Ready for the bath", core.ready_mass_g, "_g", "measured", core.plus_minus("ready_mass_g")))
    if core.sealed_mass_g is not None and core.wires_g is not None:
        parts = {"sealed": quantity(core, "sealed_mass_g"), "wires": quantity(core, "wires_g")}
        found.append(figure("Ready, by its parts", "_g", ready_mass, evidence=WEIGHED, **parts))
    return tuple(found)


def difference_words(core: Core) -> str:
    """What is wrong where the weighed mass is not the sum of its parts."""
    computed = computed_ready(core)
    if computed is None or core.ready_mass_g is None:
        return ""
    whole = float(getattr(computed.m, "nominal_value", computed.m))
    if abs(core.ready_mass_g - whole) <= SAME_G:
        return ""
    return (
        f"Ready for the bath it was weighed at {show(core.ready_mass_g, '_g')}; "
        f"core and wires make {show(whole, '_g')}. "
        "The gain of the skin is counted from this mass: weigh again, or say why they differ."
    )


def has_iron(armature: str) -> bool:
    words = armature.casefold()
    return any(word in words for word in IRON) and not any(word in words for word in HARMLESS)


def unusual_uptake(taken: Figure | None) -> str:
    low, high = USUAL_UPTAKE_PCT
    if taken is None or taken.value is None or low <= taken.value <= high:
        return ""
    return f"{show(taken.value, '_pct')} taken up in waterproofing is unusual ({low:g} to {high:g} % is usual)."
