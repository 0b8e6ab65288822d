"""Runs of the demo scenario as rows (all invented): local times of the bench sheet, figures as written there."""

from datetime import datetime
from zoneinfo import ZoneInfo

from process.models import Core, Event, Pull, Reading, Run, Shell, ThicknessPoint
from process.seeding import ensure_ranges
from records.models import Item
from tests.factories import make_bath, make_cathode, make_item, make_mould, make_run, make_user

BERLIN = ZoneInfo("Europe/Berlin")


def at(text: str, fold: int = 0) -> datetime:
    """An instant from a local time, "2026-02-16 09:00"."""
    return datetime.fromisoformat(text).replace(tzinfo=BERLIN, fold=fold)


def event(run: Run, when: str, kind: str, current_a: float | None = None, **fields) -> Event:
    return Event.objects.create(run=run, at=at(when), kind=kind, current_a=current_a, **fields)


def reading(run: Run, when: str, current_a: float | None, **fields) -> Reading:
    return Reading.objects.create(run=run, at=at(when), current_a=current_a, **fields)


def weighed(cathode, number: str, gross_g: float, trimmed_g: float | None = None, **fields) -> Shell:
    item = Item.objects.create(number=number, kind="shell", title=f"Shell {number}")
    return Shell.objects.create(item=item, cathode=cathode, gross_mass_g=gross_g, trimmed_mass_g=trimmed_g, **fields)


def run_on_the_bench(client) -> Run:
    """In the bath since nine, on whose sheet a technician writes; 0.804 dm² hang on its rail."""
    ensure_ranges()
    client.force_login(make_user("technician", "pell"))
    run = make_run("D-2026-002", moulds=[make_mould(), make_mould()])
    event(run, "2026-02-16 09:00", "entry", 0.24, voltage_v=0.31, temperature_degc=21.2)
    return run


def medal_run(number: str = "D-2026-002", *, weigh: bool = True) -> Run:
    """7.2: both faces of the medal, 33 hours, 36.85 Ah."""
    run = make_run(number, planned_start_at=at("2026-02-16 09:00"))
    obverse = make_cathode(run, label="obverse", mould=make_mould(side="obverse"))
    reverse = make_cathode(run, label="reverse", mould=make_mould(side="reverse"))
    event(run, "2026-02-16 09:00", "entry", 0.24, voltage_v=0.31, temperature_degc=21.2)
    event(run, "2026-02-16 10:40", "covered", 0.24)
    event(run, "2026-02-16 11:00", "current", 0.64)
    event(run, "2026-02-16 13:00", "current", 1.21)
    for when in ("16 15:00", "16 17:30", "17 08:30", "17 12:00", "17 15:00"):
        reading(run, f"2026-02-{when}", 1.21)
    event(run, "2026-02-17 18:00", "stop", 0)
    if weigh:
        shell = weighed(obverse, "S-03", 22.05, 15.10)
        weighed(reverse, "S-04", 21.13, 14.52)
        for place, thick in (("rim", 0.71), ("field, 12 h", 0.60), ("under chin", 0.33), ("legend", 0.47)):
            ThicknessPoint.objects.create(shell=shell, place=place, thickness_mm=thick, method="section")
    return run


def coin_run() -> Run:
    """7.3: both faces of the coin, cut off by the mains at night; the unit came back by itself."""
    run = make_run("D-2026-003", planned_thickness_mm=0.42, planned_efficiency_pct=99)
    for label, number, gross, trimmed in (("obverse", "S-05", 5.27, 2.85), ("reverse", "S-06", 5.17, 2.80)):
        cathode = make_cathode(run, label=label, face_area_dm2=0.081, total_area_dm2=0.140)
        weighed(cathode, number, gross, trimmed)
    event(run, "2026-03-02 15:00", "entry", 0.08)
    event(run, "2026-03-02 16:30", "current", 0.20)
    event(run, "2026-03-02 18:00", "current", 0.42)
    event(run, "2026-03-03 02:20", "interruption", 0, cause="power", handling="immersed")
    event(run, "2026-03-03 05:30", "restart", 0.42, returned_by_itself=True, activation="none")
    event(run, "2026-03-03 08:20", "interruption", 0, cause="inspection", handling="wet")
    event(run, "2026-03-03 08:45", "restart", 0.20, activation="acid")
    event(run, "2026-03-03 09:00", "current", 0.42)
    event(run, "2026-03-03 18:00", "stop", 0)
    return run


def mask_run(mass_g: float | None = None) -> Run:
    """7.6: the skin on the plaster core, over the night in which the clocks went forward."""
    run = make_run(
        "D-2026-006", planned_current_density_a_dm2=1.2, planned_thickness_mm=0.25, planned_efficiency_pct=99
    )
    item = make_item("P-2026-01", kind="core", title="Plaster core")
    pull = Pull.objects.create(mould=make_mould(), number_count=1, use="cast", used_on=at("2026-03-17 12:00").date())
    core = Core.objects.create(
        item=item, pull=pull, material="gypsum", cast_on=at("2026-03-17 12:00").date(), ready_mass_g=1312.4
    )
    cathode = make_cathode(run, label="mask", core=core, face_area_dm2=8.6, total_area_dm2=8.6, tare_g=1312.4)
    event(run, "2026-03-28 18:00", "entry", 3.0)
    event(run, "2026-03-28 19:00", "current", 6.0)
    event(run, "2026-03-28 20:00", "current", 10.3)
    for when in ("28 22:00", "29 00:00", "29 01:30", "29 03:30", "29 08:00"):
        reading(run, f"2026-03-{when}", 10.3)
    event(run, "2026-03-29 12:00", "stop", 0)
    if mass_g:
        weighed(cathode, "S-11", mass_g)
    return run


def failed_run(bath=None) -> Run:
    """7.1: 15 A/ft² set as 15 A/dm²."""
    run = make_run("D-2026-001", bath=bath or make_bath())
    for label, number, gross in (("obverse", "S-01", 3.6), ("reverse", "S-02", 3.3)):
        weighed(make_cathode(run, label=label), number, gross)
    event(run, "2026-02-11 10:10", "entry", 11.8)
    event(run, "2026-02-11 10:50", "stop", 0)
    return run
