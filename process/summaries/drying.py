"""The drying curve of a skinned core: gain and apparent efficiency at each weighing, and whether it may be closed."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date

from django.db.models import Prefetch, prefetch_related_objects
from django.utils import timezone
from pint import Quantity

from process.chemistry import judgement
from process.chemistry.drying import (
    agreement_within,
    apparent_efficiency,
    gain_over,
    residue,
    settled_since,
    settles_at_the_earliest,
)  # fmt: skip
from process.chemistry.faraday import deposited_mass
from process.chemistry.metals import Ion
from process.chemistry.shares import share_by_area
from process.models import Cathode, CoreClosing, Run, Shell, Weighing
from process.summaries.charges import charge_of
from process.summaries.drying_words import STANDINGS, sentence_of
from process.summaries.evidence import quantity
from process.summaries.figures import apart, figure
from process.summaries.planning import areas_of, metal_of, taken_efficiency
from process.summaries.segments import Rail, rail_of
from process.summaries.sheet import sheet_of
from records.figures import Figure
from records.units import ureg

MEASURED = {"mass": "measured", "ready": "measured", "gain": "measured"}
TAKEN_AT = 0.99  # the efficiency at which the deposit is taken, to say what stays inside; common practice, from memory


@dataclass(frozen=True)
class Point:
    """One weighing, with what follows from it."""

    weighing: Weighing
    gain: Figure
    efficiency: Figure | None
    change_g: float | None

    @property
    def change_words(self) -> str:
        return "" if self.change_g is None else f"{self.change_g:+.1f}".replace("-", "\N{MINUS SIGN}")


@dataclass(frozen=True)
class Drying:
    """`code` is one of `drying_words.STANDINGS`; “early”, closed too early, stays for ever."""

    shell: Shell
    points: tuple[Point, ...]
    code: str
    shape: str
    word: str
    sentence: str
    residue: Figure | None
    within: Figure | None
    closings: tuple[CoreClosing, ...]
    whole_g: float | None = None  # ready mass and the metal of the charge at full efficiency

    @property
    def last(self) -> Point | None:
        return self.points[-1] if self.points else None

    @property
    def may_close(self) -> bool:
        return self.code in {"constant", "residue"}

    @property
    def is_closed(self) -> bool:
        return any(each.closes for each in self.closings)

    @property
    def is_open(self) -> bool:
        """Still to be weighed and closed."""
        return not self.is_closed and self.shell.making_up_id is None and self.shell.fate == Shell.Fate.KEPT


def series_of(shell: Shell) -> list[Weighing]:
    """The weighings of a skin on its core; where no series was kept, the one weighing of the shell."""
    if "weighings" not in getattr(shell.item, "_prefetched_objects_cache", {}):
        prefetch_related_objects([shell.item], Prefetch("weighings", Weighing.objects.select_related("person")))
    rows = sorted(shell.item.weighings.all(), key=lambda each: each.at)
    rows = [each for each in rows if each.kind == Weighing.Kind.SKIN]
    return rows or ([] if shell.gross_mass_g is None else _only(shell))


def _only(shell: Shell) -> list[Weighing]:
    """Its own mass; where nobody wrote when it was weighed, as of the instant at which it was entered."""
    typed = {"mass_g": shell.as_typed["gross_mass_g"]} if "gross_mass_g" in shell.as_typed else {}
    words = "first weighing" if shell.weighed_at else "first weighing, its time not recorded"
    at = shell.weighed_at or shell.created_at
    return [
        Weighing(
            item=shell.item, kind=Weighing.Kind.SKIN, at=at, mass_g=shell.gross_mass_g, as_typed=typed, conditions=words
        )
    ]


def pairs_of(rows: Iterable[Weighing]) -> list[judgement.Weighing]:
    """As the chemistry takes them."""
    return [judgement.Weighing(each.at, ureg.Quantity(each.mass_g, "g")) for each in rows]


def settled_by(shell: Shell, day: date) -> bool:
    """Whether the mass was constant on a day, by what had been weighed until then."""
    rows = [each for each in series_of(shell) if timezone.localdate(each.at) <= day]
    return settled_since(pairs_of(rows)) is not None


def drying_of_shell(shell: Shell) -> Drying | None:
    """The same for a shell by itself; give it with its cathode, run and item."""
    if not shell.cathode.core_id:
        return None
    run = Run.objects.with_sheet(points=False).get(pk=shell.cathode.run_id)
    cathodes, sheet = list(run.cathodes.all()), sheet_of(run)
    charge = charge_of(run, sheet, None).quantity
    shares = shares_on(rail_of(sheet, cathodes), charge)
    return next((each for each in dryings_of(cathodes, charge, metal_of(run), shell, shares)), None)


def shares_on(rail: Rail, charge: Quantity) -> dict[int, Quantity]:
    """By cathode, on a rail that changed, by the segments in which each hung; empty on a constant one."""
    if not rail.changed:
        return {}
    found = {each.pk: rail.share(index, charge).working for index, each in enumerate(rail.cathodes)}
    return {key: working.quantity for key, working in found.items() if working}


def weighings_of(cathodes: list[Cathode]) -> list[judgement.Weighing]:
    """The series by which a rail with one core is judged; several pieces have no common mass."""
    shell = getattr(cathodes[0], "shell", None) if len(cathodes) == 1 else None
    return pairs_of(series_of(shell)) if shell else []


def bare_drying_of(shell: Shell) -> Drying:
    """Without the charge of its run: the weighings and whether they agree, for pages that show no efficiency."""
    return drying_of(shell, None, ureg.Quantity(0.0, "A*h"))


def dryings_of(
    cathodes: list[Cathode],
    charge: Quantity,
    metal: Ion | None,
    only: Shell | None = None,
    shares: Mapping[int, Quantity] | None = None,
) -> Iterator[Drying]:
    """Of every skinned core on a rail; where several hung there, each by its share of the area, or those given."""
    areas = areas_of(cathodes)
    for cathode, area in zip(cathodes, areas, strict=True):
        shell = getattr(cathode, "shell", None)
        if not cathode.core_id or shell is None or (only is not None and shell.pk != only.pk):
            continue
        share = (shares or {}).get(cathode.pk)
        if share is None:
            share = charge if len(cathodes) == 1 else share_by_area(charge, area, areas)
        yield drying_of(shell, metal, share)


def drying_of(shell: Shell, metal: Ion | None, charge: Quantity) -> Drying:
    """`charge` is what passed on this cathode."""
    rows, ready = series_of(shell), quantity(shell.cathode, "tare_g")
    if not rows or ready is None or apart(ready.m)[0] <= 0:
        return _standing(shell, (), None, [])
    points, before = [], None
    for row in rows:
        points.append(_point(row, ready, metal, charge, before))
        before = row
    left = _residue(points[-1], metal, charge)
    return replace(_standing(shell, tuple(points), left, rows), whole_g=_whole(ready, metal, charge))


def _whole(ready: Quantity, metal: Ion | None, charge: Quantity) -> float | None:
    return apart((ready + deposited_mass(metal, charge)).m_as("g"))[0] if metal is not None else None


def _point(row: Weighing, ready: Quantity, metal: Ion | None, charge: Quantity, before: Weighing | None) -> Point:
    mass = quantity(row, "mass_g")
    gain = figure("Gain", "_g", gain_over, evidence=MEASURED, mass=mass, ready=ready)
    apparent = None
    if metal is not None and gain.working is not None and apart(charge.m)[0] > 0:
        apparent = figure(
            "Apparent efficiency", "_pct", apparent_efficiency, evidence=MEASURED,
            ion=metal, gain=gain.working.quantity, charge=charge,
        )  # fmt: skip
    return Point(row, gain, apparent, None if before is None else round(row.mass_g - before.mass_g, 6))


def _residue(last: Point, metal: Ion | None, charge: Quantity) -> Figure | None:
    """What of the last gain cannot be copper; an estimate, for how much metal grew is not known."""
    if last.efficiency is None or last.gain.working is None:
        return None
    found = figure(
        "Residue inside", "_g", residue, evidence=MEASURED,
        ion=metal, gain=last.gain.working.quantity, charge=charge, efficiency=taken_efficiency(TAKEN_AT),
    )  # fmt: skip
    if found.value is None or found.value <= 0:
        return None
    note = (
        f"If the deposit is taken at {TAKEN_AT * 100:.0f} % of the theory: solution and salt that stayed in the core."
    )
    return replace(found, kind="estimated", note=note)


def _standing(shell: Shell, points: tuple[Point, ...], left: Figure | None, rows: list[Weighing]) -> Drying:
    pairs = pairs_of(rows)
    since, closings = settled_since(pairs), _closings(shell)
    code = _code(points, since, closed_on(shell, closings), shell)
    again = settles_at_the_earliest(pairs) if code in {"over", "drying"} else None
    within = figure("Agreement asked for", "_g", agreement_within, mass=pairs[-1].mass) if pairs else None
    shape, word = STANDINGS[code]
    words = sentence_of(code, points[-1] if points else None, since, again, within)
    return Drying(shell, points, code, shape, word, words, left, within, closings)


def _closings(shell: Shell) -> tuple[CoreClosing, ...]:
    """With those who signed them; asked of the database once for each row in hand."""
    if "closings" not in getattr(shell, "_prefetched_objects_cache", {}):
        prefetch_related_objects([shell], Prefetch("closings", CoreClosing.objects.select_related("signed_by")))
    return tuple(shell.closings.all())


def closed_on(shell: Shell, closings: Iterable[CoreClosing]) -> date | None:
    """The day on which it was closed; without a closing on record, the day on which it was made up."""
    closed = next((each for each in closings if each.closes), None)
    if closed:
        return closed.sealed_on or closed.decided_on
    return shell.making_up.made_up_on if shell.making_up_id else None


def _code(
    points: tuple[Point, ...],
    since: judgement.Weighing | None,
    closed: date | None,
    shell: Shell,
) -> str:
    """Closed too early stays for ever: what is weighed afterwards is no longer the open core."""
    if closed is not None and not settled_by(shell, closed):
        return "early"
    if not points:
        return "unweighed"
    found = points[-1].efficiency
    over = found is not None and found.value is not None and found.value > 100
    if since is not None:
        return "residue" if over else "constant"
    return "over" if over else "drying"
