"""A commission as a file: its eight gates, where it stands, and what keeps it open; all reckoned from facts."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from django.db.models import Exists, OuterRef, Q, QuerySet

from records import clock, extensions
from records.extensions import OpenMatter
from records.gate_overview import GateLine, gates_of, pieces_of
from records.gates import Check
from records.models import Commission, Consent, Duty, FileStep, Gate, Item, Specification, UnmetGate

WAITS_FOR = {
    Gate.PERMISSION: "No original is named yet.", Gate.RISK: "No original is named yet.",
    Gate.BEFORE: "No original is named yet.", Gate.AFTER: "No original is named yet.",
    Gate.BATH: "No run is planned for it yet.", Gate.MARK: "No copy is made yet.",
    Gate.ACCEPT: "No copy is made yet.", Gate.IDENTIFY: "No copy is made yet.",
}  # fmt: skip
OF_THE_WAY = (Gate.PERMISSION, Gate.RISK, Gate.BEFORE)
OF_COPIES = {Gate.MARK, Gate.ACCEPT, Gate.IDENTIFY}


@dataclass(frozen=True)
class GateGroup:
    """One of the eight gates with every piece that stands before it."""

    gate: str
    label: str
    lines: list[GateLine]

    @property
    def state(self) -> str:
        states = {line.state for line in self.lines}
        return next((state for state in ("blocked", "look", "open") if state in states), "done" if states else "open")

    @property
    def empty_words(self) -> str:
        return WAITS_FOR[Gate(self.gate)]


@dataclass(frozen=True)
class Standing:
    state: str
    words: str


@dataclass(frozen=True)
class CommissionFile:
    commission: Commission
    pieces: list[Item]
    groups: list[GateGroup]
    duties: list[Duty]
    consents: list[Consent]
    unfinished: list[OpenMatter]

    @property
    def originals(self) -> list[Item]:
        return [piece for piece in self.pieces if not piece.was_made]

    @property
    def copies(self) -> list[Item]:
        return [piece for piece in self.pieces if piece.was_made]

    def lines(self, *wanted: str) -> list[GateLine]:
        return [line for group in self.groups if not wanted or group.gate in wanted for line in group.lines]


def file_rows() -> QuerySet[Commission]:
    """Commissions with what a page must know of them before it asks for more."""
    specified = Specification.objects.filter(commission=OuterRef("pk"))
    steps = FileStep.objects.filter(commission=OuterRef("pk"))
    rows = Commission.objects.select_related("requester", "purpose")
    return rows.annotate(is_specified=Exists(specified), has_steps=Exists(steps))


def read_file(commission: Commission) -> CommissionFile:
    """Of a commission from `file_rows`."""
    pieces = pieces_of(commission)
    found = {consent.pk: consent for piece in pieces for consent in piece.consents.all()}
    consents = [each for each in found.values() if commission.pk in each.commission_keys]
    parts = [source(commission, consents) for source in extensions.file_parts]
    lines = gates_of(pieces, clock.today()) + [line for part in parts for line in part.lines]
    lines = _with_what_was_recorded(lines)
    groups = [GateGroup(gate, gate.label, [line for line in lines if line.gate == gate]) for gate in Gate]
    unfinished = [matter for part in parts for matter in part.matters]
    return CommissionFile(commission, pieces, groups, list(duties_of(commission)), consents, unfinished)


def duties_of(commission: Commission) -> QuerySet[Duty]:
    """Its own open ones, and those that its consents lay down for its originals."""
    conditions = Q(consent__in=commission.consents.all(), commission=None)
    rows = Duty.objects.open().filter(Q(commission=commission) | conditions)
    return rows.select_related("item", "consent").distinct()


def _with_what_was_recorded(lines: list[GateLine]) -> list[GateLine]:
    """An unmet check that was recorded afterwards cannot be met any more: it is shown, and waits for nobody."""
    items = {line.item.pk for line in lines if isinstance(line.item, Item)}
    runs = [line.item.number for line in lines if not isinstance(line.item, Item)]
    mine = Q(items__in=items) | Q(subject_number__in=runs)
    rows = list(UnmetGate.objects.filter(mine).values("gate", "check_name", "items", "subject_number", "sentence"))
    return [_recorded_on(line, rows) for line in lines]


def _recorded_on(line: GateLine, rows: list[dict]) -> GateLine:
    mine = [row for row in rows if row["gate"] == line.gate]
    if isinstance(line.item, Item):
        kept = {row["check_name"] for row in mine if row["items"] == line.item.pk}
        return replace(line, checks=[replace(check, is_recorded=check.name in kept) for check in line.checks])
    said = {row["sentence"]: row["check_name"] for row in mine if row["subject_number"] == line.item.number}
    unmet = [Check(name, False, sentence, is_recorded=True) for sentence, name in said.items()]
    return replace(line, checks=unmet or line.checks)


def open_matters(file: CommissionFile, outcome: str = FileStep.Outcome.FULFILLED) -> list[OpenMatter]:
    """What keeps the file open. One that is withdrawn or refused still owes what was begun."""
    matters = [_of_duty(duty) for duty in file.duties if not _ends_with_the_work(duty)]
    wanted, made = file.commission.quantity_count, len(file.copies)
    if outcome == FileStep.Outcome.FULFILLED and made < wanted:
        matters.append(OpenMatter(f"{made} of {wanted} copies that were asked for are made."))
    gates = set(Gate) if outcome == FileStep.Outcome.FULFILLED else OF_COPIES
    for line in file.lines(*gates):
        matters += _unmet(line)
    if outcome != FileStep.Outcome.FULFILLED:
        for line in file.lines(Gate.AFTER):
            matters += _unmet(line) if line.item.moulded_on else []
    return matters + file.unfinished


def _unmet(line: GateLine) -> Iterable[OpenMatter]:
    for check in line.checks:
        if check.state == "blocked":
            words = check.sentence if line.item.number in check.sentence else f"{line.item.number}: {check.sentence}"
            yield OpenMatter(words, check.ask, line.item.get_absolute_url())


def _of_duty(duty: Duty) -> OpenMatter:
    return OpenMatter(f"Due by {clock.day_words(duty.due_on)}: {duty.sentence}.", duty.role)


def _ends_with_the_work(duty: Duty) -> bool:
    """That a consent ends matters only while the work goes on: closing the file is the end that it warns of."""
    return duty.consent_id is not None and duty.due_on == duty.consent.valid_to


def standing_of(file: CommissionFile, today: date) -> Standing:
    """One sentence; never set by hand."""
    if file.commission.closed_on:
        return Standing("done", f"closed on {clock.day_words(file.commission.closed_on)}")
    made, wanted = len(file.copies), file.commission.quantity_count
    if made:
        return _with_copies(file, made, wanted)
    moulded = [piece for piece in file.originals if piece.moulded_on]
    if moulded:
        waiting = next((m for line in file.lines(Gate.AFTER) for m in _unmet(line)), None)
        words = waiting.sentence if waiting else "moulded; the copies are being made"
        return Standing("blocked" if waiting else "open", words)
    late = file.commission.needed_by and file.commission.needed_by < today
    waiting = next((m for line in file.lines(*OF_THE_WAY) for m in _unmet(line)), None)
    if waiting:
        return Standing("blocked", waiting.sentence)
    if not file.commission.is_specified:
        return Standing("look", "not specified yet: say what the copy must become before the first mould")
    return Standing("look" if late else "open", "may be moulded" + (", later than it was needed" if late else ""))


def _with_copies(file: CommissionFile, made: int, wanted: int) -> Standing:
    waiting = next((m for line in file.lines(*OF_COPIES) for m in _unmet(line)), None)
    if waiting:
        return Standing("blocked", waiting.sentence)
    if made < wanted:
        return Standing("open", f"{made} of {wanted} copies made")
    matters = open_matters(file)
    if matters:
        return Standing("look", f"all copies are made; {len(matters)} open matter{'s' if len(matters) > 1 else ''}")
    return Standing("look", "everything is done: the file can be closed")
