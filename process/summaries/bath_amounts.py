"""What moved copper and acid between two analyses, each added up with its ±."""

from collections.abc import Iterable, Sequence
from datetime import date, datetime
from math import hypot, sqrt

from django.utils import timezone
from pint import Quantity

from process.chemistry.additions import ACID_FRACTION, acid_density, acid_in
from process.chemistry.faraday import deposited_mass
from process.models import Anode, AnodeWeighing, BathAddition, BathService
from process.summaries.bath_between import Between
from process.summaries.evidence import quantity
from process.summaries.figures import apart
from process.summaries.planning import metal_of
from records.figures import Figure
from records.units import SUFFIXES, ureg

# Half the width of 98 to 103 % of what the charge dissolves; common practice, from memory.
ANODES_WITHIN = 0.025
Kind, Added = BathService.Kind, BathAddition.Kind
Span = tuple[datetime, datetime]


def total_of(label: str, figures: Sequence[Figure], suffix: str) -> Figure:
    """A sum; it is only measured if each part is."""
    known = [each for each in figures if each.value is not None]
    kinds = {each.kind for each in known}
    kind = "measured" if kinds <= {"measured"} else "estimated" if "estimated" in kinds else "calculated"
    spread = hypot(*(each.plus_minus or 0.0 for each in known)) if known else 0.0
    note = "; ".join(dict.fromkeys(each.note for each in known if each.note))
    return Figure(label, sum(each.value or 0.0 for each in known), suffix, kind, spread or None, note)


def _sum(label: str, amounts: Sequence[Quantity], suffix: str, none: str, kinds: Iterable[str] = ()) -> Figure:
    """Measured, unless a part of it was only estimated, quoted or calculated."""
    if not amounts:
        return Figure(label, 0.0, suffix, "unknown", note=none)
    value, spread = apart(sum(amounts[1:], start=amounts[0]).m_as(SUFFIXES[suffix]))
    kind = next((each for each in kinds if each != "measured"), "measured")
    return Figure(label, value, suffix, kind, spread)


def sludge_of(work: Iterable[BathService]) -> Figure:
    rows = [each for each in work if each.kind == Kind.SLUDGE and each.mass_g is not None]
    masses, kinds = [quantity(each, "mass_g") for each in rows], [each.evidence("mass_g") for each in rows]
    return _sum("sludge", masses, "_g", "No sludge was weighed in this time.", kinds)


def carried_out(work: Iterable[BathService]) -> Figure:
    """Bath that left and was replaced by water: with the pieces, by a spill, or taken out to dilute."""
    out = [each for each in work if each.kind in (Kind.DRAG_OUT, Kind.DILUTION) and each.volume_l is not None]
    volumes = [quantity(each, "volume_l") for each in out]
    return _sum("carried out or taken out", volumes, "_l", "Nothing is noted as carried out.",
                [each.evidence("volume_l") for each in out])  # fmt: skip


def salt_added(additions: Iterable[BathAddition]) -> Figure:
    masses = [quantity(each, "mass_g") for each in additions if each.kind == Added.COPPER_SULPHATE and each.mass_g]
    return _sum("copper sulphate added", masses, "_g", "")


def acid_added(additions: Iterable[BathAddition]) -> Figure:
    masses = [pure for each in additions if (pure := pure_acid(each)) is not None]
    return _sum("pure acid added", masses, "_g", "")


def pure_acid(addition: BathAddition) -> Quantity | None:
    """The acid itself: by its mass, else by its volume at the density that its strength has."""
    if addition.kind != Added.SULPHURIC_ACID:
        return None
    share = quantity(addition, "strength_pct")
    fraction = share.to("") if share is not None else ureg.Quantity(ACID_FRACTION, "")
    if addition.mass_g is not None:
        return quantity(addition, "mass_g") * fraction
    if addition.volume_ml is None:
        return None
    return acid_in(quantity(addition, "volume_ml"), acid_density(fraction), fraction)


def anode_loss_of(anodes: Iterable[Anode], span: Span, stretch: Between) -> Figure:
    """What the balance says; unless all were weighed they are taken to lose what the charge dissolves."""
    days = [timezone.localdate(each) for each in span]
    losses = {anode.label: _loss(anode, span) for anode in anodes if _hung_between(anode, *days)}
    unknown = [label for label, loss in losses.items() if loss is None]
    if losses and not unknown:
        return _sum("lost by the anodes", list(losses.values()), "_g", "")
    theory = [
        deposited_mass(metal, ureg.Quantity(each.line.charge_ah, "A*h"))
        for each in stretch.runs
        if (metal := metal_of(each.run)) is not None
    ]
    grams = sum(each.m_as("g") for each in theory)
    lacking = f" ({', '.join(unknown)})" if len(unknown) < len(losses) else ""
    note = f"The anodes were not all weighed at both ends{lacking}: they are taken to lose what the charge dissolves."
    return Figure("lost by the anodes", grams, "_g", "estimated", grams * ANODES_WITHIN / sqrt(3) or None, note)


def _hung_between(anode: Anode, first: date, last: date) -> bool:
    return (anode.hung_on is None or anode.hung_on <= last) and (anode.removed_on is None or anode.removed_on >= first)


def _loss(anode: Anode, span: Span) -> Quantity | None:
    before, after = ends_of(anode, span)
    if before is None or after is None or after.mass_g > before.mass_g:
        return None
    return quantity(before, "mass_g") - quantity(after, "mass_g")


def ends_of(anode: Anode, span: Span) -> tuple[AnodeWeighing | None, AnodeWeighing | None]:
    """The weighings that belong to the two analyses: the last up to the end of each day, else the first after it."""
    rows = sorted(anode.weighings.all(), key=lambda each: (each.weighed_at, each.pk))
    days = [timezone.localdate(each) for each in span]
    early = [each for each in rows if timezone.localdate(each.weighed_at) <= days[0]]
    between = [each for each in rows if days[0] < timezone.localdate(each.weighed_at) <= days[1]]
    before = early[-1] if early else between[0] if len(between) > 1 else None
    return before, between[-1] if between else None
