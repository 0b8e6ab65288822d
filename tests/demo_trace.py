"""Every number on the first pages of a process report, reckoned again from the rows with plain arithmetic.

Independent of the register's formulas: k = M/(2F) with M = 63.546 g/mol (IUPAC 2021) and F = 96485.33212 C/mol (CODATA
2018); CuSO₄·5H₂O 249.68 and H₂SO₄ 98.07 g/mol (IUPAC 2021, rounded); copper 8.92 g/cm³ as the run states; water at
22 °C 0.99777 g/cm³ and air 0.0012 g/cm³ (common tables, from memory).
"""

import re
from collections.abc import Iterator
from itertools import pairwise

from django.utils import timezone

from process.models import BathAnalysis, MakingUp, Mould, Run, Shell
from records.models import Item, Measurement

K_G_AH = 63.546 * 3600 / (2 * 96485.33212)
SULPHATE, ACID, WATER, AIR = 249.68, 98.07, 0.99777, 0.0012


def traced(copy: Item) -> Iterator[tuple[str, str]]:
    """What each number is, as its words stand on paper, and the number that follows from the rows."""
    making = MakingUp.objects.get(copy=copy)
    shells = list(making.shells.select_related("cathode").order_by("item__number"))
    run = Run.objects.get(cathodes__shell=shells[0])
    yield from _bath(run)
    yield from _run(run, shells)
    for shell in shells:
        yield from _shell(shell)
    yield from _copy(copy, making, shells)


def _bath(run: Run) -> Iterator[tuple[str, str]]:
    began = run.events.get(kind="entry").at
    last = BathAnalysis.objects.filter(bath=run.bath, sampled_at__lte=began).latest("sampled_at")
    warmth = [row.temperature_degc for row in _rows(run) if row.temperature_degc is not None]
    yield "Volume", f"{run.bath.volume_l:.1f}"
    yield "Last analysis before the start", f"{last.number}, {last.sampled_at:%-d %B %Y}"
    sulphate = last.copper_titrant_ml * last.copper_titrant_mol_l * SULPHATE / last.copper_sample_ml
    acid = last.acid_titrant_ml * last.acid_titrant_mol_l * ACID / (2 * last.acid_sample_ml)
    yield "Copper sulphate pentahydrate", f"{sulphate:.1f}"
    yield "Sulphuric acid", f"{acid:.1f}"
    yield "Chloride", f"{last.chloride_mg_l:.0f}"
    yield "Temperature in the run", f"{min(warmth):.1f} to {max(warmth):.1f}"


def _rows(run: Run) -> list:
    return sorted((*run.readings.all(), *run.events.all()), key=lambda row: row.at)


def charge_of(run: Run) -> float:
    """The current written at an instant holds until the next entry; inclusive of the stop, which writes 0 A."""
    known = [(row.at, row.current_a) for row in _rows(run) if row.current_a is not None]
    return sum((end - at).total_seconds() / 3600 * current for (at, current), (end, _) in pairwise(known))


def gain_of(shell: Shell) -> float:
    return shell.gross_mass_g - shell.cathode.tare_g


def _run(run: Run, shells: list[Shell]) -> Iterator[tuple[str, str]]:
    area = sum(shell.cathode.total_area_dm2 for shell in shells)
    planned = 8.92 * area * run.planned_thickness_mm * 10 / (K_G_AH * run.planned_efficiency_pct / 100)
    charge, gained = charge_of(run), sum(map(gain_of, shells))
    hours = (run.events.get(kind="stop").at - run.events.get(kind="entry").at).total_seconds() / 3600
    steps = [step.current_density_a_dm2 * area for step in run.ramp_steps.order_by("order_count")]
    yield (
        "Current density, planned",
        f"{run.planned_current_density_a_dm2:.1f} A/dm² ({steps[-1] / area / 0.1076391:.1f}",
    )
    yield "Target mean thickness", f"{run.planned_thickness_mm:.2f}"
    yield "Charge, planned", f"{planned:.2f}"
    yield "Ramp, planned", f"{steps[0]:.2f} A for 2.0 h, {steps[1]:.2f} A for 2.0 h, then {steps[2]:.2f} A"
    yield "Charge by the sheet, chosen", f"{charge:.2f}"
    yield "Time elapsed", f"{hours:.1f}"
    yield "Mass by Faraday’s law", f"{charge * K_G_AH:.2f}"
    yield "Gain on the balance", f"{gained:.2f}"
    yield "Efficiency, usual", f"{gained / (charge * K_G_AH) * 100:.1f}"
    for row in _rows(run):
        at = timezone.localtime(row.at)
        yield f"{at:%-d %b %H:%M} +01", "" if row.current_a is None else f"{row.current_a:.2f}"
    for shell in shells:
        share = charge * gain_of(shell) / gained
        yield f"{shell}: The wall is", f"{_mean_mm(shell):.2f} mm thick on average, calculated from {share:.2f}"


