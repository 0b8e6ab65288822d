"""One cathode of a run: its share of the charge, and how thick it has grown."""

from dataclasses import dataclass, replace
from datetime import datetime
from functools import partial

from pint import Quantity

from process.chemistry.deposit import (
    MINIMUM_SHARES,
    edge_factor,
    efficiency,
    energised_rate,
    estimated_minimum,
    face_thickness,
    grown_thickness,
    mean_thickness,
)  # fmt: skip
from process.chemistry.metals import Ion
from process.chemistry.segments import growth_deviation, is_uneven
from process.chemistry.shares import share_by_mass
from process.models import Cathode, Run, Shell
from process.summaries.evidence import quantity
from process.summaries.figures import apart, figure
from process.summaries.hanging import stay_of
from process.summaries.pieces import still_to_run
from process.summaries.planning import finish
from process.summaries.segments import Rail
from process.summaries.skins import by_charge
from records.figures import Figure
from records.models import Item
from records.units import show, ureg

TRIMMED = "Face after trimming"
SHARE_NOTE = "By the charge of the segments in which it hung, shared by area; the balance of the rail is surer."
OFF_NOTE = "Growth for its area against the mean of all pieces."
BALANCE = {"mass": "measured", "masses": "measured", "area": "measured", "areas": "measured"}


@dataclass(frozen=True)
class CathodeSummary:
    """By area while it grows; by the balance once every shell of the rail is weighed."""

    cathode: Cathode
    source: Item | None
    shell: Shell | None
    gain: Figure | None
    share: Figure
    thickness: Figure
    face: Figure | None = None
    edge: Figure | None = None
    minimum: Figure | None = None
    most: Figure | None = None
    deviation: Figure | None = None
    is_uneven: bool = False
    efficiency: Figure | None = None
    hung_in_at: datetime | None = None
    taken_out_at: datetime | None = None
    remaining: Figure | None = None
    finish_at: datetime | None = None
    rate: Figure | None = None

    @property
    def is_final(self) -> bool:
        return self.gain is not None

    @property
    def percent(self) -> float | None:
        """Mean thickness in percent of the target."""
        if self.thickness.value is None or not self.thickness.target:
            return None
        return self.thickness.value / self.thickness.target * 100


def shell_of(cathode: Cathode) -> Shell | None:
    return getattr(cathode, "shell", None)


def gain_of(cathode: Cathode) -> Quantity | None:
    """What the balance says was deposited: everything that came off, without the tare; None before it is weighed."""
    shell = shell_of(cathode)
    return gain_of_shell(shell) if shell else None


def gain_of_shell(shell: Shell) -> Quantity | None:
    """None where its mass or its tare was struck out, until it is weighed again."""
    mass, tare = quantity(shell, "gross_mass_g"), quantity(shell.cathode, "tare_g")
    return None if mass is None or tare is None else mass - tare


def cathodes_of(run: Run, rail: Rail, charge: Quantity, metal: Ion | None) -> tuple[CathodeSummary, ...]:
    """Every cathode on the rail; without a known metal there is nothing to say."""
    cathodes = rail.cathodes
    if metal is None or not cathodes:
        return ()
    gains = [gain_of(cathode) for cathode in cathodes]
    by_area = [rail.share(index, charge) for index in range(len(cathodes))]
    weighed = all(gain is not None and apart(gain.m)[0] > 0 for gain in gains)
    shares = [_share(charge, gain, gains) for gain in gains] if weighed else by_area
    apart_by = _deviations(gains, by_area) if weighed and len(cathodes) > 1 else [None] * len(cathodes)
    found = map(partial(_summary, run, metal), cathodes, shares, apart_by)
    found = (replace(each, rate=_rate(each, rail, index)) for index, each in enumerate(found))
    if not rail.changed:
        return tuple(found)
    still = still_to_run(run, rail, metal, charge)
    return tuple(_with_its_stay(each, rail, metal, share, still) for each, share in zip(found, by_area, strict=True))


def _rate(each: CathodeSummary, rail: Rail, index: int) -> Figure | None:
    """R6: how fast the wall grew while current flowed on this piece."""
    energised = sum(segment.energised_h for segment in rail.segments if index in segment.present)
    if each.thickness.working is None or not energised:
        return None
    return figure(
        "Mean growth with current", "_um_h", energised_rate,
        thickness=each.thickness.working.quantity, energised_time=ureg.Quantity(energised, "h"),
    )  # fmt: skip


def _with_its_stay(
    each: CathodeSummary, rail: Rail, metal: Ion, share: Figure, still: dict[int, Figure]
) -> CathodeSummary:
    """On a rail that changed each piece has its own entry, its own finish, and an efficiency by its own charge."""
    came, went = stay_of(each.cathode, [line.row for line in rail.sheet.lines if line.is_event])
    remaining = still.get(each.cathode.pk)
    finish_at = finish(rail.sheet.until_at, remaining.value) if remaining else None
    gain = gain_of(each.cathode)
    by_share = None
    if gain is not None and share.working is not None:
        by_share = replace(
            figure("Efficiency by its share", "_pct", efficiency, evidence={"mass": "measured"}, ion=metal, mass=gain,
                   charge=share.working.quantity), note=SHARE_NOTE,
        )  # fmt: skip
    return replace(
        each, hung_in_at=came, taken_out_at=went, remaining=remaining, finish_at=finish_at, efficiency=by_share
    )


