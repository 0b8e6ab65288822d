"""Making shells up into a copy, inspecting and accepting it."""

from dataclasses import replace
from datetime import date

from django.core.exceptions import ValidationError
from django.db import transaction
from django.db.models import OuterRef, Q, QuerySet, Subquery

from process.models import Core, Inspection, MakingUp, Run, Shell
from process.services.cores import pass_closing
from process.services.hot_work import pass_hot_work
from process.summaries.acceptance import faults
from records import clock, gates
from records.consents import Act, quoted
from records.limits import concessions_of
from records.lineage import refuse_impossible
from records.models import Commission, Concession, Consent, DescentLink, Gate, Item, Measurement, Party, Place
from records.riding import read_rows, riding
from records.roles import REGISTRAR
from records.services.holding import pass_holding
from records.services.signing import refuse_if_moved_on, sign

ACCEPTING = {Inspection.Decision.ACCEPT, Inspection.Decision.CONCESSION}
NOT_A_COPY = (Item.Status.EVIDENCE, Item.Status.DESTROYED)
TECHNIQUES = {
    MakingUp.Technique.JOINED: Consent.Technique.HOLLOW, MakingUp.Technique.UNIFACE: Consent.Technique.HOLLOW,
    MakingUp.Technique.CORE: Consent.Technique.CORE, MakingUp.Technique.MATRIX: Consent.Technique.MATRIX,
}  # fmt: skip
# A new copy may be held so; how it leaves the museum later is another matter.
HELD_AS = (
    Item.Status.ACCESSIONED, Item.Status.INVENTORY, Item.Status.HANDLING, Item.Status.FOR_SALE, Item.Status.EXCHANGE,
)  # fmt: skip


def make_up(*, copy: Item, making_up: MakingUp, shells: list[Shell], afterwards: bool = False) -> Item:
    """A copy with its own number comes to be; its shells are used and its steps of descent written."""
    with transaction.atomic():
        held = _hold(shells)
        making_up.core = _core_of(making_up, held)
        copy.kind, copy.status = Item.Kind.COPY, Item.Status.WORKSHOP
        copy.save()
        _within_consent(copy, held, making_up, afterwards)
        for shell in held:
            pass_closing(shell=shell, on=making_up.made_up_on, afterwards=afterwards, also=(copy,))
        pass_hot_work(copy=copy, making_up=making_up, shells=held, afterwards=afterwards)
        making_up.copy = copy
        making_up.save(force_insert=True)
        parts = [shell.item for shell in held] + ([making_up.core.item] if making_up.core else [])
        for part in parts:
            _descend(part, copy, making_up)
        for shell in held:
            shell.making_up, shell.fate = making_up, Shell.Fate.USED
            shell.save()
        if making_up.commission:
            making_up.commission.copies.add(copy)
    return copy


def copies_check(model: Item, on: date, commission: Commission | None = None) -> gates.Check | None:
    """The copies that consents allow of a piece against those made of it; a rejected one is not a copy.

    For a commission its own consents count, and the copies made under them; else all of the piece together.
    """
    limited = [consent for consent in model.consents.all() if consent.copies_max_count is not None]
    if commission is not None:
        limited = [consent for consent in limited if _covers(consent, commission.pk)]
    if not limited:
        return None
    made = {row.copy.number: row.commission_id for row in made_of(model) if row.made_up_on <= on}
    allowed, numbers = sum(consent.copies_max_count for consent in limited), sorted(made)
    if commission is not None:
        under = [(c.copies_max_count, [n for n in numbers if _covers(c, made[n])]) for c in limited]
        allowed, numbers = min(under, key=lambda each: each[0] - len(each[1]))
    named = f" ({', '.join(numbers)})" if numbers else ""
    by = clock.day_words(on)
    what = "1 copy that the owner allows was" if allowed == 1 else f"{allowed} copies that the owner allows were"
    sentence = f"{model.number}: {len(numbers)} of {what} made by {by}{named}."
    sentence += f" {quoted(limited[0], 'copies')}" if len(numbers) >= allowed else ""
    return gates.Check("copies left", len(numbers) < allowed, sentence, REGISTRAR)