def _mean_mm(shell: Shell) -> float:
    return gain_of(shell) / (8.92 * shell.cathode.total_area_dm2) / 10


def _shell(shell: Shell) -> Iterator[tuple[str, str]]:
    cathode, points = shell.cathode, list(shell.thickness_points.all())
    least = min(point.thickness_mm for point in points)
    area = f"{cathode.total_area_dm2:.3f} ± {cathode.plus_minus('total_area_dm2'):.3f}"
    coat = f"{cathode.coat.label}, {cathode.coat_resistance_ohm:g} Ω"
    yield f"{shell}, {cathode.side} {cathode.mould.item.number} {coat} {area}", f"{gain_of(shell):.2f}"
    yield f"the thinnest of {len(points)} measured points is", f"{least:.2f}"
    for point in points:
        yield f"{shell} {point.place}", f"{point.thickness_mm:.2f} {point.method} {point.measured_on:%-d %B %Y}"
    yield "hatched: mean", f"{shell.trimmed_mass_g / (8.92 * cathode.face_area_dm2) / 10:.2f} mm of the trimmed face"
    for test in shell.coupon_tests.all():
        yield f"{test.number} {test.taken_from}", f"{test.section_mm:.2f}"


def _copy(copy: Item, making: MakingUp, shells: list[Shell]) -> Iterator[tuple[str, str]]:
    mould: Mould = shells[0].cathode.mould
    model = {row.what: row for row in Measurement.objects.filter(item=mould.model).exclude(what="thickness")}
    last, change = copy.inspections.latest("inspected_on"), 1 + mould.shrinkage_pct / 100
    metal = sum(shell.trimmed_mass_g for shell in shells)
    room = model["mass"].mass_g / model["density"].density_g_cm3 * change**3 - metal / 8.92
    fill = room * making.fill_density_g_cm3
    size = model["diameter"].length_mm * change
    yield "Filling, by the room in the shells", f"{fill:.2f}"
    yield "Filling, as weighed", f"{making.fill_mass_g:.1f}"
    yield "Density of the filling", f"{making.fill_density_g_cm3:.2f}"
    yield "Temperature at the shell", f"{making.fill_temperature_degc:.0f}"
    yield "Made up on", f"{making.made_up_on:%-d %B %Y}"
    yield "Mass predicted", f"{metal + fill:.2f}"
    yield "Mass measured", f"{last.mass_g:.2f}"
    yield "Mass against the model", f"{last.mass_g / model['mass'].mass_g * 100:.1f}"
    yield "Diameter predicted", f"{size:.2f}"
    yield "Diameter measured", f"{last.diameter_mm:.2f}"
    yield "Deviation", f"{(last.diameter_mm / size - 1) * 100:.2f}".replace("-", "−")
    yield "Thickness of the piece", f"{last.finished_thickness_mm:.2f}"
    yield from _weighed_in_water(mould.model)
    yield "Inspected on", f"{last.inspected_on:%-d %B %Y}"
    yield "By", str(last.inspector)
    yield f"{last.signed_by} Conservator · Signed in the register on", f"{last.signed_at:%-d %B %Y}"
    for mark in copy.marks.all():
        yield "Letter height", f"{mark.letter_height_mm:.2f}"
        yield "Made", f"{mark.made_on:%-d %B %Y}, {mark.made_by}"
    for one in (shell.cathode.mould for shell in shells):
        yield (
            f"{one.item.number} {one.model.number}, {one.side} {one.material.label} {one.made_on:%-d %B %Y}",
            (f"{one.shrinkage_pct:.2f} {one.pulls.count()} / {one.pulls_allowed_count}".replace("-", "−")),
        )


def _weighed_in_water(model: Item) -> Iterator[tuple[str, str]]:
    for row in model.hydrostatic_weighings.all():
        lost = row.in_air_g - row.in_water_g
        yield f"Density of {model.number}, in water", f"{row.in_air_g * (WATER - AIR) / lost + AIR:.2f}"


def untraced(words: str, copy: Item) -> list[str]:
    """What of the trace does not stand on the paper, label and number side by side."""
    plain = re.sub(r"\s+", " ", words)
    said = [f"{label} {number}".strip() for label, number in traced(copy)]
    return [each for each in said if each not in plain]