def _share(charge: Quantity, gain: Quantity, gains: list[Quantity]) -> Figure:
    """Evidence share: as the balance says, once everything is weighed."""
    return figure("Share by mass", "_ah", share_by_mass, evidence=BALANCE, charge=charge, mass=gain, masses=gains)


def _deviations(gains: list[Quantity], by_area: list[Figure]) -> list[Figure | None]:
    """How far each piece grew off the mean of the rail, for what its area should have had."""
    if any(share.working is None or not share.value for share in by_area):
        return [None] * len(gains)
    shares = [share.working.quantity for share in by_area]
    return [
        replace(figure("Off the mean of the rail", "_pct", growth_deviation, evidence=BALANCE,
                       mass=gain, charge=share, masses=gains, charges=shares), note=OFF_NOTE)
        for gain, share in zip(gains, shares, strict=True)
    ]  # fmt: skip


def _summary(run: Run, metal: Ion, cathode: Cathode, share: Figure, off: Figure | None) -> CathodeSummary:
    shell, gain = shell_of(cathode), gain_of(cathode)
    thickness = _thickness(run, metal, cathode, share, gain)
    source = cathode.mould.item if cathode.mould_id else cathode.core.item if cathode.core_id else None
    if gain is None:
        return CathodeSummary(cathode, source, None, None, share, thickness)
    grams, spread = apart(gain.m)
    weighed = Figure("Gain on the balance", grams, "_g", "measured", spread)
    minimum, most = _extremes(shell, thickness)
    face, edge = _after_trimming(metal, cathode, shell, gain)
    uneven = off is not None and off.value is not None and is_uneven(off.value / 100)
    return CathodeSummary(cathode, source, shell, weighed, share, thickness, face, edge, minimum, most, off, uneven)


def _thickness(run: Run, metal: Ion, cathode: Cathode, share: Figure, gain: Quantity | None) -> Figure:
    """R4 from the balance, or what the charge has grown at the planned efficiency: so far, or where a core drank."""
    area, passed = quantity(cathode, "total_area_dm2"), share.working.quantity if share.working else None
    drank = by_charge("Mean thickness", metal, gain, passed, cathode) if gain is not None else None
    if drank is not None:
        found = drank
    elif gain is not None:
        found = figure("Mean thickness", "_mm", mean_thickness, evidence=BALANCE, ion=metal, mass=gain, area=area)
    elif passed is None:
        found = Figure("Mean thickness so far", None, "_mm", note=share.note)
    else:
        found = figure(
            "Mean thickness so far", "_mm", grown_thickness,
            ion=metal, charge=passed, area=area, efficiency=run.planned_efficiency_pct / 100,
        )  # fmt: skip
    return Figure(
        found.label,
        found.value,
        "_mm",
        found.kind,
        found.plus_minus,
        found.note,
        run.planned_thickness_mm,
        found.working,
    )


def _after_trimming(metal: Ion, cathode: Cathode, shell: Shell, gain: Quantity) -> tuple[Figure | None, Figure | None]:
    """R5: the face alone, and how much thicker the rim grew."""
    trimmed, face = quantity(shell, "trimmed_mass_g"), quantity(cathode, "face_area_dm2")
    if trimmed is None:
        return None, None
    thick = figure(TRIMMED, "_mm", face_thickness, ion=metal, trimmed_mass=trimmed, face_area=face)
    rim = quantity(cathode, "total_area_dm2") - face
    if min(apart(rim.m)[0], apart((gain - trimmed).m)[0]) <= 0:
        return thick, None
    return thick, figure(
        "Rim against face",
        "_pct",
        edge_factor,
        flange_mass=gain - trimmed,
        flange_area=rim,
        face_mass=trimmed,
        face_area=face,
    )


def _extremes(shell: Shell, thickness: Figure) -> tuple[Figure | None, Figure | None]:
    """R7: least and most of the measured points; where none was measured, the least is an estimate and says so."""
    points = [point for point in shell.thickness_points.all() if point.thickness_mm is not None]
    if points:
        least, most = min(points, key=_thick), max(points, key=_thick)
        note = (
            f"{least.place}; least of {len(points)} measured points"
            if len(points) > 1
            else f"{least.place}; the only measured point"
        )
        return (
            Figure("Least thickness", least.thickness_mm, "_mm", "measured", least.plus_minus("thickness_mm"), note),
            Figure("Most", most.thickness_mm, "_mm", "measured", most.plus_minus("thickness_mm"), most.place),
        )
    if thickness.working is None:
        return None, None
    low = figure(
        "Least thickness", "_mm", estimated_minimum, thickness=thickness.working.quantity, share=MINIMUM_SHARES[0]
    )
    shares = " to ".join(f"{share:g}" for share in MINIMUM_SHARES)
    high = low.value / MINIMUM_SHARES[0] * MINIMUM_SHARES[1] if low.value is not None else None
    upto = f", up to {show(high, '_mm')}" if high is not None else ""
    note = f"Not measured: a rule of thumb, {shares} of the mean{upto}; no evidence."
    return Figure(low.label, low.value, "_mm", "estimated", None, note, None, low.working), None


def _thick(point) -> float:
    return point.thickness_mm