MADE = ("made_up_on", "commission_id", "copy__number")


def made_riding() -> Subquery:
    """The copies made of a piece, beside the question for it."""
    of_model = Q(shells__cathode__mould__model=OuterRef("pk")) | Q(core__pull__mould__model=OuterRef("pk"))
    return riding(MakingUp.objects.filter(of_model).exclude(copy__status__in=NOT_A_COPY), MADE)


def made_of(model: Item) -> list[MakingUp]:
    """Asked of the database only where they did not come with the piece; a copy of two shells comes twice."""
    row = model if hasattr(model, "made_rows") else Item.objects.annotate(made_rows=made_riding()).get(pk=model.pk)
    return read_rows(MakingUp, row.made_rows)


def _covers(consent: Consent, commission_pk: int | None) -> bool:
    """A copy without a commission counts under every consent, a consent without one covers every copy."""
    named = consent.commission_keys
    return commission_pk is None or not named or commission_pk in named


def _within_consent(copy: Item, shells: list[Shell], making_up: MakingUp, afterwards: bool) -> None:
    """One copy more than the owner allows needs a concession for the permission."""
    on = making_up.made_up_on
    commission = making_up.commission
    act = Act(
        words=f"{copy.number} is made up", commission=commission, techniques=(TECHNIQUES[making_up.technique],),
        purposes=(commission.purpose.label,) if commission else (),
    )  # fmt: skip
    moulds = [s.cathode.mould or (s.cathode.core.pull.mould if s.cathode.core else None) for s in shells]
    for model in {mould.model for mould in moulds if mould}:
        subject = gates.Subject(model, copy.number, (model, copy))
        gates.pass_gates([Gate.PERMISSION], replace(subject, act=act), on, afterwards=afterwards)
        if check := copies_check(model, on, commission):
            gates.pass_check(Gate.PERMISSION, check, subject, on, afterwards=afterwards)


def _hold(shells: list[Shell]) -> list[Shell]:
    """The shells as they are now, kept to this transaction: two people cannot use the same one."""
    rows = Shell.objects.select_for_update(of=("self",)).select_related(
        "item", "cathode__run", "cathode__core__item", "cathode__core__pull__mould__model", "cathode__mould__model"
    )
    held = list(rows.filter(pk__in=[shell.pk for shell in shells]))
    if not held:
        raise ValidationError("Choose at least one shell: a copy is made of something.")
    for shell in held:
        if shell.making_up_id:
            raise ValidationError(f"Shell {shell} is part of {shell.making_up.copy.number} already.")
        if shell.fate == Shell.Fate.SCRAP:
            raise ValidationError(f"Shell {shell} is scrap, kept as evidence: it cannot be made up.")
        if shell.cathode.run.outcome == Run.Outcome.FAILED:
            raise ValidationError(f"Shell {shell} grew in {shell.cathode.run}, a failed run: it makes no copy.")
    return held


def _core_of(making_up: MakingUp, shells: list[Shell]) -> Core | None:
    """The core on which a skin grew stays inside it; nobody has to choose it twice."""
    grown_on = {shell.cathode.core for shell in shells if shell.cathode.core}
    core = making_up.core or next(iter(grown_on), None)
    if making_up.technique == MakingUp.Technique.CORE and core is None:
        raise ValidationError({"core": "Choose the core that stays inside: none of these shells grew on one."})
    if making_up.technique != MakingUp.Technique.CORE and core is not None:
        raise ValidationError({"technique": f"{core} stays inside this piece: the technique is a skin on a core."})
    if grown_on - {core}:
        raise ValidationError(
            {"core": f"These shells grew on {', '.join(sorted(map(str, grown_on)))}: a skin stays on its own core."}
        )
    if core and (other := core.made_up.exclude(pk=making_up.pk).select_related("copy").first()):
        raise ValidationError({"core": f"{core} is inside {other.copy.number} already."})
    return core


