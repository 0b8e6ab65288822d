"""The shells of a copy, each with its run, its mould and its wall: calculated mean and measured minimum apart."""

from dataclasses import dataclass, replace

from django.db.models import OuterRef, Prefetch
from pint import Quantity

from process.chemistry.deposit import face_thickness, mean_thickness
from process.chemistry.metals import Ion
from process.models import Cathode, CoreClosing, MakingUp, Mould, Shell, ThicknessPoint
from process.models.run_rows import was_cut
from process.summaries.cathodes import gain_of_shell
from process.summaries.evidence import quantity
from process.summaries.figures import apart, figure
from process.summaries.planning import metal_of
from process.summaries.skins import by_charge, charge_on, with_charge
from records.figures import Figure
from records.models import Item, Measurement
from records.riding import read_rows, riding
from records.units import ureg

WALL = "Mean wall by mass"
CLOSING = (
    "id", "decided_on", "decision", "rinsing", "rinse_ph", "neutralising", "sealed_with", "sealed_on", "vent",
    "pinholes_count", "pinhole_test", "note", "as_typed", "signed_at", "signed_role", "signed_by__name",
)  # fmt: skip


@dataclass(frozen=True)
class ShellPart:
    shell: Shell
    mould: Mould | None
    model: Item | None
    metal: Ion | None
    trimmed: Quantity | None
    face: Figure | None
    least: Figure | None

    @property
    def cathode(self) -> Cathode:
        return self.shell.cathode


def parts_of(making_up: MakingUp) -> tuple[ShellPart, ...]:
    rows = making_up.shells.annotate(was_cut=was_cut("cathode__run")).select_related(
        "item",
        "cathode__run",
        "cathode__mould__item",
        "cathode__mould__model",
        "cathode__core__pull__mould__model",
        "cathode__core__pull__mould__item",
    )
    points = ThicknessPoint.objects.select_related("photo")
    closings = riding(CoreClosing.objects.filter(shell=OuterRef("pk")), CLOSING)
    rows = with_charge(rows.annotate(closing_rows=closings)).prefetch_related(Prefetch("thickness_points", points))
    return tuple(part_of(take_closings(shell)) for shell in rows)


def take_closings(shell: Shell) -> Shell:
    """Leaves the closings that came with it on the row."""
    found = read_rows(CoreClosing, shell.closing_rows, shell=shell)
    closings = shell.closings.all()
    closings._result_cache = sorted(found, key=lambda row: (row.decided_on, row.pk))
    shell._prefetched_objects_cache["closings"] = closings
    return shell


def part_of(shell: Shell) -> ShellPart:
    return replace(bare_part_of(shell), least=least_of(shell))


def bare_part_of(shell: Shell) -> ShellPart:
    """Without what was measured of its thickness, for which nobody asks the database then."""
    cathode = shell.cathode
    mould = cathode.mould or (cathode.core.pull.mould if cathode.core else None)
    metal, trimmed = metal_of(cathode.run), quantity(shell, "trimmed_mass_g")
    face = _face(shell, metal, trimmed) if metal is not None else None
    return ShellPart(shell, mould, mould.model if mould else None, metal, trimmed, face, None)


def _face(shell: Shell, metal: Ion, trimmed: Quantity | None) -> Figure | None:
    """The mean wall; a skin on a core is never trimmed, so there all that was deposited counts, over its whole area.

    Where the core drank, what was deposited follows from the charge, which comes with rows of `with_charge`.
    """
    cathode = shell.cathode
    if trimmed is not None:
        return figure(
            WALL, "_mm", face_thickness, evidence={"trimmed_mass": "measured", "face_area": "measured"},
            ion=metal, trimmed_mass=trimmed, face_area=quantity(cathode, "face_area_dm2"),
        )  # fmt: skip
    gain = gain_of_shell(shell)
    if not cathode.core_id or gain is None or apart(gain.m)[0] <= 0:
        return None
    if (drank := by_charge(WALL, metal, gain, charge_on(shell), cathode)) is not None:
        return drank
    measured = {"mass": "measured", "area": "measured"}
    area = quantity(cathode, "total_area_dm2")
    return figure(WALL, "_mm", mean_thickness, evidence=measured, ion=metal, mass=gain, area=area)


def means_of(part: ShellPart) -> list[float]:
    """Every mean that follows from the mass: of the face, and of all that was deposited over the whole area."""
    shell, cathode = part.shell, part.cathode
    found = [part.face] if part.face else []
    gain = gain_of_shell(shell)
    if part.metal is not None and gain is not None and apart(gain.m)[0] > 0:
        area = quantity(cathode, "total_area_dm2")
        found.append(figure(WALL, "_mm", mean_thickness, ion=part.metal, mass=gain, area=area))
    return [each.value for each in found if each.value is not None]


def least_of(shell: Shell) -> Figure | None:
    """The thinnest measured point; None where nothing was measured, never an estimate."""
    points = list(shell.thickness_points.all())
    if not points:
        return None
    point = min(points, key=lambda each: each.thickness_mm)
    note = f"{point.place}, {point.get_method_display()}; least of {len(points)}"
    return Figure("Thinnest measured", point.thickness_mm, "_mm", "measured", point.plus_minus("thickness_mm"), note)


def changes_of(parts: tuple[ShellPart, ...], making_up: MakingUp) -> list[Quantity]:
    """The linear change of each transfer between the model and the copy."""
    mould = next((part.mould for part in parts if part.mould and part.mould.shrinkage_pct is not None), None)
    changes = [quantity(mould, "shrinkage_pct")] if mould else []
    if making_up.core and making_up.core.linear_change_pct is not None:
        changes.append(quantity(making_up.core, "linear_change_pct"))
    return changes or [ureg.Quantity(0.0, "pct")]


def unknown_changes(parts: tuple[ShellPart, ...], making_up: MakingUp) -> str:
    """Whose linear change nobody wrote, so that it counts as none: “mould”, “core”, “mould and core”, or nothing."""
    mould = next((part.mould for part in parts if part.mould and part.mould.shrinkage_pct is not None), None)
    unknown = {
        "mould": mould is None and any(part.mould for part in parts),
        "core": making_up.core is not None and making_up.core.linear_change_pct is None,
    }
    return " and ".join(name for name, is_unknown in unknown.items() if is_unknown)


def latest(rows: list[Measurement], what: str, column: str) -> Quantity | None:
    """The latest measurement of a kind, with its ±."""
    found = [row for row in rows if row.what == what and getattr(row, column) is not None]
    return quantity(found[-1], column) if found else None
