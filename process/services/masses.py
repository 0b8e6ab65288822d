"""Masses that stand on a shell or its cathode: struck out they are kept as weighings, and put back from there."""

from django.core.exceptions import ValidationError
from django.db import transaction

from process.models import Cathode, Shell, Weighing
from records import clock
from records.models import Party

KIND = Weighing.Kind
# Where each mass stands; a tare is that of the cathode on which the shell grew.
STANDS = {KIND.SHELL: "gross_mass_g", KIND.TRIMMED: "trimmed_mass_g", KIND.TARE: "tare_g"}


def strike_mass(*, shell: Shell, kind: str, party: Party | None, reason: str) -> Weighing:
    """The mass counts no more; it stays as a weighing, struck through, until the piece is weighed again."""
    with transaction.atomic():
        shell = Shell.objects.select_for_update(of=("self",)).select_related("cathode", "item").get(pk=shell.pk)
        holder, field = _holder(shell, kind)
        mass = getattr(holder, field)
        if not mass:
            raise ValidationError("There is no such mass to strike out.")
        row = shell.item.weighings.filter(kind=kind, mass_g=mass).first() or Weighing(item=shell.item, kind=kind)
        typed = holder.as_typed.get(field)
        row.mass_g, row.at = mass, (shell.weighed_at if kind == KIND.SHELL else None) or shell.created_at
        row.as_typed = {"mass_g": typed} if typed else {}
        row.struck_at, row.struck_by, row.struck_reason = clock.now(), party, reason
        row._change_reason = f"struck out: {reason}"
        row.save()
        _set(holder, field, None, None, f"struck out: {reason}")
    return row


def _holder(shell: Shell, kind: str) -> tuple[Shell | Cathode, str]:
    return (shell.cathode if kind == KIND.TARE else shell), STANDS[kind]


def _set(holder: Shell | Cathode, field: str, mass: float | None, typed: dict | None, reason: str) -> None:
    setattr(holder, field, mass)
    kept = {name: value for name, value in holder.as_typed.items() if name != field}
    holder.as_typed = kept | ({field: typed} if typed else {})
    holder._change_reason = reason
    holder.save()


def refuse_standing(row: Weighing) -> str:
    """A mass is put back only where none has taken its place."""
    if row.kind not in STANDS:
        return ""
    holder, field = _holder(row.item.shell, row.kind)
    return "It was weighed again since: strike that mass out first." if getattr(holder, field) is not None else ""


def put_mass_back(row: Weighing) -> None:
    holder, field = _holder(row.item.shell, row.kind)
    _set(holder, field, row.mass_g, row.as_typed.get("mass_g"), "put back")