def _descend(part: Item, copy: Item, making_up: MakingUp) -> None:
    link = DescentLink(
        source=part, target=copy, transfer=DescentLink.Transfer.MAKING_UP, happened_on=making_up.made_up_on
    )
    refuse_impossible(link)
    link.save()


def accept(*, inspection: Inspection, party: Party, role: str, status: str = "", place: Place | None = None) -> None:
    """Sign an inspection. A copy without a photographed permanent mark is not accepted, unless a concession says so."""
    copy = inspection.copy
    if not copy.made_here:
        raise ValidationError(f"{copy.number} was not made here: a historic copy is flagged, not accepted.")
    with transaction.atomic():
        refuse_if_moved_on(inspection)
        # As it is now, kept to this transaction: what others wrote since it was read is not written over.
        copy = inspection.copy = Item.objects.select_for_update().get(pk=copy.pk)
        copy.place = place or copy.place
        if inspection.decision in ACCEPTING:
            _let_in(inspection, status)
        else:
            rejected = inspection.decision == Inspection.Decision.REJECT
            copy.status = Item.Status.EVIDENCE if rejected else Item.Status.WORKSHOP
            copy.save()
        sign(row=inspection, party=party, role=role)


def _let_in(inspection: Inspection, status: str) -> None:
    """The gate is passed, the copy is held as said, and what was measured becomes its measurements."""
    copy = inspection.copy
    if inspection.decision == Inspection.Decision.CONCESSION:
        _refuse_foreign_concession(inspection)
    if against := faults(inspection):
        raise ValidationError(against)
    if status not in HELD_AS:
        raise ValidationError({"status": "Say how the accepted copy is held."})
    # The step is the acceptance, which happens now: a concession may be written after the copy was looked at.
    gates.pass_gates([Gate.MARK], gates.Subject(copy, copy.number, (copy,)), clock.today(), afterwards=False)
    pass_holding(copy=copy, status=status)
    copy.status = status
    copy.save()
    for row in measurements_of(inspection):
        row.save()


def _refuse_foreign_concession(inspection: Inspection) -> None:
    concession = inspection.concession
    if concession is None:
        raise ValidationError("An acceptance with concession names the concession: write it first.")
    if not fitting_concessions(inspection.copy).filter(pk=concession.pk).exists():
        raise ValidationError(
            f"{concession} is not for the mark or the acceptance of {inspection.copy.number}: choose the one that is."
        )
    if not concession.in_force_on(clock.today()):
        raise ValidationError(f"{concession} held to {clock.day_words(concession.valid_to)}: have a new one written.")


def fitting_concessions(copy: Item) -> QuerySet[Concession]:
    """For the mark or the acceptance of a copy or of what it was made of; the pages and the service ask the same."""
    return concessions_of(copy).filter(gate__in=[Gate.MARK, Gate.ACCEPT])


def measurements_of(inspection: Inspection) -> list[Measurement]:
    """The inspection's figures as measurements of the copy, in the words in which they were typed."""
    What = Measurement.What
    figures = [
        ("mass_g", "mass_g", What.MASS, ""),
        ("diameter_mm", "length_mm", across_of(inspection.copy), "at the widest"),
        ("finished_thickness_mm", "length_mm", What.THICKNESS, "of the finished piece"),
    ]
    rows = []
    for field, column, what, point in figures:
        value = getattr(inspection, field)
        if value is None:
            continue
        typed = {**inspection.as_typed.get(field, {}), "kind": "measured"}
        rows.append(
            Measurement(
                item=inspection.copy, what=what, point=point, measured_on=inspection.inspected_on,
                measured_by=inspection.inspector, note="at the inspection", as_typed={column: typed}, **{column: value},
            )
        )  # fmt: skip
    return rows


def across_of(copy: Item) -> str:
    """Round pieces have a diameter, others a breadth."""
    round_one = any(word in copy.object_type.lower() for word in ("medal", "coin", "token", "plaquette", "seal"))
    return Measurement.What.DIAMETER if round_one or not copy.object_type else Measurement.What.BREADTH
