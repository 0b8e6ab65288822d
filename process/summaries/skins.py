"""The skin of metal on a core: as weighed, or by the charge where the balance says more than Faraday's law allows."""

from copy import copy
from dataclasses import replace

from django.db.models import Exists, F, OuterRef, QuerySet, Subquery, Sum
from pint import Quantity

from process.chemistry.deposit import grown_thickness
from process.chemistry.faraday import deposited_mass
from process.chemistry.metals import Ion
from process.chemistry.terms import above
from process.models import Cathode, Event, Reading, Shell, Trace
from process.summaries.charge import chosen_charge_ah
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from process.summaries.planning import taken_efficiency
from records.figures import Figure
from records.riding import read_rows, riding
from records.units import ureg

ABSORBED = (
    "It weighs more than its charge can deposit: the core drank, so the wall is taken by the charge and the efficiency "
    "planned."
)
READING, EVENT = ("id", "at", "current_a", "meter_ah"), ("id", "at", "current_a", "kind")


def with_charge(shells: QuerySet) -> QuerySet:
    """What the charge of its run is counted from rides along with every shell beside which a core hung."""
    cored = Exists(Cathode.objects.filter(run=OuterRef("run"), core__isnull=False))
    of_run = {"run": OuterRef("cathode__run")}
    traced = Trace.objects.accepted().filter(**of_run).order_by().values("run")
    rail = Cathode.objects.filter(**of_run).order_by().values("run")
    return shells.annotate(
        reading_rows=riding(Reading.objects.filter(cored, **of_run), READING),
        event_rows=riding(Event.objects.filter(cored, **of_run), EVENT),
        run_traced_ah=Subquery(traced.annotate(total=Sum(F("known_ah") + F("bridged_ah"))).values("total")),
        rail_dm2=Subquery(rail.annotate(total=Sum("total_area_dm2")).values("total")),
    )


def charge_on(shell: Shell) -> Quantity | None:
    """Its share by area of the charge that was chosen; None where its rows did not come with it."""
    if not getattr(shell, "event_rows", None) or not shell.rail_dm2:
        return None
    run = copy(shell.cathode.run)  # its rows are a part of what others may ask of it
    run.traced_ah, run._prefetched_objects_cache = shell.run_traced_ah, {}
    for name, rows in (
        ("readings", read_rows(Reading, shell.reading_rows)),
        ("events", read_rows(Event, shell.event_rows)),
    ):
        known = getattr(run, name).all()
        known._result_cache = rows
        run._prefetched_objects_cache[name] = known
    share = shell.cathode.total_area_dm2 / shell.rail_dm2
    return ureg.Quantity(chosen_charge_ah(run) * share, "A*h")


def by_charge(label: str, metal: Ion, gain: Quantity, charge: Quantity | None, cathode: Cathode) -> Figure | None:
    """The wall by its charge, where a core drank; None where the balance can be believed."""
    if not cathode.core_id or charge is None or not above(gain, deposited_mass(metal, charge)):
        return None
    found = figure(
        label, "_mm", grown_thickness, ion=metal, charge=charge, area=quantity(cathode, "total_area_dm2"),
        efficiency=taken_efficiency(cathode.run.planned_efficiency_pct / 100),
    )  # fmt: skip
    return replace(found, kind="estimated", note=found.note or ABSORBED)
