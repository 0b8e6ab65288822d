"""Copies in other hands and under many hands: handed over with their papers, taken back, handled."""

from process.demo.acting import step, without
from process.demo.chapters import papers
from process.demo.rows import Table, build, find, save, values_of
from process.demo.studio import Studio
from records.models import HandlingSession, Handover, Item
from records.services.handovers import agree, hand_over, take_back

NESTED = ("item", "paper", "out", "back", "paper_after")


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("handover", []):
        _hand_over(table)
    for table in part.get("handling", []):
        with step(table):
            save(HandlingSession, without(table, "item"), item=find(Item, table["item"]))


def _hand_over(table: Table) -> None:
    """Agreed, its papers issued, handed over and taken back, as far as it has come."""
    with step(table):
        agree(handover=build(Handover, without(table, *NESTED), item=find(Item, table["item"])))
    _issue(table, "paper")
    for name, act in (("out", hand_over), ("back", take_back)):
        if name in table:
            with step(table[name]):
                act(handover=_with(find(Handover, table["number"]), without(table[name])))
    _issue(table, "paper_after")


def _with(row: Handover, columns: Table) -> Handover:
    for name, value in values_of(Handover, columns).items():
        setattr(row, name, row.as_typed | value if name == "as_typed" else value)
    row.full_clean()
    return row


def _issue(table: Table, name: str) -> None:
    papers.issue_all({"paper": [{"of": table["number"]} | paper for paper in table.get(name, [])]})
