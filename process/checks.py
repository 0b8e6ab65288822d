"""What process adds to the register's gates: the bath, the mould's pulls, the inspection."""

from datetime import date

from django.db.models import Exists, OuterRef

from process.models import Cathode, Event, MakingUp, Run, Shell
from process.services.copies import copies_check, made_riding
from process.services.cores import DRYING, closing_check
from process.services.hot_work import CHECK, hot_work_check
from process.services.moulds import pull_check
from process.summaries.baths import analysis_standing
from process.summaries.core_drying import core_drying
from process.summaries.cores import leak_of, leak_sentence, leak_words
from records import extensions
from records.clock import day_words
from records.gates import Check, Subject, gate_check
from records.models import Gate
from records.roles import CONSERVATOR, TECHNICIAN


@gate_check(Gate.BATH, "bath analysed")
def analysis_current(subject: Subject, on: date) -> Check | None:
    """An analysis of the bath that still holds, by days and by charge, and lies within its limits."""
    cathode: Cathode = subject.thing
    standing = analysis_standing(cathode.run.bath, on)
    return Check("bath analysed", standing.holds, standing.sentence, TECHNICIAN)


@gate_check(Gate.BATH, "pull left")
def pull_left(subject: Subject, on: date) -> Check | None:
    """A pull left on the mould, by what it bears and by the consent."""
    cathode: Cathode = subject.thing
    return pull_check(cathode.mould) if cathode.mould else None


@gate_check(Gate.BATH, "mould present")
def mould_present(subject: Subject, on: date) -> Check | None:
    """The mould is in store, and no other run uses it now."""
    cathode: Cathode = subject.thing
    if cathode.mould is None:
        return None
    mould = cathode.mould
    if mould.fate != mould.Fate.IN_STORE and (mould.fate_on is None or mould.fate_on < on):
        since = f" since {day_words(mould.fate_on)}" if mould.fate_on else ""
        sentence = f"{mould.item.number} is {mould.get_fate_display()}{since}."
        return Check("mould present", False, sentence, CONSERVATOR)
    gone = Event.objects.filter(cathode=OuterRef("pk"), kind=Event.Kind.TAKEN_OUT)
    elsewhere = mould.cathodes.exclude(run=cathode.run).filter(~Exists(gone), run__in=Run.objects.in_the_bath())
    running = elsewhere.select_related("run").first()
    if running:
        return Check("mould present", False, f"{mould.item.number} hangs in run {running.run.number}.", TECHNICIAN)
    return Check("mould present", True, f"{mould.item.number} is at hand.")


@gate_check(Gate.BATH, "core at constant mass")
def core_at_constant_mass(subject: Subject, on: date) -> Check | None:
    """What is still in the plaster when it is waterproofed stays there, and comes out through the skin."""
    cathode: Cathode = subject.thing
    if not cathode.core_id:
        return None
    drying = core_drying(cathode.core, on)
    sentence = f"{cathode.core.item.number}: {drying.words}"
    return Check("core at constant mass", drying.is_constant, sentence, TECHNICIAN)


@gate_check(Gate.BATH, "core waterproof")
def core_waterproof(subject: Subject, on: date) -> Check | None:
    """A core that took up too much water in its leak test would drink the bath; one not tested may do so."""
    cathode: Cathode = subject.thing
    if not cathode.core_id:
        return None
    leak = leak_of(cathode.core)
    words = leak_sentence(leak)
    tight = leak is not None and leak.value is not None and not leak_words(leak)
    return Check("core waterproof", tight, f"{cathode.core.item.number}: {words}", CONSERVATOR)


@gate_check(Gate.ACCEPT, DRYING)
def core_dry(subject: Subject, on: date) -> Check | None:
    """A skinned core is closed and made up at constant mass; asked of the shell when that happens."""
    return closing_check(subject.thing, on) if isinstance(subject.thing, Shell) else None


@gate_check(Gate.ACCEPT, CHECK)
def no_heat(subject: Subject, on: date) -> Check | None:
    """Shells with a boundary that is not to be trusted are not soldered or filled hot; asked when they are made up."""
    thing = subject.thing
    return hot_work_check(thing, list(thing.shells.all())) if isinstance(thing, MakingUp) and thing.pk else None


@gate_check(Gate.PERMISSION, "copies left")
def copies_left(subject: Subject, on: date) -> Check | None:
    """The owner's consent may say how many copies there may be; asked of a making-up by its own service."""
    return None if subject.act and not subject.act.is_moulding else copies_check(subject.thing, on)


@gate_check(Gate.ACCEPT, "inspected")
def inspected(subject: Subject, on: date) -> Check | None:
    """A signed inspection that accepts the copy."""
    copy = subject.thing
    if not copy.made_here:
        return None
    inspection = next((i for i in copy.inspections.all() if i.is_signed), None)
    if inspection is None:
        return Check("inspected", False, f"{copy.number} has no signed inspection.", CONSERVATOR)
    sentence = f"Inspection of {day_words(inspection.inspected_on)}: {inspection.get_decision_display()}."
    return Check("inspected", inspection.accepts, sentence, CONSERVATOR)


extensions.gate_related.append("inspections")
extensions.gate_columns["made_rows"] = made_riding
