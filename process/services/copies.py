"""Making shells up into a copy, inspecting and accepting it."""

from django.core.exceptions import ValidationError
from django.db import transaction

from process.models import Inspection, MakingUp, Shell
from records import gates
from records.models import DescentLink, Gate, Item, Party
from records.services.signing import sign


def make_up(*, copy: Item, making_up: MakingUp, shells: list[Shell]) -> Item:
    """A copy with its own number comes to be; its shells are used and its steps of descent written."""
    if not shells:
        raise ValidationError("Choose at least one shell: a copy is made of something.")
    if taken := [shell for shell in shells if shell.making_up_id]:
        raise ValidationError(f"Shell {taken[0]} is part of {taken[0].making_up.copy.number} already.")
    with transaction.atomic():
        copy.kind, copy.status = Item.Kind.COPY, Item.Status.WORKSHOP
        copy.save()
        making_up.copy = copy
        making_up.save(force_insert=True)
        parts = [shell.item for shell in shells] + ([making_up.core.item] if making_up.core else [])
        for part in parts:
            DescentLink.objects.create(
                source=part, target=copy, transfer=DescentLink.Transfer.MAKING_UP, happened_on=making_up.made_up_on
            )
        for shell in shells:
            shell.making_up, shell.fate = making_up, Shell.Fate.USED
            shell.save()
        if making_up.commission:
            making_up.commission.copies.add(copy)
    return copy


def accept(*, inspection: Inspection, party: Party, role: str, status: str) -> None:
    """Sign an inspection. A copy without a photographed permanent mark is not accepted, unless a concession says so."""
    copy = inspection.copy
    if inspection.decision == Inspection.Decision.CONCESSION and inspection.concession is None:
        raise ValidationError("An acceptance with concession names the concession: write it first.")
    with transaction.atomic():
        if inspection.decision in {Inspection.Decision.ACCEPT, Inspection.Decision.CONCESSION}:
            gates.pass_gates([Gate.MARK], gates.Subject(copy, copy.number, (copy,)), inspection.inspected_on, afterwards=False)
            copy.status = status
            copy.save()
        sign(row=inspection, party=party, role=role)
