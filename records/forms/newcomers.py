"""A person, institution or place that is entered together with the form that names it, in the same transaction."""

from typing import Any

from django import forms
from django.core.exceptions import ValidationError
from django.db.models import Model

from records.lookups import Lookup

NEW, KIND, PICK, WANTED = "new", "new-kind", "pick", "wanted"


class Typed(str):
    """What was typed in a look-up, and whether it was said to be a new one, of which kind."""

    is_new = False
    kind = ""


def read(data: Any, name: str) -> Typed | None:
    """The words of a field; one that was picked from the list beneath takes the place of what was not there."""
    text = data.get(name)
    if text is None:
        return None
    pick, wanted = data.get(f"{name}-{PICK}"), data.get(f"{name}-{WANTED}") or ""
    if pick and wanted in text:
        text = text.replace(wanted, pick, 1)
    typed = Typed(text)
    typed.is_new, typed.kind = not pick and bool(data.get(f"{name}-{NEW}")), data.get(f"{name}-{KIND}") or ""
    return typed


def new_field(lookup: Lookup, name: str, value: Any, wanted: str) -> dict[str, Any]:
    """What the fold beneath a field shows: a tick, and where needed the kind."""
    is_new = getattr(value, "is_new", False)
    return {
        "noun": lookup.noun, "name": f"{name}-{NEW}", "is_new": is_new, "open": is_new or bool(wanted),
        "kind_name": f"{name}-{KIND}", "kinds": lookup.kinds, "kind": getattr(value, "kind", ""),
    }  # fmt: skip


def begin(lookup: Lookup, text: str, typed: Typed, may_add: bool) -> Model:
    """The new row, checked and not saved yet; or the sentence that says what stands in its way."""
    name = " ".join(text.replace("\0", "").split())
    if not may_add or lookup.begun is None:
        raise ValidationError(f"A new {lookup.noun} is entered by the registrar: ask for “{name}” to be entered.")
    there = next(iter(lookup.alike([name], lookup.everything()).values()))
    there = [row for row in there if lookup.called(row).casefold() == name.casefold()]
    if there:
        raise ValidationError(
            f"“{lookup.called(there[0])}” is there already: take the tick away if it is the same, or add to the name "
            "what tells the two apart."
        )
    if lookup.kinds and typed.kind not in dict(lookup.kinds):
        raise ValidationError(f"Say of which kind the new {lookup.noun} is.")
    row = lookup.begun(name, typed.kind)
    try:
        row.full_clean()
    except ValidationError as error:
        raise ValidationError(error.messages) from error
    return row


def new_rows(form: forms.BaseForm) -> list[tuple[str, Model]]:
    """Fields of a form that was read, with the row that each begins."""
    cleaned = getattr(form, "cleaned_data", {})
    return [(name, row) for name, row in cleaned.items() if isinstance(row, Model) and row.pk is None]


def keep(form: forms.BaseForm) -> None:
    """Save what the form begins besides its own row, before that; within the caller's transaction.

    Two fields that name the same newcomer begin it once.
    """
    kept: dict[tuple[type, str], Model] = {}
    for name, row in new_rows(form):
        one = kept.setdefault((type(row), str(row).casefold()), row)
        if one is row:
            row.save()
        form.cleaned_data[name] = one
        instance = getattr(form, "instance", None)
        if instance is not None and hasattr(instance, f"{name}_id"):
            setattr(instance, name, one)
