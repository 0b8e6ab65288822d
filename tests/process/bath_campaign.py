"""The campaign of the scenario in one bath: analyses, runs, anodes, and what was done to it."""

from datetime import UTC, datetime, timedelta

from process.models import Anode, AnodeWeighing, BathService, Event, Shell
from tests.factories import make_analysis, make_bath, make_cathode, make_item, make_mould, make_run

DAY = datetime(2026, 2, 10, 8, 0, tzinfo=UTC)


def typed(row, **spreads: float):
    """With ± as a person would have typed it."""
    row.as_typed = {name: {"plus_minus": spread} for name, spread in spreads.items()}
    row.save()
    return row


def analysed(bath, number: str, at: datetime, copper_ml: float, acid_ml: float):
    row = make_analysis(bath, number, sampled_at=at, copper_titrant_ml=copper_ml, acid_titrant_ml=acid_ml)
    return typed(row, copper_titrant_ml=0.012, acid_titrant_ml=0.06)


def grown(bath, number: str, at: datetime, hours: float, amperes: float, grams: float, **run_fields):
    """A run of constant current whose one shell was weighed."""
    run = make_run(number, bath=bath, **run_fields)
    Event.objects.create(run=run, kind="entry", at=at, current_a=amperes)
    Event.objects.create(run=run, kind="stop", at=at + timedelta(hours=hours), current_a=0.0)
    cathode = make_cathode(run, mould=make_mould())
    item = make_item(f"S-{number}", kind="shell", title="Shell")
    Shell.objects.create(item=item, cathode=cathode, gross_mass_g=grams)
    return run


# SCENARIO 7: charge and gain of each run; the failed one of 6.90 g counts, the core's gain is 99 % of the theory.
RUNS = [("D-1", 7.867, 6.90), ("D-2", 36.85, 43.18), ("D-3", 8.94, 10.44), ("D-4", 20.95, 24.52), ("D-5", 50.16, 58.75),
        ("D-6", 163.5, 191.9)]  # fmt: skip


def tell_of_the_campaign():
    """SCENARIO 6: from BA-02 to BA-03, with anodes, sludge and what was carried out."""
    bath = make_bath("B-01", opening_charge_ah=640.0)
    analysed(bath, "BA-02", DAY, 8.403, 12.28)
    analysed(bath, "BA-03", datetime(2026, 4, 2, 7, 0, tzinfo=UTC), 8.383, 12.05)
    for day, (number, charge_ah, grams) in enumerate(RUNS):
        grown(bath, number, DAY + timedelta(days=1 + 7 * day), 10, charge_ah / 10, grams)
    for label, before, after in (("A1", 4012, 3836), ("A2", 3987, 3816)):
        anode = Anode.objects.create(bath=bath, label=label)
        for at, grams in ((DAY, before), (datetime(2026, 4, 2, 6, 30, tzinfo=UTC), after)):
            typed(AnodeWeighing.objects.create(anode=anode, weighed_at=at, mass_g=grams), mass_g=1.0)
    work = {"bath": bath, "done_at": DAY + timedelta(days=47)}
    BathService.objects.create(kind="sludge", mass_g=3.1, **work)
    BathService.objects.create(kind="drag_out", volume_l=0.5, **work)
    return bath
