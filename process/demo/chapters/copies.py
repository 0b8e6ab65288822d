"""Copies: shells made up, finished, marked and photographed, inspected, accepted, labelled."""

from process.demo.acting import role_of, step, without
from process.demo.chapters.condition import report_on
from process.demo.chapters.objects import photograph
from process.demo.chapters.permissions import concede
from process.demo.rows import Table, build, find, save
from process.demo.studio import Studio
from process.models import FinishStep, Inspection, MakingUp, Shell
from process.services.copies import accept, make_up
from records.models import Item, LabelWording, Mark, RuleFacts
from records.services.signing import approve_label

NESTED = ("making_up", "finish", "mark", "rule_facts", "inspection", "label", "photo")


def tell(part: Table, studio: Studio) -> None:
    concede(part.get("concession", []), "copies")
    for table in part.get("copy", []):
        copy = _make_up(table)
        for finish in table.get("finish", []):
            with step(finish, table["making_up"]["made_up_by"]):
                save(FinishStep, without(finish), copy=copy)
        photograph(copy, table, studio)
        for mark in table.get("mark", []):
            with step(mark, mark.get("made_by", "")):
                save(Mark, without(mark), item=copy)
        for asked in table.get("rule_facts", []):
            with step(asked):
                save(RuleFacts, without(asked), item=copy)
        _finish(copy, table)
    made_here = {table["number"] for table in part.get("copy", [])}
    for table in part.get("report", []):
        if table["item"] in made_here:
            report_on(table, studio)


def _make_up(table: Table) -> Item:
    making = table["making_up"]
    with step(making, making["made_up_by"]):
        shells = [find(Shell, number) for number in making["shells"]]
        columns = without(making, "shells")
        copy = build(Item, without(table, *NESTED), kind=Item.Kind.COPY)
        # A core that was closed too early is told as it happened: unmet, recorded afterwards.
        made, on_core = build(MakingUp, columns, unset=("copy",)), "core" in columns
        return make_up(copy=copy, making_up=made, shells=shells, afterwards=on_core)


def _finish(copy: Item, table: Table) -> None:
    """Inspection, acceptance and label, as far as the copy has come."""
    if inspection := table.get("inspection"):
        with step(inspection, inspection["inspector"]) as party:
            row = save(Inspection, without(inspection, "status"), copy=copy)
            accept(inspection=row, party=party, role=role_of(party), status=inspection["status"])
    if label := table.get("label"):
        with step(label) as party:
            row = save(LabelWording, without(label), item=Item.objects.get(pk=copy.pk))
            approve_label(label=row, party=party, role=role_of(party))
