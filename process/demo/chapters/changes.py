"""What changed after it was entered: weighed again, destroyed, lent back. What stood before stays in the history."""

from django.db import transaction

from process.demo.acting import step, without
from process.demo.rows import Table, find, values_of
from process.demo.studio import Studio
from process.models import Mould, Shell
from process.services.mould_ends import keep_mould
from records.models import Commission, Item

KINDS = {"item": Item, "mould": Mould, "shell": Shell, "commission": Commission}
IN_THE_WORKSHOP = {"mould", "shell"}


def tell_of_the_workshop(part: Table, studio: Studio) -> None:
    """Moulds and shells, before anything is made of them."""
    for table in part.get("change", []):
        if table["of"] in IN_THE_WORKSHOP:
            _change(table)


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("change", []):
        if table["of"] not in IN_THE_WORKSHOP:
            _change(table)


def _change(table: Table) -> None:
    model = KINDS[table["of"]]
    with step(table), transaction.atomic():
        row = find(model, table["number"])
        for name, value in values_of(model, without(table, "of", "number", "reason")).items():
            setattr(row, name, row.as_typed | value if name == "as_typed" else value)
        row.full_clean()
        row._change_reason = table.get("reason")
        if isinstance(row, Mould):
            keep_mould(mould=row, anew="fate" in table)
        else:
            row.save()
